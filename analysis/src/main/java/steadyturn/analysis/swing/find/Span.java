package steadyturn.analysis.swing.find;

/** A stretch of time, s. */
record Span(double fromS, double toS) {}
