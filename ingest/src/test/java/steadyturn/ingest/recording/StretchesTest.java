package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static steadyturn.ingest.sample.BodyPoint.LEAD_FOREARM;
import static steadyturn.ingest.sample.BodyPoint.LEAD_HAND;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/** A lesson of 40 s (20,000 samples of three units at 500 Hz, seed 3), read piece by piece. */
class StretchesTest {

  @TempDir static Path root;
  private SessionRun run;

  @BeforeAll
  static void writeTheLesson() {
    RecordingWriter.into(root, "Lessons of the test range")
        .write(Lessons.threeUnits(20_000, 3), RunLabel.lesson("mika", "01"), Lessons.NINE_O_CLOCK);
  }

  @BeforeEach
  void openTheLesson() {
    run = Archive.open(root).sessions().get(0).runs().get(0);
  }

  @ParameterizedTest(name = "pieces of {0} s with a margin of {1} s")
  @CsvSource({"7, 0", "7, 2", "13.3, 5", "1, 4", "100, 10"})
  void theOwnPartsOfAllPiecesAreTheWholeRecordingSampleBySample(double ownS, double marginS) {
    // Given: the same run read whole. Expect: every sample in the own part of exactly one piece,
    // with the same time and values to the last bit.
    Recording whole = RecordingReader.read(run).recording();
    for (UnitStream unit : whole.units()) {
      double[] timeS = new double[unit.size()];
      double[] gyroRadPerS = new double[unit.size()];
      int at = 0;
      try (Stretches pieces = RecordingReader.stretches(run, ownS, marginS)) {
        while (pieces.hasNext()) {
          Stretch piece = pieces.next();
          UnitStream part = piece.recording().unit(unit.point()).orElseThrow();
          for (int i = part.indexAt(piece.fromS()); i < part.indexAt(piece.toS()); i++) {
            timeS[at] = part.timeS(i);
            gyroRadPerS[at++] = part.gyroRadPerS(2, i);
          }
        }
      }
      assertThat(at).isEqualTo(unit.size());
      assertThat(timeS).isEqualTo(unit.timeColumnS());
      assertThat(gyroRadPerS).isEqualTo(unit.gyroColumnRadPerS(2));
    }
  }

  @Test
  void aPieceShowsItsMarginOnBothSides() {
    // Given: pieces of 10 s with a margin of 3 s. Expect: the second shows 7 s to 23 s of every
    // unit, to within one sample (2 ms).
    try (Stretches pieces = RecordingReader.stretches(run, 10, 3)) {
      pieces.next();
      Stretch second = pieces.next();
      UnitStream pelvis = second.recording().unit(BodyPoint.PELVIS).orElseThrow();
      assertThat(pelvis.timeS(0)).isBetween(second.fromS() - 3, second.fromS() - 3 + 0.002);
      assertThat(pelvis.timeS(pelvis.size() - 1))
          .isBetween(second.toS() + 3 - 0.0021, second.toS() + 3);
    }
  }

  @Test
  void eachMarkIsOwnedByOnePiece() {
    List<Mark> owned = new ArrayList<>();
    try (Stretches pieces = RecordingReader.stretches(run, 3, 1)) {
      while (pieces.hasNext()) {
        Stretch piece = pieces.next();
        piece.recording().marks().stream()
            .filter(m -> piece.fromS() <= m.onsetS() && m.onsetS() < piece.toS())
            .forEach(owned::add);
      }
    }
    assertThat(owned).isEqualTo(Lessons.threeUnits(1, 3).marks());
  }

