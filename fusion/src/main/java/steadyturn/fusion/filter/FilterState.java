package steadyturn.fusion.filter;

import java.util.Arrays;
import java.util.List;

/**
 * The whole memory of a filter between two samples, as numbers in a fixed order.
 *
 * @param filter the kind of filter that wrote it and that alone can read it
 * @param values its numbers
 */
public record FilterState(String filter, List<Double> values) {

  public FilterState {
    values = List.copyOf(values);
  }

  public static FilterState of(String filter, double[] values) {
    return new FilterState(filter, Arrays.stream(values).boxed().toList());
  }

  /** The numbers, if they are of this kind and number; else refuses with both. */
  public double[] valuesFor(String wantedFilter, int wantedLength) {
    if (!filter.equals(wantedFilter) || values.size() != wantedLength) {
      throw new IllegalArgumentException(
          "a %s filter of %d numbers cannot resume from the state of a %s filter of %d"
              .formatted(wantedFilter, wantedLength, filter, values.size()));
    }
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
