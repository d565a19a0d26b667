package steadyturn.cli.page.paper;

import java.util.stream.Stream;
import steadyturn.ingest.recording.disk.Shipped;

/** Builds HTML and SVG: everything that is not markup is escaped here and only here. */
public final class Html {

  private final StringBuilder text = new StringBuilder();

  /** Opens an element; attributes come as name, value, name, value. */
  public Html open(String tag, Object... attributes) {
    start(tag, attributes);
    text.append('>');
    return this;
  }

  /** An element without content. */
  public Html empty(String tag, Object... attributes) {
    start(tag, attributes);
    text.append("/>");
    return this;
  }

  /** A whole element with text. */
  public Html element(String tag, String content, Object... attributes) {
    return open(tag, attributes).words(content).close(tag);
  }

  public Html words(String content) {
    text.append(escaped(content));
    return this;
  }

  public Html close(String... tags) {
    for (String tag : tags) {
      text.append("</").append(tag).append('>');
    }
    return this;
  }

  /** The beginning of a file that needs nothing else, up to what is seen of it. */
  public Html begin(String language, String title, Object... body) {
    raw("<!DOCTYPE html>\n").open("html", "lang", language).open("head");
    empty("meta", "charset", "utf-8");
    empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    empty("link", "rel", "icon", "href", "data:,").element("title", title);
    return open("style")
        .raw(Shipped.text(Html.class, "fonts.css"))
        .raw(Shipped.text(Html.class, "page.css"))
        .close("style", "head")
        .open("body", body)
        .open("main");
  }

  /** The end of such a file. */
  public Html end() {
    return close("main", "body", "html").raw("\n");
  }

  /** A script of our own files, inside the page; what it does not find it leaves alone. */
  public Html script(String file) {
    return open("script").raw(Shipped.text(Html.class, file)).close("script");
  }

  /** A list of texts without numbers. */
  public Html list(Stream<String> items, Object... attributes) {
    open("ul", attributes);
    items.forEach(item -> element("li", item));
    return close("ul");
  }

  /** The beginning of a table, up to its first row of values. */
  public Html table(String caption, Stream<String> columns) {
    open("div", "class", "wide", "tabindex", "0").open("table").element("caption", caption);
    open("thead").open("tr");
    columns.forEach(column -> element("th", column, "scope", "col"));
    return close("tr", "thead").open("tbody");
  }

  /** A row of a table: its head, then its cells. */
  public Html row(String head, Stream<String> cells) {
    open("tr").element("th", head, "scope", "row");
    cells.forEach(cell -> element("td", cell));
    return close("tr");
  }

  public Html endTable() {
    return close("tbody", "table", "div");
  }

  /** A picture with words below it; without a title where that is empty. */
  public Html figure(Html picture, String title, String words) {
    open("figure").part(picture).open("figcaption");
    if (!title.isEmpty()) {
      element("strong", words.isEmpty() ? title : title + ". ");
    }
    return words(words).close("figcaption", "figure");
  }

  /** What another builder has made. */
  public Html part(Html other) {
    text.append(other.text);
    return this;
  }

  /** Markup of our own files, such as the style sheet. */
  public Html raw(String markup) {
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

  public static String escaped(String content) {
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
