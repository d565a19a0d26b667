package steadyturn.cli.command.mat;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lesson that was broken off goes on if it is of today. */
class LessonDayTest {

  @ParameterizedTest
  @CsvSource({
    "20261130, 2026-11-30T23:59:00, true",
    "20261130b, 2026-12-01T00:01:00, true",
    "20261130, 2026-12-01T04:01:00, false",
    "20261201, 2026-12-01T04:01:00, true",
    "20261129, 2026-12-01T00:01:00, false",
    "'', 2026-12-01T00:01:00, false"
  })
  void midnightDoesNotEndIt(String lesson, LocalDateTime now, boolean goesOn) {
    assertThat(LessonDay.isOfDay(lesson, now)).isEqualTo(goesOn);
  }
}
