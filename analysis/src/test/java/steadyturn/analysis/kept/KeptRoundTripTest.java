package steadyturn.analysis.kept;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
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

/**
 * Given: lessons whose every word and number is drawn at random (seeds printed in the names), so
 * that no two parts are alike. Expect: the same again, bit by bit, as a kept result must not differ
 * from a fresh one.
 */
final class KeptRoundTripTest {

  /** Reasons with every kind of argument. */
  private enum TrialReason implements ReasonCode {
    WITHOUT,
    WITH;

    @Override
    public List<String> args() {
      return this == WITH ? List.of("point", "swings", "bytes", "leastDeg", "name") : List.of();
    }
  }

  /** Draws the parts of a lesson. */
  private record Drawn(RandomGenerator from) {

    String word() {
      return IntStream.range(0, from.nextInt(6))
          .mapToObj(i -> List.of("a", "Ω", "ü", " ", "\n", "挥", "7").get(from.nextInt(7)))
          .reduce("", String::concat);
    }

    double number() {
      return switch (from.nextInt(8)) {
        case 0 -> Double.NaN;
        case 1 -> Double.NEGATIVE_INFINITY;
        case 2 -> -0.0;
        case 3 -> Double.MIN_VALUE;
        default -> from.nextGaussian(0, 100);
      };
    }

    <T> T of(T[] constants) {
      return constants[from.nextInt(constants.length)];
    }

    List<Integer> some() {
      return IntStream.range(0, from.nextInt(4)).boxed().toList();
    }

    Reason reason() {
      return switch (from.nextInt(4)) {
        case 0 -> Reason.NONE;
        case 1 -> Reason.of(TrialReason.WITHOUT);
        case 2 -> drawn();
        default -> drawn().and(reason());
      };
    }

    private Reason drawn() {
      return Reason.of(
          TrialReason.WITH,
          of(BodyPoint.values()),
          from.nextInt(),
          from.nextLong(),
          number(),
          word());
    }

    /** Withheld with a reason, or in the order of its interval. */
    MeasureValue value() {
      Measure measure = of(Measure.values());
      String at = word();
      if (from.nextBoolean()) {
        return new MeasureValue(measure, at, number(), number(), number(), Grade.WITHHELD, drawn());
      }
      double low = from.nextGaussian();
      double high = from.nextInt(5) == 0 ? Double.POSITIVE_INFINITY : low + from.nextDouble();
      Grade grade = from.nextBoolean() ? Grade.MEASURED : Grade.ESTIMATED;
      return new MeasureValue(measure, at, low, low, high, grade, reason());
    }

    EventTime event() {
      return new EventTime(
          of(SwingEvent.values()),
          number(),
          from.nextDouble(),
          of(Grade.values()),
          reason(),
          number());
    }

    private List<Double> column(int n) {
      return IntStream.range(0, n).mapToObj(i -> number()).toList();
    }

    Curve curve() {
      int n = from.nextInt(4);
      return new Curve(word(), word(), column(n), column(n), column(n));
    }

    SwingResult swing() {
      return new SwingResult(
          from.nextInt(),
          word(),
          of(SwingKind.values()),
          some().stream().map(i -> word()).toList(),
          some().stream().map(i -> event()).toList(),
          some().stream().map(i -> value()).toList(),
          some().stream().map(i -> curve()).toList(),
          word());
    }

    OptionalDouble size() {
      return from.nextBoolean()
          ? OptionalDouble.empty()
          : OptionalDouble.of(100 + from.nextInt(200));
    }

    LessonResult result() {
      return new LessonResult(
          word(),
          new Player(word(), of(Handedness.values()), size(), size(), size(), size()),
          word(),
          some().stream()
              .map(
                  i ->
                      new UnitResult(
                          of(BodyPoint.values()), word(), number(), number(), from.nextInt()))
              .toList(),
          some().stream().map(i -> swing()).toList(),
          some().stream().map(i -> new Notice(word(), reason(), from.nextBoolean())).toList());
    }

    Mark mark() {
      return new Mark(number(), from.nextDouble(), word(), word(), word(), from.nextBoolean());
    }

    Rehearsal rehearsal() {
      return new Rehearsal(number(), some().stream().map(i -> value()).toList());
    }

