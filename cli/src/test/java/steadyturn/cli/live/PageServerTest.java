package steadyturn.cli.live;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import steadyturn.cli.page.paper.Html;
import steadyturn.ingest.recording.disk.Shipped;

/**
 * Who may ask the page's server, and who not. Requests are written byte by byte, as a program that
 * means harm would. Status codes: RFC 9110.
 */
class PageServerTest {

  private static final int FORBIDDEN = 403;
  private static final int NOT_FOUND = 404;

  private final List<String> done = new CopyOnWriteArrayList<>();
  private PageServer server;

  @BeforeEach
  void start() throws IOException {
    server = new PageServer(new Deaf(), 0, Set.of());
  }

  @AfterEach
  void stop() {
    server.close();
  }

  /** Notes what is asked and does nothing. */
  private final class Deaf implements Shown {
    @Override
    public List<Told> all() {
      return List.of(new Told("state", JsonNodeFactory.instance.objectNode().put("stage", "who")));
    }

    @Override
    public Optional<String> act(String what, JsonNode with) {
      done.add(what + with);
      return Optional.empty();
    }

    @Override
    public Optional<String> document(String name) {
      return Optional.of(name).filter("player.html"::equals);
    }
  }

  private String host() {
    return "127.0.0.1:" + server.port();
  }

  private String cookie() {
    String token = server.address().replaceFirst(".*t=", "");
    return "Cookie: steadyturn-" + server.port() + "=" + token + "\r\n";
  }

  private String origin() {
    return "Origin: http://" + host() + "\r\n";
  }

  private String ask(String line, String headers, String body) throws IOException {
    return raw(line + " HTTP/1.1\r\nHost: " + host() + "\r\n" + headers, body);
  }

  private String raw(String head, String body) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      String length = body.isEmpty() ? "" : "Content-Length: " + body.length() + "\r\n";
      String all = head + length + "Connection: close\r\n\r\n" + body;
      socket.getOutputStream().write(all.getBytes(StandardCharsets.UTF_8));
      socket.setSoTimeout(5000);
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static int status(String answer) {
    return Integer.parseInt(answer.split(" ", 3)[1]);
  }

  @Test
  void thePageOfThisStartIsServedUnderAStrictPolicy() throws IOException {
    // Given: the address that is printed, then the cookie that it sets. Expect: the page, whose
    // policy lets no script but its own run and nothing come from elsewhere (CSP level 3).
    String first = ask("GET " + server.address().replaceFirst("http://[^/]*", ""), "", "");
    assertThat(status(first)).isEqualTo(303);
    assertThat(first).contains("HttpOnly; SameSite=Strict");
    String page = ask("GET /", cookie(), "");
    assertThat(status(page)).isEqualTo(200);
    assertThat(page).contains("default-src 'none'; script-src 'self'").doesNotContain("unsafe");
    assertThat(page.replaceAll("(?s).*\r\n\r\n", ""))
        .doesNotContainPattern("<script>|style=|onclick");
  }

  @Test
  void aPageToSendMayRunItsReplayAndNoOtherScript() throws Exception {
    // Given: the script as pages carry it. Expect: the policy names its SHA-256 (CSP level 3).
    String script = Shipped.text(Html.class, "replay.js");
    byte[] sum =
        MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
    assertThat(ask("GET /document/player.html", cookie(), ""))
        .contains("script-src 'sha256-" + Base64.getEncoder().encodeToString(sum) + "'\r\n");
  }

  @Test
  void aChangeNeedsTokenOriginAndPost() throws IOException {
    // Given: one change asked for in the right way, and in every wrong one. Expect: done once.
    assertThat(status(ask("POST /do/finish", cookie() + origin(), "{}"))).isEqualTo(200);
    assertThat(status(ask("POST /do/finish", origin(), "{}"))).isEqualTo(FORBIDDEN);
    assertThat(status(ask("POST /do/finish", cookie(), "{}"))).isEqualTo(FORBIDDEN);
    String foreign = cookie() + "Origin: http://elsewhere.example\r\n";
    assertThat(status(ask("POST /do/finish", foreign, "{}"))).isEqualTo(FORBIDDEN);
    String crossSite = cookie() + origin() + "Sec-Fetch-Site: cross-site\r\n";
    assertThat(status(ask("POST /do/finish", crossSite, "{}"))).isEqualTo(FORBIDDEN);
    String guessed = cookie().replaceFirst("=[0-9a-f]{4}", "=0000");
    assertThat(status(ask("POST /do/finish", guessed + origin(), "{}"))).isEqualTo(FORBIDDEN);
    assertThat(status(ask("GET /do/finish", cookie() + origin(), ""))).isEqualTo(NOT_FOUND);
    assertThat(status(ask("PUT /do/finish", cookie() + origin(), "{}"))).isEqualTo(405);
    assertThat(done).containsExactly("finish{}");
  }

