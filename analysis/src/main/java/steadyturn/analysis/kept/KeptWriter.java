package steadyturn.analysis.kept;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;

/**
 * Writes a lesson as bytes: words once each, between zeros, so that a search finds a name among
 * them; then reasons once each; then the rest, which points to them by number.
 */
@SuppressWarnings("EnumOrdinal") // only the same build reads them: its sum is among the claims
final class KeptWriter {

  /** What writes one thing. */
  private interface Part<T> {
    void write(T thing) throws IOException;
  }

  /** In place of the day of a calibration, days since 1970. */
  static final long NO_DAY = Long.MIN_VALUE;

  private final Map<String, Integer> words = new LinkedHashMap<>();
  private final Map<Reason, Integer> reasons = new LinkedHashMap<>();
  private final ByteArrayOutputStream reasonBytes = new ByteArrayOutputStream();
  private final DataOutputStream reasonOut = new DataOutputStream(reasonBytes);
  private final ByteArrayOutputStream bodyBytes = new ByteArrayOutputStream();
  private final DataOutputStream out = new DataOutputStream(bodyBytes);

  byte[] bytes(KeptLesson lesson) {
    try {
      list(lesson.results(), this::result);
      byRecording(lesson.marks(), this::mark);
      byRecording(lesson.rehearsals(), this::rehearsal);
      list(lesson.notices(), this::word);
      ByteArrayOutputStream all = new ByteArrayOutputStream();
      DataOutputStream to = new DataOutputStream(all);
      to.writeInt(words.size());
      to.writeByte(0);
      for (String word : words.keySet()) {
        to.write(word.replace('\0', ' ').getBytes(StandardCharsets.UTF_8));
        to.writeByte(0);
      }
      to.writeInt(reasons.size());
      reasonBytes.writeTo(to);
      bodyBytes.writeTo(to);
      return all.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e); // none in memory
    }
  }

  private <T> void list(List<T> things, Part<T> part) throws IOException {
    out.writeInt(things.size());
    for (T thing : things) {
      part.write(thing);
    }
  }

  private <T> void byRecording(Map<String, List<T>> things, Part<T> part) throws IOException {
    out.writeInt(things.size());
    for (Map.Entry<String, List<T>> its : things.entrySet()) {
      word(its.getKey());
      list(its.getValue(), part);
    }
  }

  private void word(String word) throws IOException {
    out.writeInt(number(word));
  }

  private int number(String word) {
    return words.computeIfAbsent(word, w -> words.size());
  }

  private void result(LessonResult result) throws IOException {
    word(result.recording());
    player(result.player());
    word(result.aim());
    list(result.units(), this::unit);
    list(result.swings(), this::swing);
    list(result.notices(), this::notice);
  }

  private void player(Player player) throws IOException {
    word(player.id());
    out.writeByte(player.handed().ordinal());
    for (OptionalDouble size :
        List.of(
            player.pelvisWidthMm(),
            player.pelvisDepthMm(),
            player.statureMm(),
            player.wornDepthMm())) {
      out.writeDouble(size.orElse(Double.NaN));
    }
  }

  private void unit(UnitResult unit) throws IOException {
    out.writeByte(unit.point().ordinal());
    word(unit.serialNumber());
    out.writeDouble(unit.rateHz());
    out.writeDouble(unit.lostPct());
    out.writeInt(unit.saturatedSamples());
    out.writeLong(unit.calibratedOn().map(LocalDate::toEpochDay).orElse(NO_DAY));
  }

  private void notice(Notice notice) throws IOException {
    word(notice.about());
    out.writeInt(number(notice.reason()));
    out.writeBoolean(notice.refuses());
  }

  private void swing(SwingResult swing) throws IOException {
    out.writeInt(swing.number());
    word(swing.club());
    out.writeByte(swing.kind().ordinal());
    list(swing.flags(), this::word);
    list(swing.events(), this::event);
    list(swing.measures(), this::value);
    list(swing.curves(), this::curve);
    word(swing.note());
  }

  private void event(EventTime event) throws IOException {
    out.writeByte(event.event().ordinal());
    out.writeDouble(event.timeS());
    out.writeDouble(event.sdS());
    out.writeByte(event.grade().ordinal());
    out.writeInt(number(event.why()));
    out.writeDouble(event.lateS());
  }

  private void value(MeasureValue value) throws IOException {
    out.writeByte(value.measure().ordinal());
    word(value.at());
    out.writeByte(value.grade().ordinal());
    out.writeInt(number(value.why()));
    out.writeDouble(value.value());
    out.writeDouble(value.low());
    out.writeDouble(value.high());
  }

  private void curve(Curve curve) throws IOException {
    word(curve.id());
    word(curve.unit());
    for (List<Double> column : List.of(curve.timeS(), curve.value(), curve.sd())) {
      list(column, out::writeDouble);
    }
  }

  private void mark(Mark mark) throws IOException {
    out.writeDouble(mark.onsetS());
    out.writeDouble(mark.durationS());
    word(mark.trialType());
    word(mark.club());
    word(mark.note());
    out.writeBoolean(mark.open());
  }

  private void rehearsal(Rehearsal rehearsal) throws IOException {
    out.writeDouble(rehearsal.timeS());
    list(rehearsal.measures(), this::value);
  }

  /** A reason that speaks of others comes after them. */
  private int number(Reason reason) throws IOException {
    Integer known = reasons.get(reason);
    if (known != null) {
      return known;
    }
    for (Object arg : reason.args().values()) {
      if (arg instanceof Reason other) {
        number(other);
      }
    }
    reasonOut.writeInt(reason.isNone() ? -1 : number(reason.code().getClass().getName()));
    reasonOut.writeInt(number(reason.code().name()));
    reasonOut.writeByte(reason.args().size());
    for (Map.Entry<String, Object> arg : reason.args().entrySet()) {
      reasonOut.writeInt(number(arg.getKey()));
      arg(arg.getValue());
    }
    int number = reasons.size();
    reasons.put(reason, number);
    return number;
  }

  private void arg(Object arg) throws IOException {
    if (arg instanceof Reason other) {
      reasonOut.writeByte('r');
      reasonOut.writeInt(number(other));
    } else if (arg instanceof BodyPoint point) {
      reasonOut.writeByte('p');
      reasonOut.writeByte(point.ordinal());
    } else if (arg instanceof Integer whole) {
      reasonOut.writeByte('i');
      reasonOut.writeInt(whole);
    } else if (arg instanceof Long whole) {
      reasonOut.writeByte('l');
      reasonOut.writeLong(whole);
    } else if (arg instanceof Double real) {
      reasonOut.writeByte('d');
      reasonOut.writeDouble(real);
    } else if (arg instanceof String word) {
      reasonOut.writeByte('s');
      reasonOut.writeInt(number(word));
    } else {
      throw new IllegalArgumentException(arg.getClass() + " is no argument that can be kept");
    }
  }
}
