package steadyturn.cli.command.mat;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.archive.Consent;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;

/** Who is added by the page, and who agreed to be recorded. */
class PlayersTest {

  @TempDir Path root;

  private static JsonNode told(String json) throws IOException {
    return new ObjectMapper().readTree(json.replace('\'', '"'));
  }

  @ParameterizedTest
  @CsvSource({
    "player, '', ''",
    "player, Ida, ''",
    "parent, ' Ida Lind ', Ida Lind",
    "parent, ' ', nobody",
    "nobody, Ida, nobody",
    "yes, Ida, nobody"
  })
  void aChildNeedsTheNameOfAParent(String who, String parent, String by) throws IOException {
    Optional<Consent> consent =
        Players.consent(told("{'consent': '" + who + "', 'parent': '" + parent + "'}"));
    assertThat(consent.map(Consent::by).orElse("nobody")).isEqualTo(by == null ? "" : by);
  }

  @Test
  void aPlayerIsAskedOnceHoweverLongAgoTheyWereAdded() throws IOException {
    Players players = new Players(root);
    JsonNode told = told("{'name': 'Nele Süß', 'handed': 'left', 'width': 250, 'depth': 9}");
    assertThat(players.refusal(told)).hasValueSatisfying(why -> assertThat(why).contains("Ask"));
    Player nele = players.add(told);
    assertThat(nele.handed()).isEqualTo(Handedness.LEFT);
    assertThat(nele.pelvisWidthMm()).hasValue(250);
    assertThat(nele.pelvisDepthMm()).isEmpty(); // 9 mm is no size of a person
    assertThat(players.name(nele.id())).isEqualTo("Nele Süß");
    String known = "{'label': '" + nele.id() + "'";
    assertThat(new Players(root).refusal(told(known + "}"))).isPresent();
    assertThat(players.refusal(told(known + ", 'consent': 'player'}"))).isEmpty();
    assertThat(players.chosen(told(known + ", 'consent': 'player'}")).id()).isEqualTo(nele.id());
    assertThat(players.refusal(told(known + "}"))).isEmpty();
    assertThat(new Players(root).refusal(told(known + "}"))).isEmpty();
  }
}
