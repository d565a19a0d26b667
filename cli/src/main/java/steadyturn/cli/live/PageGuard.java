package steadyturn.cli.live;

import com.sun.net.httpserver.Headers;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Says who may ask. A page shows the token that it was opened with, and comes from this very
 * server: another program's page, another name for this machine and another site are refused
 * whatever they know.
 */
final class PageGuard {

  private static final int TOKEN_BYTES = 24;

  private final Set<String> hosts;
  private final String cookie;
  private final String token = fresh();
  private final List<String> paired = new ArrayList<>();
  private final SecureRandom random = new SecureRandom();

  /**
   * A guard with a token of its own.
   *
   * @param hosts names and addresses with the port by which the server may be asked
   */
  PageGuard(Set<String> hosts, int port) {
    this.hosts = Set.copyOf(hosts);
    cookie = "steadyturn-" + port;
  }

  private static String fresh() {
    byte[] bytes = new byte[TOKEN_BYTES];
    new SecureRandom().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /** What the browser is opened with. */
  String token() {
    return token;
  }

  /** Whether a request is meant for this server and, where it says so, comes from its own page. */
  boolean isOurs(Headers asked) {
    String host = first(asked, "Host");
    String origin = first(asked, "Origin");
    String site = first(asked, "Sec-Fetch-Site");
    boolean comesFromUs = origin.isEmpty() || origin.equals("http://" + host);
    boolean isSameSite = site.isEmpty() || site.equals("same-origin") || site.equals("none");
    return hosts.contains(host) && comesFromUs && isSameSite;
  }

  /** Whether a request for a change says that it comes from the page of this server. */
  boolean namesItsOrigin(Headers asked) {
    return !first(asked, "Origin").isEmpty();
  }

  /** Whether a request shows a token of this start. */
  synchronized boolean isKnown(Headers asked) {
    String shown =
        asked.getOrDefault("Cookie", List.of()).stream()
            .flatMap(line -> Stream.of(line.split(";", -1)))
            .map(String::strip)
            .filter(part -> part.startsWith(cookie + "="))
            .map(part -> part.substring(cookie.length() + 1))
            .findFirst()
            .orElse("");
    return isSame(shown, token) || paired.stream().anyMatch(each -> isSame(shown, each));
  }

  boolean isToken(String word) {
    return isSame(word, token);
  }

  /** In a time that does not tell how much of it was right. */
  static boolean isSame(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }

  /** What the browser is to show from now on. */
  String setCookie(String its) {
    return cookie + "=" + its + "; Path=/; HttpOnly; SameSite=Strict";
  }

  /** A token for a screen that was paired. */
  synchronized String pair() {
    paired.add(fresh());
    return paired.get(paired.size() - 1);
  }

  /** A code of six digits. */
  String code() {
    return Integer.toString(1_000_000 + random.nextInt(1_000_000)).substring(1);
  }

  private static String first(Headers asked, String name) {
    return Optional.ofNullable(asked.getFirst(name)).orElse("");
  }
}
