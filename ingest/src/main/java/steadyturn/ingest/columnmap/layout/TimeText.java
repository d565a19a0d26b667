package steadyturn.ingest.columnmap.layout;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.time.temporal.TemporalQueries;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Dates and times as text, taken into seconds since 1970 (or since midnight where there is no
 * date).
 *
 * @param format of {@link DateTimeFormatter}
 */
public record TimeText(DateTimeFormatter format) {

  /**
   * ISO 8601, with a blank or a T between date and time; date, fraction and zone may be missing.
   */
  public static final TimeText ISO =
      new TimeText(
          new DateTimeFormatterBuilder()
              .appendPattern("[uuuu-MM-dd]['T'][' ']HH:mm:ss")
              .appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, true)
              .appendPattern("[XXX]")
              .toFormatter(Locale.ROOT));

  public static TimeText of(String pattern) {
    return new TimeText(DateTimeFormatter.ofPattern(pattern, Locale.ROOT));
  }

  /** Seconds; empty where the text is of another form. */
  public OptionalDouble seconds(String text) {
    try {
      TemporalAccessor told = format.parse(text);
      LocalTime time = told.query(TemporalQueries.localTime());
      LocalDate date = told.query(TemporalQueries.localDate());
      if (time == null) {
        return OptionalDouble.empty();
      }
      long days = date == null ? 0 : date.toEpochDay();
      int zoneS =
          told.isSupported(ChronoField.OFFSET_SECONDS) ? told.get(ChronoField.OFFSET_SECONDS) : 0;
      long wholeS = days * 86_400 + time.toSecondOfDay() - zoneS;
      return OptionalDouble.of(wholeS + time.get(ChronoField.NANO_OF_SECOND) * 1e-9);
    } catch (DateTimeException e) {
      return OptionalDouble.empty();
    }
  }

  /** How a time would be written. */
  public String example() {
    return format.format(LocalDate.of(2026, 1, 31).atTime(16, 30, 0).atOffset(ZoneOffset.UTC));
  }
}
