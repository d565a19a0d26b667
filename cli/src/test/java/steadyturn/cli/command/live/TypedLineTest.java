package steadyturn.cli.command.live;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.cli.command.live.TypedLine.Order;
import steadyturn.ingest.mark.MarkWord;

/** Lines as they are typed at the mat. */
class TypedLineTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "hit | HIT | - | -",
        "h 7-iron | HIT | 7-iron | -",
        "hit 7-iron thin and right | HIT | 7-iron | thin and right",
        "h \"7 wood\" fat | HIT | 7 wood | fat",
        "p driver | PRACTICE | driver | -",
        "club 7-iron | CLUB | 7-iron | -",
        "c \"7 wood\" | CLUB | 7 wood | -",
        "c 7 wood | CLUB | 7 wood | -",
        "n left heel up | NOTE | - | left heel up",
        "note | NOTE | - | -",
        "Quiet-Stance | QUIET_STANCE | - | -",
        "3 | QUIET_STANCE | - | -",
        "8 | TURN_ON_SPOT | - | -",
        "drill-rep Slow turns | DRILL_REP | - | Slow turns",
        "d | DONE | - | -"
      })
  void aMarkIsReadWithItsClubAndNote(String line, MarkWord word, String club, String note) {
    TypedLine typed = TypedLine.of(line);
    assertThat(typed.order()).isEqualTo(Order.MARK);
    assertThat(typed.word()).contains(word);
    assertThat(typed.club()).isEqualTo(club == null ? "" : club);
    assertThat(typed.note()).isEqualTo(note == null ? "" : note);
  }

  @ParameterizedTest
  @CsvSource({
    "h thin,true",
    "h 7-iron thin,false",
    "p Driver,false",
    "h \"lob wedge\",false",
    "h sw,false",
    "c fat,false",
    "h,false"
  })
  void aNoteInThePlaceOfAClubIsAskedAbout(String line, boolean isOdd) {
    assertThat(TypedLine.of(line).isOddClub()).isEqualTo(isOdd);
  }

  @ParameterizedTest
  @CsvSource({
    "'',BEGIN",
    "'  ',BEGIN",
    "q,QUIT",
    "quit,QUIT",
    "QUIT,QUIT",
    "s,SKIP",
    "l,LATER",
    "u,UNSAY",
    "unsay,UNSAY"
  })
  void anOrderIsAWordOrItsKey(String line, Order order) {
    assertThat(TypedLine.of(line).order()).isEqualTo(order);
  }

  @ParameterizedTest
  @CsvSource({"bwo,bow", "9,aim", "quti,quit", "skp,skip", "hti 7-iron,hit", "quit now,quit"})
  void whatIsNotKnownIsRefusedWithTheNearestWord(String line, String nearest) {
    assertThat(TypedLine.of(line).order()).isEqualTo(Order.UNKNOWN);
    if (!line.equals("9")) {
      assertThat(TypedLine.nearest(line)).isEqualTo(nearest);
    }
  }

  @Test
  void everyWordOfAnEventsFileCanBeTyped() {
    for (MarkWord word : MarkWord.values()) {
      assertThat(TypedLine.of(word.word()).word()).contains(word);
    }
  }
}
