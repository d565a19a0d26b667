package steadyturn.analysis.compare;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;

/**
 * A measure at a key position.
 *
 * @param at the word of the key position, or an empty string for the whole swing
 */
public record MeasureAt(Measure measure, String at) {

  public MeasureAt {
    if (measure == Measure.PELVIS_TURN_TO_SLIDE) {
      throw new IllegalArgumentException(
          "pelvis.turn-to-slide at "
              + at
              + " grows without bound where slide is near zero: compare pelvis.slide-per-turn and"
              + " pelvis.turn-share instead");
    }
  }

  /** What a swing says of it, given or withheld; empty where the swing does not know of it. */
  public Optional<MeasureValue> in(SwingResult swing) {
    return swing.measure(measure, at);
  }

  /** The same; where the swing has nothing of the measure at any key position, why that is so. */
  public Optional<MeasureValue> orWhyNot(SwingResult swing) {
    return in(swing).or(() -> swing.measure(measure, "").filter(value -> !value.given()));
  }

  /**
   * What a comparison looks at unless told: turn, slide, slide per turn and turn share at top and
   * impact, the release and the tempo ratio. Few on purpose: every further row asks for stronger
   * evidence in all of them.
   */
  public static List<MeasureAt> defaults() {
    Stream<MeasureAt> pelvis =
        Stream.of(
                Measure.PELVIS_TURN,
                Measure.PELVIS_SLIDE,
                Measure.PELVIS_SLIDE_PER_TURN,
                Measure.PELVIS_TURN_SHARE)
            .flatMap(m -> Stream.of(new MeasureAt(m, "top"), new MeasureAt(m, "impact")));
    Stream<MeasureAt> whole =
        Stream.of(new MeasureAt(Measure.WRIST_RELEASE, ""), new MeasureAt(Measure.TEMPO_RATIO, ""));
    return Stream.concat(pelvis, whole).toList();
  }
}
