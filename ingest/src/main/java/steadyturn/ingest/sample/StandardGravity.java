package steadyturn.ingest.sample;

/** Conventional value of gravity, 3rd CGPM 1901: 9.80665 m/s^2. */
public final class StandardGravity {

  public static final double MPS2 = 9.80665;

  private StandardGravity() {}
}
