package steadyturn.cli.command.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import steadyturn.cli.terminal.Console;
import steadyturn.ingest.archive.Consent;
import steadyturn.ingest.archive.PlayerBook;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** Who is recorded without a noted consent is asked for once; nobody who is silent loses a ball. */
class ConsentQuestionTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 5, 4);

  @TempDir Path root;

  private final StringWriter err = new StringWriter();

  @Command
  private static final class Asking {
    @Mixin private Console console;
    @Mixin private ConsentQuestion question;
  }

  @ParameterizedTest
  @CsvSource({
    "yes,NOTED,''",
    "Y,NOTED,''",
    "by Jo Sand,NOTED,Jo Sand",
    "BY Å,NOTED,Å",
    "no,REFUSED,",
    "'',OPEN,"
  })
  void anAnswerIsTakenAtItsWord(String typed, ConsentQuestion.Outcome outcome, String by)
      throws IOException {
    InputStream in =
        new ByteArrayInputStream((typed + "\nhit driver\n").getBytes(Charset.defaultCharset()));
    ConsentQuestion.Answer answer = ask(Optional.of(in));
    assertThat(answer.outcome()).isEqualTo(outcome);
    assertThat(answer.consent())
        .isEqualTo(by == null ? Optional.empty() : Optional.of(new Consent(TODAY, by)));
    assertThat(new String(in.readAllBytes(), Charset.defaultCharset()))
        .as("what was typed ahead is of the recording")
        .isEqualTo("hit driver\n");
    assertThat(err.toString()).contains("Has mika agreed to be recorded");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "table", "club driver", "ja", "Jo Sand", "by", "?"})
  void whatIsNoAnswerIsNobodysNameAndIsAskedAgain(String typed) throws IOException {
    InputStream in =
        new ByteArrayInputStream((typed + "\nyes\n").getBytes(Charset.defaultCharset()));
    assertThat(ask(Optional.of(in)).consent()).contains(new Consent(TODAY, ""));
    assertThat(err.toString()).contains("\"" + typed + "\" is no answer");
  }

  @Test
  void theEndOfTheInputLeavesItOpenAfterAWordThatIsNoAnswer() throws IOException {
    InputStream in = new ByteArrayInputStream("table".getBytes(Charset.defaultCharset()));
    assertThat(ask(Optional.of(in)).outcome()).isEqualTo(ConsentQuestion.Outcome.OPEN);
  }

  @Test
  void withoutATerminalOneLineSaysWhatToDoAndTheRecordingBegins() throws IOException {
    assertThat(ask(Optional.empty()).outcome()).isEqualTo(ConsentQuestion.Outcome.OPEN);
    assertThat(err.toString())
        .hasLineCount(1)
        .contains("no consent of mika is noted", "--agreed-by PARENT", "players consent mika DATE");
  }

  @Test
  void whatIsNotedOnceIsNotAskedAgain() throws IOException {
    Participants.add(root, Player.unmeasured("mika", Handedness.RIGHT));
    ask(Optional.empty(), "--agreed-by", "Jo Sand").note(root, "mika");
    assertThat(PlayerBook.consentOf(root, "mika")).contains(new Consent(TODAY, "Jo Sand"));
    assertThat(ask(Optional.empty()).outcome()).isEqualTo(ConsentQuestion.Outcome.NOTED);
    assertThat(err.toString()).isEmpty();
  }

  private ConsentQuestion.Answer ask(Optional<InputStream> typed, String... words)
      throws IOException {
    Asking asking = new Asking();
    CommandLine line = new CommandLine(asking).setErr(new PrintWriter(err, true));
    line.parseArgs(words);
    return asking.question.ask(root, "mika", TODAY, typed, asking.console);
  }
}
