package steadyturn.cli.page;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import steadyturn.cli.page.paper.Html;

/** A drawn picture taken apart again by an XML reader, so that tests see what a browser sees. */
record Picture(Element svg) {

  /** Half of the last decimal that a picture writes, and a little. */
  static final double PX = 0.051;

  static Picture of(Html drawn) {
    try {
      return new Picture(
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new InputSource(new StringReader(drawn.toString())))
              .getDocumentElement());
    } catch (Exception e) {
      throw new AssertionError("no well-formed picture: " + drawn, e);
    }
  }

  /** The elements of one kind, in the order they are drawn. */
  List<Element> all(String tag) {
    NodeList found = svg.getElementsByTagName(tag);
    List<Element> out = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      out.add((Element) found.item(i));
    }
    return out;
  }

  /** The only element of a kind with these attributes, given as name, value, name, value. */
  Element the(String tag, String... attributes) {
    return only(tag, e -> has(e, attributes));
  }

  List<Element> all(String tag, String... attributes) {
    return all(tag).stream().filter(e -> has(e, attributes)).toList();
  }

  /** The words that read so. */
  Element words(String text) {
    return only("text", e -> e.getTextContent().equals(text));
  }

  List<String> words() {
    return all("text").stream().map(Element::getTextContent).toList();
  }

  private Element only(String tag, Predicate<Element> is) {
    List<Element> found = all(tag).stream().filter(is).toList();
    if (found.size() != 1) {
      throw new AssertionError(found.size() + " such elements " + tag + " in " + this);
    }
    return found.get(0);
  }

  private static boolean has(Element e, String... attributes) {
    for (int i = 0; i < attributes.length; i += 2) {
      if (!e.getAttribute(attributes[i]).equals(attributes[i + 1])) {
        return false;
      }
    }
    return true;
  }

  /** Numbers of an element's attributes. */
  static double[] numbers(Element e, String... names) {
    double[] out = new double[names.length];
    for (int i = 0; i < names.length; i++) {
      out[i] = Double.parseDouble(e.getAttribute(names[i]));
    }
    return out;
  }

  static double[] line(Element e) {
    return numbers(e, "x1", "y1", "x2", "y2");
  }

  static double[] dot(Element e) {
    return numbers(e, "cx", "cy");
  }

  static double[] box(Element e) {
    return numbers(e, "x", "y", "width", "height");
  }

  static double[] place(Element e) {
    return numbers(e, "x", "y");
  }

  /** Where words stand, along x (0) or y (1). */
  static double place(Element e, int axis) {
    return place(e)[axis];
  }

  /** The corners of a path or a polygon, x and y in turn. */
  static double[] corners(Element e) {
    String text = e.getAttribute("d") + e.getAttribute("points");
    String[] parts = text.replaceAll("[ML,]", " ").strip().split(" +", -1);
    double[] out = new double[parts.length];
    for (int i = 0; i < parts.length; i++) {
      out[i] = Double.parseDouble(parts[i]);
    }
    return out;
  }
}
