package steadyturn.analysis.lab.family;

/** A kind of movement and a kind of error that meet in a lesson. */
public record Family(ShapeFamily shape, ErrorFamily errors) {}
