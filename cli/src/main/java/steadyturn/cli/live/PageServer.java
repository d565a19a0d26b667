package steadyturn.cli.live;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import steadyturn.cli.words.Words;

/**
 * Serves the page of a lesson with the server of the Java machine. Every change is a POST of the
 * page itself with its token; whoever else asks is refused before anything is read. A request is
 * small and must come within seconds; slow ones hold a thread of this server and nothing else.
 */
public final class PageServer implements AutoCloseable {

  private static final int MOST_BODY_BYTES = 8192;

  /** More threads than a thousand slow callers hold; each needs little and ends soon. */
  private static final int MOST_THREADS = 1200;

  private static final long STACK_BYTES = 256 << 10;
  private static final JsonMapper JSON = new JsonMapper();

  /** Only what this server sends: no script or style in the page, no other address, no frame. */
  private static final String PAGE_POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; font-src data:; img-src 'self'"
          + " data:; connect-src 'self'; form-action 'none'; base-uri 'none';"
          + " frame-ancestors 'none'";

  /** The page to send home carries its style inside, and one script: the replay of the hips. */
  private static final String DOCUMENT_POLICY =
      "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; form-action"
          + " 'none'; base-uri 'none'; frame-ancestors 'none'; script-src "
          + PageFiles.replayScript();

  static {
    limit("maxReqTime", "8"); // s in which a request must have come
    limit("idleInterval", "20"); // s after which a connection without a request is closed
    limit("nodelay", "true"); // an event is sent when it is written
  }

  private final HttpServer server;
  private final ThreadPoolExecutor threads;
  private final PageGuard guard;
  private final Optional<Pairing> pairing;
  private final PageFiles files = new PageFiles();
  private final EventStreams streams = new EventStreams();
  private final Shown shown;
  private final int port;

  private static void limit(String name, String value) {
    System.setProperty("sun.net.httpserver." + name, value);
  }

  /**
   * Starts to serve.
   *
   * @param port 0 for any that is free
   * @param others addresses of this machine by which other screens may ask; empty for none
   */
  public PageServer(Shown shown, int port, Set<String> others) throws IOException {
    this.shown = shown;
    InetSocketAddress at =
        others.isEmpty()
            ? new InetSocketAddress(InetAddress.getLoopbackAddress(), port)
            : new InetSocketAddress(port);
    server = HttpServer.create(at, 50);
    this.port = server.getAddress().getPort();
    Set<String> hosts = new LinkedHashSet<>(Set.of(here("127.0.0.1"), here("localhost")));
    others.forEach(address -> hosts.add(here(address)));
    guard = new PageGuard(hosts, this.port);
    pairing =
        others.isEmpty() ? Optional.empty() : Optional.of(new Pairing(guard::code, guard::pair));
    threads =
        new ThreadPoolExecutor(
            MOST_THREADS,
            MOST_THREADS,
            2,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(),
            PageServer::thread);
    threads.allowCoreThreadTimeOut(true);
    server.setExecutor(threads);
    server.createContext("/", this::handle);
    server.start();
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(Thread.currentThread().getThreadGroup(), work, "page", STACK_BYTES);
    thread.setDaemon(true);
    return thread;
  }

  private String here(String address) {
    return address + ":" + port;
  }

  /** What to open on this machine; holds the token of this start. */
  public String address() {
    return "http://" + here("127.0.0.1") + "/?t=" + guard.token();
  }

  public int port() {
    return port;
  }

  /** What another screen types to be let in; empty where none may. */
  public Optional<String> code() {
    return pairing.map(Pairing::code);
  }

  /** Pages that listen now. */
  public int pages() {
    return streams.size();
  }

  /** Tells every page; does not wait. */
  public void tell(Shown.Told told) {
    streams.tell(told);
  }

  private void handle(HttpExchange ask) throws IOException {
    try (ask) {
      String method = ask.getRequestMethod();
      String path = ask.getRequestURI().getPath();
      if (!guard.isOurs(ask.getRequestHeaders())) {
        refuse(ask, 403, Words.say("server.foreign"));
      } else if (method.equals("GET")) {
        get(ask, path);
      } else if (method.equals("POST")) {
        post(ask, path);
      } else {
        refuse(ask, 405, "only GET and POST");
      }
    }
  }

  private void get(HttpExchange ask, String path) throws IOException {
    String query = Optional.ofNullable(ask.getRequestURI().getQuery()).orElse("");
    if (path.equals("/") && query.startsWith("t=") && guard.isToken(query.substring(2))) {
      ask.getResponseHeaders().set("Set-Cookie", guard.setCookie(guard.token()));
      ask.getResponseHeaders().set("Location", "/");
      refuse(ask, 303, "");
    } else if (!guard.isKnown(ask.getRequestHeaders())) {
      getUnknown(ask, path);
    } else if (path.equals("/events")) {
      events(ask);
    } else if (path.startsWith("/document/")) {
      Optional<String> found = shown.document(path.substring("/document/".length()));
      send(ask, found.map(text -> html(text)), DOCUMENT_POLICY);
    } else {
      send(ask, own(path.equals("/") ? "index.html" : path.substring(1)), PAGE_POLICY);
    }
  }

