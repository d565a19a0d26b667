package steadyturn.cli.page;

import java.util.List;
import java.util.Locale;

/** One picture as inline SVG, with a title and a description for those who cannot see it. */
final class Drawing {

  private final Html svg = new Html();

  Drawing(String id, int width, int height, String title, String description) {
    svg.open(
        "svg",
        "viewBox",
        "0 0 " + width + " " + height,
        "role",
        "img",
        "aria-labelledby",
        id + "-title " + id + "-text",
        "xmlns",
        "http://www.w3.org/2000/svg");
    svg.element("title", title, "id", id + "-title");
    svg.element("desc", description, "id", id + "-text");
  }

  static String px(double x) {
    return String.format(Locale.ROOT, "%.1f", x);
  }

  Drawing line(double x1, double y1, double x2, double y2, String colour, double width) {
    svg.empty(
        "line",
        "x1",
        px(x1),
        "y1",
        px(y1),
        "x2",
        px(x2),
        "y2",
        px(y2),
        "stroke",
        colour,
        "stroke-width",
        width,
        "stroke-linecap",
        "round");
    return this;
  }

  Drawing dashed(
      double x1, double y1, double x2, double y2, String colour, double width, String dash) {
    svg.empty(
        "line",
        "x1",
        px(x1),
        "y1",
        px(y1),
        "x2",
        px(x2),
        "y2",
        px(y2),
        "stroke",
        colour,
        "stroke-width",
        width,
        "stroke-dasharray",
        dash);
    return this;
  }

  /** A line through points, broken where one is no number; an empty dash draws it through. */
  Drawing path(List<double[]> points, String colour, double width, String dash, double opacity) {
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
    svg.empty(
        "path",
        "d",
        d,
        "fill",
        "none",
        "stroke",
        colour,
        "stroke-width",
        width,
        "stroke-linejoin",
        "round",
        "stroke-dasharray",
        dash.isEmpty() ? "none" : dash,
        "opacity",
        opacity);
    return this;
  }

  Drawing dot(double x, double y, double radius, String fill) {
    svg.empty(
        "circle",
        "cx",
        px(x),
        "cy",
        px(y),
        "r",
        px(radius),
        "fill",
        fill,
        "stroke",
        "#ffffff",
        "stroke-width",
        1);
    return this;
  }

  Drawing ellipse(
      double x, double y, double rx, double ry, String fill, String stroke, double opacity) {
    svg.empty(
        "ellipse", "cx", px(x), "cy", px(y), "rx", px(rx), "ry", px(ry), "fill", fill, "stroke",
        stroke, "opacity", opacity);
    return this;
  }

  Drawing box(double x, double y, double w, double h, String fill, String stroke, double opacity) {
    svg.empty(
        "rect", "x", px(x), "y", px(y), "width", px(w), "height", px(h), "rx", 3, "fill", fill,
        "stroke", stroke, "opacity", opacity);
    return this;
  }

  /** A shape filled with one colour, such as an arrow head. */
  Drawing filled(List<double[]> points, String fill) {
    StringBuilder list = new StringBuilder();
    points.forEach(p -> list.append(px(p[0])).append(',').append(px(p[1])).append(' '));
    svg.empty("polygon", "points", list.toString().strip(), "fill", fill);
    return this;
  }

  /** Words with a white rim, so that they stay readable on lines; anchor start, middle or end. */
  Drawing words(double x, double y, String anchor, String text, String kind) {
    svg.element("text", text, "x", px(x), "y", px(y), "text-anchor", anchor, "class", kind);
    return this;
  }

  /** Words that run upwards. */
  Drawing upwards(double x, double y, String text, String kind) {
    String turn = "rotate(-90 " + px(x) + " " + px(y) + ")";
    svg.element(
        "text",
        text,
        "x",
        px(x),
        "y",
        px(y),
        "text-anchor",
        "middle",
        "class",
        kind,
        "transform",
        turn);
    return this;
  }

  Html done() {
    return svg.close("svg");
  }
}