  @Test
  void anotherNameForThisMachineIsRefused() throws IOException {
    // Given: the right token under a name that someone else made point here (DNS rebinding).
    String head = "GET / HTTP/1.1\r\nHost: golf.example:" + server.port() + "\r\n" + cookie();
    assertThat(status(raw(head, ""))).isEqualTo(FORBIDDEN);
    assertThat(status(raw("GET / HTTP/1.0\r\n" + cookie(), ""))).isEqualTo(FORBIDDEN);
  }

  @Test
  void thereIsNoWayToOtherFiles() throws IOException {
    for (String path :
        List.of(
            "/../pom.xml", "/..%2f..%2fetc%2fpasswd", "//etc/passwd", "/document/../x", "/%00")) {
      assertThat(status(ask("GET " + path, cookie(), ""))).as(path).isGreaterThanOrEqualTo(400);
    }
    assertThat(status(ask("GET /lesson.css", "", ""))).isEqualTo(FORBIDDEN);
  }

  @Test
  void aLongBodyAndOneThatIsNoJsonAreRefused() throws IOException {
    String both = cookie() + origin();
    assertThat(status(ask("POST /do/note", both, "{\"a\":\"" + "x".repeat(9000) + "\"}")))
        .isEqualTo(413);
    assertThat(status(ask("POST /do/note", both, "note"))).isEqualTo(413);
    assertThat(status(ask("POST /do/note", both, "[1]"))).isEqualTo(413);
    assertThat(done).isEmpty();
  }

  @Test
  void aThousandSlowCallersDoNotKeepThePageFromAnswering() throws IOException {
    // Given: 1,000 connections that have sent half a request and wait. Expect: the page answers a
    // change, within 2 s on a loaded machine.
    List<Socket> slow = new ArrayList<>();
    try {
      for (int i = 0; i < 1000; i++) {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port());
        socket
            .getOutputStream()
            .write("POST /do/finish HTTP/1.1\r\nHos".getBytes(StandardCharsets.UTF_8));
        slow.add(socket);
      }
      long fromNs = System.nanoTime();
      assertThat(status(ask("POST /do/finish", cookie() + origin(), "{}"))).isEqualTo(200);
      assertThat(System.nanoTime() - fromNs).isLessThan(2_000_000_000L);
    } finally {
      for (Socket socket : slow) {
        socket.close();
      }
    }
  }

  @Test
  void eventsComeAsTheyAreTold() throws Exception {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      String head = "GET /events HTTP/1.1\r\nHost: " + host() + "\r\n" + cookie() + "\r\n";
      socket.getOutputStream().write(head.getBytes(StandardCharsets.UTF_8));
      socket.setSoTimeout(5000);
      String heard = readUntil(socket.getInputStream(), "\"stage\":\"who\"}");
      server.tell(new Shown.Told("ball", JsonNodeFactory.instance.objectNode().put("n", 7)));
      heard += readUntil(socket.getInputStream(), "{\"n\":7}");
      assertThat(heard).contains("event: state\n").contains("event: ball\ndata: {\"n\":7}");
    }
  }

  private static String readUntil(InputStream in, String end) throws IOException {
    StringBuilder heard = new StringBuilder();
    while (heard.indexOf(end) < 0) {
      heard.append((char) in.read());
    }
    return heard.toString();
  }

  @Test
  void aScreenThatMayPairGetsAllThatThePairingPageIsMadeOf() throws IOException {
    // Given: a screen of the local network without a token. Expect: the pairing page and every file
    // that it or its scripts name, but none of the lesson.
    server.close();
    server = new PageServer(new Deaf(), 0, Set.of("10.0.0.7"));
    Pattern named = Pattern.compile("(?:from '\\./|src=\"|href=\")([\\w.-]+\\.(?:js|css))");
    Deque<String> open = new ArrayDeque<>(List.of("", "words"));
    Set<String> seen = new HashSet<>(open);
    while (!open.isEmpty()) {
      String name = open.removeFirst();
      String answer = ask("GET /" + name, "", "");
      assertThat(status(answer)).as(name).isEqualTo(200);
      named.matcher(answer).results().map(m -> m.group(1)).filter(seen::add).forEach(open::addLast);
    }
    assertThat(seen).contains("pair.js", "parts.js", "lesson.css").doesNotContain("lesson.js");
    assertThat(status(ask("GET /lesson.js", "", ""))).isEqualTo(403);
  }

  @Test
  void aCodeEndsAfterFiveWrongTriesAndTheNextOneComesAfterAPause() {
    // Given: codes 000001, 000002 and so on. Expect: the fifth wrong try ends the first one; the
    // right second one is refused for 10 s, then lets one screen in, once.
    int[] next = {0};
    Pairing pairing = new Pairing(() -> "00000" + ++next[0], () -> "token");
    for (int i = 0; i < 5; i++) {
      assertThat(pairing.open("999999", i)).isEmpty();
    }
    assertThat(pairing.code()).isEqualTo("000002");
    assertThat(pairing.open("000002", 9_000_000_000L)).isEmpty();
    assertThat(pairing.open("000002", 11_000_000_000L)).contains("token");
    assertThat(pairing.open("000002", 12_000_000_000L)).isEmpty();
  }
}
