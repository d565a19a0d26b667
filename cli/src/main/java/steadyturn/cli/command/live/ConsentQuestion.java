package steadyturn.cli.command.live;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Option;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;
import steadyturn.ingest.archive.Consent;
import steadyturn.ingest.archive.PlayerBook;

/**
 * Asks whether a player agreed to be recorded where nothing is noted of it: once, before the
 * recording. Where nobody types it is said, and the recording begins all the same: a ball that was
 * hit cannot be hit again, a note can be made later.
 */
final class ConsentQuestion {

  private static final Set<String> YES = Set.of("yes", "y");
  private static final Set<String> NO = Set.of("no", "n");
  private static final String PARENT_WORD = "by ";

  @Option(names = "--agreed")
  private boolean agreed;

  @Option(names = "--agreed-by", paramLabel = "PARENT")
  private String parent = "";

  /** What came of it. */
  enum Outcome {
    NOTED,
    OPEN,
    REFUSED
  }

  /** An answer, and the consent to be noted once the player has a line in the archive. */
  record Answer(Outcome outcome, Optional<Consent> consent) {

    /** Notes it; nothing where there is nothing to note. */
    void note(Path root, String player) {
      consent.ifPresent(its -> PlayerBook.agreed(root, player, its));
    }
  }

  /**
   * Asks, where nothing is noted and nothing was said on the command line.
   *
   * @param typed where answers are typed; empty without a terminal
   */
  Answer ask(
      Path root, String player, LocalDate today, Optional<InputStream> typed, Console console)
      throws IOException {
    if (agreed || !parent.isBlank()) {
      return noted(today, parent.strip());
    }
    if (PlayerBook.consentOf(root, player).isPresent()) {
      return new Answer(Outcome.NOTED, Optional.empty());
    }
    if (typed.isEmpty()) {
      console.warn(Words.say("consent.open", player, root));
      return new Answer(Outcome.OPEN, Optional.empty());
    }
    Words.say("consent.ask", player).lines().forEach(console.err()::println);
    Optional<Answer> answer = Optional.empty();
    while (answer.isEmpty()) {
      console.err().flush();
      answer = answer(line(typed.get()), root, player, today, console);
    }
    return answer.get();
  }

  /** Empty for a word that is no answer: a step, a club, a name without a word of consent. */
  private static Optional<Answer> answer(
      String line, Path root, String player, LocalDate today, Console console) {
    String word = line.toLowerCase(Locale.ROOT);
    if (line.isEmpty()) {
      console.warn(Words.say("consent.open", player, root));
      return Optional.of(new Answer(Outcome.OPEN, Optional.empty()));
    }
    if (NO.contains(word)) {
      console.warn(Words.say("consent.refused", player));
      return Optional.of(new Answer(Outcome.REFUSED, Optional.empty()));
    }
    if (YES.contains(word)) {
      return Optional.of(noted(today, ""));
    }
    if (word.startsWith(PARENT_WORD)) {
      return Optional.of(noted(today, line.substring(PARENT_WORD.length()).strip()));
    }
    console.warn(Words.say("consent.again", line));
    return Optional.empty();
  }

  private static Answer noted(LocalDate today, String by) {
    return new Answer(Outcome.NOTED, Optional.of(new Consent(today, by)));
  }

  /** One line and no byte more: what is typed ahead is of the recording. */
  private static String line(InputStream typed) throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int letter = typed.read(); letter >= 0 && letter != '\n'; letter = typed.read()) {
      line.write(letter);
    }
    return line.toString(Charset.defaultCharset()).strip();
  }
}
