package steadyturn.cli.page;

/** Builds HTML and SVG: everything that is not markup is escaped here and only here. */
final class Html {

  private final StringBuilder text = new StringBuilder();

  /** Opens an element; attributes come as name, value, name, value. */
  Html open(String tag, Object... attributes) {
    start(tag, attributes);
    text.append('>');
    return this;
  }

  /** An element without content. */
  Html empty(String tag, Object... attributes) {
    start(tag, attributes);
    text.append("/>");
    return this;
  }

  /** A whole element with text. */
  Html element(String tag, String content, Object... attributes) {
    return open(tag, attributes).words(content).close(tag);
  }

  Html words(String content) {
    text.append(escaped(content));
    return this;
  }

  Html close(String tag) {
    text.append("</").append(tag).append('>');
    return this;
  }

  /** What another builder has made. */
  Html part(Html other) {
    text.append(other.text);
    return this;
  }

  /** Markup of our own files, such as the style sheet. */
  Html raw(String markup) {
    text.append(markup);
    return this;
  }

  private void start(String tag, Object... attributes) {
    text.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      text.append(' ').append(attributes[i]).append("=\"");
      text.append(escaped(attributes[i + 1].toString())).append('"');
    }
  }

  static String escaped(String content) {
    return content
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
