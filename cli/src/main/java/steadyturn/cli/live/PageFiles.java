package steadyturn.cli.live;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.words.Words;
import steadyturn.ingest.recording.disk.Shipped;

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

  /** The source expression (CSP level 3) of the one script that a page to send home carries. */
  static String replayScript() {
    byte[] script = Shipped.text(Html.class, "replay.js").getBytes(StandardCharsets.UTF_8);
    try {
      byte[] sum = MessageDigest.getInstance("SHA-256").digest(script);
      return "'sha256-" + Base64.getEncoder().encodeToString(sum) + "'";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // every Java machine has it
    }
  }

  /** All words of the page, as JSON. */
  static String words() {
    ObjectNode words = JsonNodeFactory.instance.objectNode();
    Words.inUse().group("mat.").forEach(words::put);
    return words.put("language", Words.inUse().language()).toString();
  }
}
