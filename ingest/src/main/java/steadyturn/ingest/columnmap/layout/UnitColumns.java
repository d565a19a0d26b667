package steadyturn.ingest.columnmap.layout;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadyturn.ingest.sample.BodyPoint;

/**
 * The columns of one unit, or those of them that lie in one table.
 *
 * @param where which rows; empty for all
 * @param accel specific force, or velocity gathered in a step; empty when it lies elsewhere
 * @param gravity what was taken out of {@code accel} and must be put back; mostly empty
 * @param gyro rate, or turn gathered in a step; empty when it lies elsewhere
 * @param rateHz the rate the unit was set to; empty when it is to be taken from the samples
 */
public record UnitColumns(
    BodyPoint point,
    String serialNumber,
    Optional<RowChoice> where,
    Optional<MappedVector> accel,
    Optional<MappedVector> gravity,
    Optional<MappedVector> gyro,
    OptionalDouble rateHz) {

  public UnitColumns at(BodyPoint other) {
    return new UnitColumns(other, serialNumber, where, accel, gravity, gyro, rateHz);
  }

  public List<MappedVector> vectors() {
    return Stream.of(accel, gravity, gyro).flatMap(Optional::stream).toList();
  }

  /** This, and what another part of the same unit has. */
  public UnitColumns and(UnitColumns other) {
    return new UnitColumns(
        point,
        serialNumber.isEmpty() ? other.serialNumber : serialNumber,
        where,
        accel.or(other::accel),
        gravity.or(other::gravity),
        gyro.or(other::gyro),
        rateHz.isPresent() ? rateHz : other.rateHz);
  }

  /** What both have and only one of them can; empty when they go together. */
  public Optional<String> clash(UnitColumns other) {
    return vectors().stream()
        .map(MappedVector::key)
        .filter(key -> other.vectors().stream().anyMatch(v -> v.key().equals(key)))
        .findFirst();
  }
}
