package steadyturn.fusion.filter;

/** Conventional value of gravity, 3rd CGPM 1901: 9.80665 m/s^2. */
final class StandardGravity {

  static final double MPS2 = 9.80665;

  private StandardGravity() {}
}
