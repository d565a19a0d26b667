package steadyturn.analysis.kept;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.reason.ReasonCode;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;

/** Reads what {@link KeptWriter} wrote, in the same order. */
final class KeptReader {

  private static final Measure[] MEASURES = Measure.values();
  private static final Grade[] GRADES = Grade.values();
  private static final SwingEvent[] EVENTS = SwingEvent.values();
  private static final SwingKind[] KINDS = SwingKind.values();
  private static final BodyPoint[] POINTS = BodyPoint.values();
  private static final Handedness[] SIDES = Handedness.values();

  private final ByteBuffer in;
  private final String[] words;
  private final Reason[] reasons;

  KeptReader(ByteBuffer bytes) {
    in = bytes;
    words = new String[in.getInt()];
    in.get();
    for (int i = 0; i < words.length; i++) {
      int from = in.position();
      int end = from;
      while (in.get(end) != 0) {
        end++;
      }
      words[i] =
          new String(in.array(), in.arrayOffset() + from, end - from, StandardCharsets.UTF_8);
      in.position(end + 1);
    }
    reasons = new Reason[in.getInt()];
    for (int i = 0; i < reasons.length; i++) {
      reasons[i] = readReason();
    }
  }

  KeptLesson lesson() {
    return new KeptLesson(
        list(this::result),
        byRecording(this::mark),
        byRecording(this::rehearsal),
        list(this::word));
  }

  private <T> List<T> list(Supplier<T> part) {
    int size = in.getInt();
    List<T> things = new ArrayList<>(size);
    for (int i = 0; i < size; i++) {
      things.add(part.get());
    }
    return things;
  }

  private <T> Map<String, List<T>> byRecording(Supplier<T> part) {
    Map<String, List<T>> all = new LinkedHashMap<>();
    int size = in.getInt();
    for (int i = 0; i < size; i++) {
      all.put(word(), list(part));
    }
    return all;
  }

  private String word() {
    return words[in.getInt()];
  }

  private Reason reason() {
    return reasons[in.getInt()];
  }

  private boolean yes() {
    return in.get() != 0;
  }

  private LessonResult result() {
    return new LessonResult(
        word(), player(), word(), list(this::unit), list(this::swing), list(this::notice));
  }

  private Player player() {
    return new Player(word(), SIDES[in.get()], size(), size(), size(), size());
  }

  private OptionalDouble size() {
    double sizeMm = in.getDouble();
    return Double.isNaN(sizeMm) ? OptionalDouble.empty() : OptionalDouble.of(sizeMm);
  }

  private UnitResult unit() {
    return new UnitResult(
        POINTS[in.get()], word(), in.getDouble(), in.getDouble(), in.getInt(), day());
  }

  private Optional<LocalDate> day() {
    long epochDay = in.getLong();
    return epochDay == KeptWriter.NO_DAY
        ? Optional.empty()
        : Optional.of(LocalDate.ofEpochDay(epochDay));
  }

  private Notice notice() {
    return new Notice(word(), reason(), yes());
  }

  private SwingResult swing() {
    return new SwingResult(
        in.getInt(),
        word(),
        KINDS[in.get()],
        list(this::word),
        list(this::event),
        list(this::value),
        list(this::curve),
        word());
  }

  private EventTime event() {
    return new EventTime(
        EVENTS[in.get()],
        in.getDouble(),
        in.getDouble(),
        GRADES[in.get()],
        reason(),
        in.getDouble());
  }

  private MeasureValue value() {
    Measure measure = MEASURES[in.get()];
    String at = word();
    Grade grade = GRADES[in.get()];
    Reason why = reason();
    return new MeasureValue(
        measure, at, in.getDouble(), in.getDouble(), in.getDouble(), grade, why);
  }

  private Curve curve() {
    return new Curve(word(), word(), list(in::getDouble), list(in::getDouble), list(in::getDouble));
  }

  private Mark mark() {
    return new Mark(in.getDouble(), in.getDouble(), word(), word(), word(), yes());
  }

  private Rehearsal rehearsal() {
    return new Rehearsal(in.getDouble(), list(this::value));
  }

  private Reason readReason() {
    int set = in.getInt();
    String name = word();
    int args = in.get();
    if (set < 0) {
      return Reason.NONE;
    }
    Map<String, Object> values = new LinkedHashMap<>();
    for (int i = 0; i < args; i++) {
      values.put(word(), arg());
    }
    return new Reason(code(words[set], name), values);
  }

  private Object arg() {
    byte kind = in.get();
    return switch (kind) {
      case 'r' -> reason();
      case 'p' -> POINTS[in.get()];
      case 'i' -> in.getInt();
      case 'l' -> in.getLong();
      case 'd' -> in.getDouble();
      case 's' -> word();
      default -> throw new IllegalArgumentException("no argument is of the kind " + kind);
    };
  }

  /** Only this program's own sets are looked up: a file must not name any class it likes. */
  private static ReasonCode code(String set, String name) {
    if (!set.startsWith("steadyturn.")) {
      throw new IllegalArgumentException(set + " is no set of reasons");
    }
    try {
      Class<?> found = Class.forName(set, false, KeptReader.class.getClassLoader());
      return Arrays.stream(
              Objects.requireNonNull(found.asSubclass(ReasonCode.class).getEnumConstants()))
          .filter(code -> code.name().equals(name))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException(set + " has no " + name));
    } catch (ClassNotFoundException | ClassCastException e) {
      throw new IllegalArgumentException(set + " is no set of reasons", e);
    }
  }
}
