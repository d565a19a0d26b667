package steadyturn.cli.page.paper;

import java.util.ArrayList;
import java.util.List;
import steadyturn.cli.words.Words;

/** The space of a chart: where a value lies on the paper, and the axes at its edges. */
public record Frame(
    double left,
    double top,
    double width,
    double height,
    double xLow,
    double xHigh,
    double yLow,
    double yHigh) {

  /** The larger of two; the first where the second is no number. */
  public static double larger(double a, double b) {
    return b > a ? b : a;
  }

  public double x(double value) {
    return left + (value - xLow) / (xHigh - xLow) * width;
  }

  public double y(double value) {
    return top + (yHigh - value) / (yHigh - yLow) * height;
  }

  /** Points of the chart on the paper. */
  public List<double[]> onPaper(List<double[]> points) {
    return points.stream().map(p -> new double[] {x(p[0]), y(p[1])}).toList();
  }

  public double bottom() {
    return top + height;
  }

  public double right() {
    return left + width;
  }

  /** Round numbers in a range, about as many as asked for. */
  public static List<Double> ticks(double low, double high, int about) {
    double from = Math.min(low, high);
    double to = Math.max(low, high);
    double rough = (to - from) / about;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double part = rough / power;
    double step = power * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10);
    List<Double> ticks = new ArrayList<>();
    long last = (long) Math.floor(to / step + 1e-9);
    for (long k = (long) Math.ceil(from / step - 1e-9); k <= last; k++) {
      ticks.add(k * step);
    }
    return ticks;
  }

  /** Marks and numbers along the bottom; values are multiplied before they are printed. */
  public void axisX(Drawing drawing, Words words, String name, double factor, int about) {
    for (double t : ticks(xLow * factor, xHigh * factor, about)) {
      double at = x(t / factor);
      drawing.line(at, top, at, bottom(), Ink.FAINT, t == 0 ? 1.6 : 0.6);
      drawing.words(at, bottom() + 14, "middle", number(t, words), "tick");
    }
    drawing.words(left + width / 2, bottom() + 31, "middle", name, "axis");
  }

  /** Marks and numbers along the left. */
  public void axisY(Drawing drawing, Words words, String name, double factor, int about) {
    for (double t : ticks(yLow * factor, yHigh * factor, about)) {
      double at = y(t / factor);
      drawing.line(left, at, right(), at, Ink.FAINT, t == 0 ? 1.6 : 0.6);
      drawing.words(left - 6, at + 4, "end", number(t, words), "tick");
    }
    drawing.upwards(left - 36, top + height / 2, name, "axis");
  }

  private static String number(double t, Words words) {
    boolean tenths = Math.abs(10 * t - Math.rint(10 * t)) < 1e-6;
    int decimals = t == Math.rint(t) ? 0 : tenths ? 1 : 2;
    return words.decimal(t, decimals).replace('-', '−');
  }
}