    KeptLesson lesson() {
      Map<String, List<Mark>> marks = new LinkedHashMap<>();
      some().forEach(i -> marks.put(i + word(), some().stream().map(j -> mark()).toList()));
      Map<String, List<Rehearsal>> rehearsals = new LinkedHashMap<>();
      some()
          .forEach(i -> rehearsals.put(i + word(), some().stream().map(j -> rehearsal()).toList()));
      return new KeptLesson(
          some().stream().map(i -> result()).toList(),
          marks,
          rehearsals,
          some().stream().map(i -> word()).toList());
    }
  }

  private static KeptLesson lesson(long seed) {
    return new Drawn(new Random(seed)).lesson();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16})
  void whatWasKeptIsReadAgainToTheLastBit(long seed) {
    for (long part = 0; part < 20; part++) {
      KeptLesson lesson = lesson(1000 * seed + part);
      KeptLesson again = KeptLesson.of(ByteBuffer.wrap(lesson.bytes()));
      assertThat(again).isEqualTo(lesson);
      assertThat(again.marks().keySet()).containsExactlyElementsOf(lesson.marks().keySet());
      assertThat(again.bytes()).as("the order of all parts").isEqualTo(lesson.bytes());
    }
  }

  @Test
  void bytesWithinALongerBufferAreReadFromWhereTheyBegin() {
    // Given: a kept file's claims lie before the lesson's bytes. Expect: they are passed over.
    KeptLesson lesson = lesson(31);
    byte[] bytes = lesson.bytes();
    byte[] longer = new byte[bytes.length + 12];
    Arrays.fill(longer, (byte) 7);
    System.arraycopy(bytes, 0, longer, 5, bytes.length);
    assertThat(KeptLesson.of(ByteBuffer.wrap(longer, 5, bytes.length).slice())).isEqualTo(lesson);
    assertThat(KeptLesson.of(ByteBuffer.wrap(longer).position(5))).isEqualTo(lesson);
  }

  @Test
  void aSearchFindsEveryNameAsAWordOfItsOwn() {
    // Given: forgetting a player looks for the name between zeros. Expect: it lies so, as UTF-8.
    Mark mark = new Mark(1, 0, "hit", "7-iron", "Zoë slid again");
    byte[] bytes =
        new KeptLesson(List.of(), Map.of("sub-zoe_run-1", List.of(mark)), Map.of(), List.of())
            .bytes();
    String all = new String(bytes, ISO_8859_1);
    for (String word : List.of("sub-zoe_run-1", "Zoë slid again", "7-iron")) {
      assertThat(all).contains("\0" + new String(word.getBytes(UTF_8), ISO_8859_1) + "\0");
    }
    // Given: a word with a zero in it, which a file of marks may hold. Expect: a blank in its place
    KeptLesson torn = new KeptLesson(List.of(), Map.of(), Map.of(), List.of("one\0two", "three"));
    assertThat(KeptLesson.of(ByteBuffer.wrap(torn.bytes())).notices())
        .containsExactly("one two", "three");
  }

  @Test
  void aReasonOfAnotherProgramIsRefused() {
    // Given: a file that names a class of Java, of nobody, and of ours that is no set of reasons.
    // Expect: refused, and the class is not started
    Notice notice = new Notice("", Reason.of(TrialReason.WITHOUT));
    LessonResult result =
        new LessonResult(
            "r",
            Player.unmeasured("x", Handedness.LEFT),
            "",
            List.of(),
            List.of(),
            List.of(notice));
    String ours = TrialReason.class.getName();
    byte[] bytes = new KeptLesson(List.of(result), Map.of(), Map.of(), List.of()).bytes();
    for (String other :
        List.of("java.lang.Thread$State", "steadyturn.Nobody", Measure.class.getName())) {
      byte[] forged = replaced(bytes, ours, other);
      assertThatThrownBy(() -> KeptLesson.of(ByteBuffer.wrap(forged)))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining(other);
    }
    byte[] unknown = replaced(bytes, "WITHOUT", "ELSE");
    assertThatThrownBy(() -> KeptLesson.of(ByteBuffer.wrap(unknown)))
        .hasMessageContaining("has no ELSE");
  }

  /** Words end at a zero and are found by number, so another of another length may stand there. */
  private static byte[] replaced(byte[] bytes, String word, String other) {
    return new String(bytes, ISO_8859_1)
        .replace("\0" + word + "\0", "\0" + other + "\0")
        .getBytes(ISO_8859_1);
  }
}
