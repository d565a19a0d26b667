package steadyturn.analysis.lab.curve;

import java.util.Arrays;
import java.util.stream.Stream;

/** Functions added in their order; none of them is a sum itself or nothing. */
final class Sum implements TimeFunction {

  private final TimeFunction[] parts;

  private Sum(TimeFunction[] parts) {
    this.parts = parts;
  }

  static TimeFunction of(TimeFunction... parts) {
    TimeFunction[] plain = Arrays.stream(parts).flatMap(Sum::plain).toArray(TimeFunction[]::new);
    return plain.length == 1 ? plain[0] : new Sum(plain);
  }

  private static Stream<TimeFunction> plain(TimeFunction part) {
    if (part instanceof Sum sum) {
      return Arrays.stream(sum.parts);
    }
    boolean nothing = part instanceof Constant constant && constant.value() == 0;
    return nothing ? Stream.empty() : Stream.of(part);
  }

  @Override
  public void addTo(double timeS, double[] vra) {
    for (TimeFunction part : parts) {
      part.addTo(timeS, vra);
    }
  }
}
