package steadyturn.analysis.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import steadyturn.analysis.lab.truth.TrueMeasure;

class GoldenLessonTest {

  private static List<TrueMeasure> truth = List.of();

  @BeforeAll
  static void simulate() {
    LessonSpec spec = LessonSpec.standard().withHits(3).withPractices(0).withRateHz(100);
    truth = LessonSimulator.simulate(spec, 7).truth().swings().get(2).truthMeasures();
  }

  @ParameterizedTest(name = "{0} at {1}")
  @CsvFileSource(resources = "golden-lesson.csv")
  void theLessonOfSeedSevenIsStillTheSame(String id, String at, double value, double tolerance) {
    String where = at == null ? "" : at;
    double now =
        truth.stream()
            .filter(m -> m.measure().id().equals(id) && m.at().equals(where))
            .findFirst()
            .orElseThrow()
            .value();
    assertThat(now).isCloseTo(value, within(tolerance));
  }
}
