package steadyturn.ingest.sample;

import java.util.List;
import java.util.Optional;

/**
 * Units that ran together on one player. All times are seconds on one axis whose zero is the first
 * sample of the pelvis unit (of the first unit present where there is no pelvis).
 *
 * @param id where it came from, for people: {@code sub-mika_ses-01_task-swing}
 * @param units one stream a body point, in the order of {@link BodyPoint}
 * @param marks wear steps, swings and drill repetitions noted by a person, by onset
 */
public record Recording(String id, Player player, List<UnitStream> units, List<Mark> marks) {

  public Recording {
    units = List.copyOf(units);
    marks = List.copyOf(marks);
    if (units.stream().map(UnitStream::point).distinct().count() != units.size()) {
      throw new IllegalArgumentException(id + ": two units claim the same body point");
    }
  }

  /** The same units with other marks. */
  public Recording with(List<Mark> others) {
    return new Recording(id, player, units, others);
  }

  public Optional<UnitStream> unit(BodyPoint point) {
    return units.stream().filter(u -> u.point() == point).findFirst();
  }
}
