package steadyturn.cli.live;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.words.Words;

/**
 * The files of the page, read once from the program itself: a request names one of them or nothing,
 * so there is no way to any other file.
 */
final class PageFiles {

  /** A file as it is sent. */
  @SuppressWarnings("ArrayRecordComponent") // read once, never changed
  record PageFile(String type, byte[] bytes) {}

  private static final List<String> OWN =
      List.of(
          "index.html",
          "pair.html",
          "lesson.css",
          "lesson.js",
          "link.js",
          "words.js",
          "parts.js",
          "steps.js",
          "strapping.js",
          "ball.js",
          "hinge.js",
          "curves.js",
          "drill.js",
          "closing.js",
          "pair.js");

  private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/dist/";

  private final Map<String, PageFile> files = new LinkedHashMap<>();

  PageFiles() {
    OWN.forEach(name -> put(name, PageFiles.class, name));
    put("fonts.css", Html.class, "fonts.css");
    put("uPlot.esm.js", PageFiles.class, UPLOT + "uPlot.esm.js");
    put("uPlot.min.css", PageFiles.class, UPLOT + "uPlot.min.css");
  }

  private void put(String name, Class<?> beside, String resource) {
    try (InputStream in = beside.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + resource);
      }
      files.put(name, new PageFile(type(name), in.readAllBytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String type(String name) {
    String ending = name.substring(name.lastIndexOf('.') + 1);
    return switch (ending) {
      case "html" -> "text/html; charset=utf-8";
      case "css" -> "text/css; charset=utf-8";
      default -> "text/javascript; charset=utf-8";
    };
  }

  /** A file of the page by its name; empty for any other name. */
  Optional<PageFile> file(String name) {
    return Optional.ofNullable(files.get(name));
  }

  /** All words of the page, as JSON. */
  static String words() {
    ObjectNode words = JsonNodeFactory.instance.objectNode();
    Words.inUse().group("mat.").forEach(words::put);
    return words.put("language", Words.inUse().language()).toString();
  }
}