  /** A screen that was not let in sees how to be, where that may be at all. */
  private void getUnknown(HttpExchange ask, String path) throws IOException {
    Set<String> open =
        Set.of("lesson.css", "fonts.css", "pair.js", "parts.js", "words.js", "words");
    String name = path.substring(1);
    if (pairing.isPresent() && (path.equals("/") || open.contains(name))) {
      send(ask, own(path.equals("/") ? "pair.html" : name), PAGE_POLICY);
    } else {
      refuse(ask, 403, Words.say("server.unknown"));
    }
  }

  private Optional<PageFiles.PageFile> own(String name) {
    return name.equals("words")
        ? Optional.of(
            new PageFiles.PageFile(
                "application/json", PageFiles.words().getBytes(StandardCharsets.UTF_8)))
        : files.file(name);
  }

  private static PageFiles.PageFile html(String text) {
    return new PageFiles.PageFile(
        "text/html; charset=utf-8", text.getBytes(StandardCharsets.UTF_8));
  }

  private void send(HttpExchange ask, Optional<PageFiles.PageFile> found, String policy)
      throws IOException {
    if (found.isEmpty()) {
      refuse(ask, 404, Words.say("server.none"));
      return;
    }
    ask.getResponseHeaders().set("Content-Type", found.get().type());
    ask.getResponseHeaders().set("Content-Security-Policy", policy);
    answer(ask, 200, found.get().bytes());
  }

  private void events(HttpExchange ask) throws IOException {
    if (streams.isFull()) {
      refuse(ask, 503, Words.say("server.full"));
      return;
    }
    ask.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
    usual(ask);
    ask.sendResponseHeaders(200, 0);
    streams.serve(ask.getResponseBody(), shown);
  }

  private void post(HttpExchange ask, String path) throws IOException {
    if (!guard.namesItsOrigin(ask.getRequestHeaders())) {
      refuse(ask, 403, Words.say("server.foreign"));
      return;
    }
    boolean isKnown = guard.isKnown(ask.getRequestHeaders());
    boolean pairs = path.equals("/pair") && pairing.isPresent();
    if (!isKnown && !pairs) {
      refuse(ask, 403, Words.say("server.unknown"));
      return;
    }
    Optional<JsonNode> body = body(ask);
    if (body.isEmpty()) {
      refuse(ask, 413, Words.say("server.unread"));
    } else if (path.equals("/pair") && pairing.isPresent()) {
      pair(ask, pairing.get(), body.get().path("code").asText());
    } else if (path.startsWith("/do/") && isKnown) {
      Optional<String> why = shown.act(path.substring("/do/".length()), body.get());
      byte[] said =
          JSON.createObjectNode()
              .put("why", why.orElse(""))
              .toString()
              .getBytes(StandardCharsets.UTF_8);
      ask.getResponseHeaders().set("Content-Type", "application/json");
      answer(ask, 200, said); // a browser would report another status as a fault of the page
    } else {
      refuse(ask, 404, Words.say("server.none"));
    }
  }

  private void pair(HttpExchange ask, Pairing open, String code) throws IOException {
    Optional<String> token = open.open(code, System.nanoTime());
    token.ifPresent(its -> ask.getResponseHeaders().set("Set-Cookie", guard.setCookie(its)));
    refuse(ask, token.isPresent() ? 200 : 403, "");
  }

  /** Empty where it is too long or no JSON. */
  private static Optional<JsonNode> body(HttpExchange ask) throws IOException {
    String length =
        Optional.ofNullable(ask.getRequestHeaders().getFirst("Content-Length")).orElse("0");
    if (!length.matches("[0-9]{1,5}") || Integer.parseInt(length) > MOST_BODY_BYTES) {
      return Optional.empty();
    }
    try (InputStream in = ask.getRequestBody()) {
      byte[] bytes = in.readNBytes(MOST_BODY_BYTES + 1);
      return bytes.length > MOST_BODY_BYTES
          ? Optional.empty()
          : Optional.ofNullable(JSON.readTree(bytes)).filter(JsonNode::isObject);
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
  }

  private static void refuse(HttpExchange ask, int status, String why) throws IOException {
    ask.getResponseHeaders().set("Content-Type", "text/plain; charset=utf-8");
    answer(ask, status, why.getBytes(StandardCharsets.UTF_8));
  }

  private static void answer(HttpExchange ask, int status, byte[] bytes) throws IOException {
    usual(ask);
    ask.sendResponseHeaders(status, bytes.length == 0 ? -1 : bytes.length);
    if (bytes.length > 0) {
      ask.getResponseBody().write(bytes);
    }
  }

  private static void usual(HttpExchange ask) {
    List.of(
            List.of("Cache-Control", "no-store"),
            List.of("X-Content-Type-Options", "nosniff"),
            List.of("Referrer-Policy", "no-referrer"),
            List.of("Cross-Origin-Resource-Policy", "same-origin"))
        .forEach(line -> ask.getResponseHeaders().set(line.get(0), line.get(1)));
  }

  @Override
  public void close() {
    streams.close();
    server.stop(0);
    threads.shutdownNow();
  }
}