  @Test
  void aUnitThatSharesNoTimeWithThePelvisIsNamedAtTheEnd(@TempDir Path other) {
    // Given: the forearm's start told an hour late. Expect: two units in the pieces, pieces end
    // with
    // the pelvis, and the forearm's table is named.
    Broken lesson = new Broken(other);
    lesson.edit(
        other.resolve("sub-mika/ses-01/sub-mika_ses-01_scans.tsv"),
        text -> text.replaceAll("(leadForearm.*T)09:", "$110:"));
    SessionRun late = Archive.open(other).sessions().get(0).runs().get(0);
    try (Stretches pieces = RecordingReader.stretches(late, 10, 1)) {
      assertThat(pieces.next().recording().units()).hasSize(2);
      assertThat(pieces.hasNext()).isFalse();
      assertThat(pieces.notices())
          .containsExactly(
              "sub-mika_ses-01_task-swing_tracksys-leadForearm_motion.tsv: left out, it shares no"
                  + " time with the first unit. Check acq_time in the scans file.");
    }
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"empty", "no time", "no channels file"})
  void aUnitThatCannotBeReadIsNamedAndTheOthersStay(String damage, @TempDir Path other) {
    // Given: the pelvis, whose first sample is the zero of the axis and which has the marks,
    // spoilt.
    // Expect: forearm, hand and marks as before, but for a shift of all where the forearm's first
    // sample has become the zero (to 1e-9 s, of sums), and what was found.
    Broken lesson = new Broken(other);
    Path table = lesson.motion(Broken.PELVIS + "motion.tsv");
    Path channels = lesson.motion(Broken.PELVIS + "channels.tsv");
    Recording twin = lesson.read().recording();
    switch (damage) {
      case "empty" -> lesson.edit(table, text -> "");
      case "no time" -> lesson.edit(table, text -> text.replaceAll("(?m)^[0-9.]+", "n/a"));
      default -> lesson.delete(channels);
    }
    SessionRun spoilt = Archive.open(other).sessions().get(0).runs().get(0);
    try (Stretches pieces = RecordingReader.stretches(spoilt, 10, 1)) {
      Recording read = pieces.next().recording();
      assertThat(read.units())
          .extracting(UnitStream::point)
          .containsExactly(LEAD_FOREARM, LEAD_HAND);
      double byS = read.units().get(0).timeS(0) - twin.units().get(1).timeS(0);
      assertThat(read.units().get(1).timeS(19))
          .isCloseTo(twin.units().get(2).timeS(19) + byS, within(1e-9));
      assertThat(read.marks().get(0).onsetS())
          .isCloseTo(twin.marks().get(0).onsetS() + byS, within(1e-9));
      assertThat(pieces.hasNext()).isFalse();
      assertThat(pieces.unread()).singleElement().asString().contains(Broken.PELVIS);
    }
    List<RecordingException> unread = new ArrayList<>();
    assertThat(RecordingReader.readUnits(spoilt, unread::add)).hasSize(2);
    assertThat(unread).singleElement().asString().contains(Broken.PELVIS);
  }

  @Test
  void aUnitThatBreaksOffEndsThere(@TempDir Path other) {
    // Given: line 12 of the pelvis holds a word. Expect: its 11 samples before, the others whole.
    Broken lesson = new Broken(other);
    lesson.cell(12, 7, "fast");
    SessionRun spoilt = Archive.open(other).sessions().get(0).runs().get(0);
    try (Stretches pieces = RecordingReader.stretches(spoilt, 10, 1)) {
      assertThat(pieces.next().recording().units())
          .extracting(UnitStream::size)
          .containsExactly(11, 20, 20);
      assertThat(pieces.hasNext()).isFalse();
      assertThat(pieces.unread()).singleElement().asString().contains("line 12");
    }
  }

  @Test
  void aRunOfWhichNothingCanBeReadFails(@TempDir Path other) {
    Broken lesson = new Broken(other);
    for (String unit : List.of("pelvis", "leadForearm", "leadHand")) {
      lesson.edit(lesson.motion(Broken.PELVIS.replace("pelvis", unit) + "motion.tsv"), t -> "");
    }
    SessionRun spoilt = Archive.open(other).sessions().get(0).runs().get(0);
    try (Stretches pieces = RecordingReader.stretches(spoilt, 10, 1)) {
      assertThatThrownBy(pieces::hasNext).isInstanceOf(RecordingException.class);
    }
    assertThatThrownBy(() -> RecordingReader.readUnits(spoilt, failure -> {}))
        .isInstanceOf(RecordingException.class);
  }
}
