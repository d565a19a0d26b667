package steadyturn.cli.page.paper;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** One picture as inline SVG, with a title and a description for those who cannot see it. */
public final class Drawing {

  private final Html svg = new Html();

  public Drawing(String id, int width, int height, String title, String description) {
    String name = Html.escaped(id);
    draw(
        "<svg viewBox='0 0 %s %s' role='img' aria-labelledby='%s-title %s-text'"
            + " xmlns='http://www.w3.org/2000/svg'>",
        width, height, name, name);
    svg.element("title", title, "id", id + "-title");
    svg.element("desc", description, "id", id + "-text");
  }

  /** Markup of our own, in which the marks of the attributes are single ones. */
  private Drawing draw(String markup, Object... values) {
    svg.raw(String.format(Locale.ROOT, markup.replace('\'', '"'), values));
    return this;
  }

  public static String px(double x) {
    return String.format(Locale.ROOT, "%.1f", x);
  }

  public Drawing line(double x1, double y1, double x2, double y2, String colour, double width) {
    return draw(
        "<line x1='%.1f' y1='%.1f' x2='%.1f' y2='%.1f' stroke='%s' stroke-width='%s'"
            + " stroke-linecap='round'/>",
        x1, y1, x2, y2, colour, width);
  }

  public Drawing dashed(
      double x1, double y1, double x2, double y2, String colour, double width, String dash) {
    return draw(
        "<line x1='%.1f' y1='%.1f' x2='%.1f' y2='%.1f' stroke='%s' stroke-width='%s'"
            + " stroke-dasharray='%s'/>",
        x1, y1, x2, y2, colour, width, dash);
  }

  /** A line through points, broken where one is no number; an empty dash draws it through. */
  public Drawing path(
      List<double[]> points, String colour, double width, String dash, double opacity) {
    if (points.size() < 2) {
      return this;
    }
    StringBuilder d = new StringBuilder();
    boolean joins = false;
    for (double[] p : points) {
      boolean isThere = Double.isFinite(p[0] + p[1]);
      if (isThere) {
        d.append(joins ? "L" : "M").append(px(p[0])).append(' ').append(px(p[1]));
      }
      joins = isThere;
    }
    return draw(
        "<path d='%s' fill='none' stroke='%s' stroke-width='%s' stroke-linejoin='round'"
            + " stroke-dasharray='%s' opacity='%s'/>",
        d, colour, width, dash.isEmpty() ? "none" : dash, opacity);
  }

  public Drawing dot(double x, double y, double radius, String fill) {
    return draw(
        "<circle cx='%.1f' cy='%.1f' r='%.1f' fill='%s' stroke='#ffffff' stroke-width='1'/>",
        x, y, radius, fill);
  }

  public Drawing ellipse(
      double x, double y, double rx, double ry, String fill, String stroke, double opacity) {
    return draw(
        "<ellipse cx='%.1f' cy='%.1f' rx='%.1f' ry='%.1f' fill='%s' stroke='%s' opacity='%s'/>",
        x, y, rx, ry, fill, stroke, opacity);
  }

  public Drawing box(
      double x, double y, double w, double h, String fill, String stroke, double opacity) {
    return draw(
        "<rect x='%.1f' y='%.1f' width='%.1f' height='%.1f' rx='3' fill='%s' stroke='%s'"
            + " opacity='%s'/>",
        x, y, w, h, fill, stroke, opacity);
  }

  /** What is wanted, outlined and hatched, so that it is never taken for what was measured. */
  public Drawing wanted(double x, double y, double w, double h) {
    for (double k = -h + 7; k < w; k += 9) {
      double from = Math.max(0, -k);
      double to = Math.min(h, w - k);
      draw(
          "<polyline points='%.1f,%.1f %.1f,%.1f' stroke='%s' stroke-width='0.7' opacity='0.55'/>",
          x + k + from, y + h - from, x + k + to, y + h - to, Ink.GOAL);
    }
    return draw(
        "<rect x='%.1f' y='%.1f' width='%.1f' height='%.1f' fill='none' stroke='%s'"
            + " stroke-width='1.6' stroke-dasharray='6 3'/>",
        x, y, w, h, Ink.GOAL);
  }

  /** A shape filled with one colour, such as an arrow head. */
  public Drawing filled(List<double[]> points, String fill) {
    String list =
        points.stream().map(p -> px(p[0]) + "," + px(p[1])).collect(Collectors.joining(" "));
    return draw("<polygon points='%s' fill='%s'/>", list, fill);
  }

  /** Shapes of our own files, mirrored for a left-handed player. */
  public Drawing mirrored(boolean mirror, String markup) {
    svg.raw(mirror ? "<g transform=\"translate(160 0) scale(-1 1)\">" : "<g>").raw(markup);
    svg.close("g");
    return this;
  }

  /** Words with a white rim, so that they stay readable on lines; anchor start, middle or end. */
  public Drawing words(double x, double y, String anchor, String text, String kind) {
    svg.element("text", text, "x", px(x), "y", px(y), "text-anchor", anchor, "class", kind);
    return this;
  }

  /** Words that run upwards. */
  public Drawing upwards(double x, double y, String text, String kind) {
    return draw(
        "<text x='%.1f' y='%.1f' text-anchor='middle' class='%s' transform='rotate(-90 %.1f %.1f)'>"
            + "%s</text>",
        x, y, kind, x, y, Html.escaped(text));
  }

  public Html done() {
    return svg.close("svg");
  }
}
