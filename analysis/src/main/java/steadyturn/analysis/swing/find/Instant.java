package steadyturn.analysis.swing.find;

/** A moment with its standard deviation, both in s. */
record Instant(double timeS, double sdS) {}
