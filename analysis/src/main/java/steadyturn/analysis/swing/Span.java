package steadyturn.analysis.swing;

/** A stretch of time, s. */
record Span(double fromS, double toS) {}
