package steadyturn.ingest.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.UnitStream;

/**
 * A good lesson (three units, 20 samples each at 500 Hz) is spoilt in one place. Expect: one line
 * that names the place, what was found and what to do; what can be saved is saved.
 */
class BadInputTest {

  @TempDir Path root;
  private Broken lesson;

  @BeforeEach
  void writeAGoodLesson() {
    lesson = new Broken(root);
  }

  private Path pelvisTable() {
    return lesson.motion(Broken.PELVIS + "motion.tsv");
  }

  private UnitStream pelvis() {
    return lesson.read().recording().unit(BodyPoint.PELVIS).orElseThrow();
  }

  @Test
  void aMissingChannelsFileIsNamed() {
    lesson.delete(lesson.motion(Broken.PELVIS + "channels.tsv"));
    assertThat(lesson.refusal())
        .isEqualTo(
            Broken.PELVIS
                + "motion.tsv: its sidecar "
                + Broken.PELVIS
                + "channels.tsv is missing; it names its columns and units. Put it beside the"
                + " table.");
  }

  @Test
  void aMissingMotionSidecarCostsTheFactsNotTheSamples() {
    // Expect: the rate from the time column, 500 Hz within 0.1 % (microsecond rounding of 38 ms).
    lesson.delete(lesson.motion(Broken.PELVIS + "motion.json"));
    assertThat(lesson.notice()).contains("_motion.json is missing");
    assertThat(pelvis().size()).isEqualTo(20);
    assertThat(pelvis().facts().nominalRateHz()).isCloseTo(500, within(0.5));
  }

  @Test
  void aWrongColumnCountIsToldWithItsLine() {
    lesson.editLine(12, line -> line + "\t0.5");
    assertThat(lesson.refusal())
        .isEqualTo(
            Broken.PELVIS
                + "motion.tsv, line 12: 8 columns where the channels file names 7. Separate columns"
                + " by one tab and give the channels file one line a column.");
  }

  @Test
  void tooFewColumnsAreToldWithTheirLine() {
    lesson.editLine(3, line -> line.substring(0, line.lastIndexOf('\t')));
    assertThat(lesson.refusal()).contains("line 3: 6 columns where the channels file names 7");
  }

  @Test
  void lostValuesAreKeptAsLostAndCounted() {
    // Given: n/a, NaN and an empty cell in three lines. Expect: NaN there, one notice, all samples.
    lesson.cell(4, 2, "n/a").cell(5, 3, "NaN").cell(6, 7, "");
    assertThat(lesson.notice())
        .isEqualTo(
            Broken.PELVIS
                + "motion.tsv, line 4: the first of 3 lost values (n/a, NaN or an empty cell).");
    assertThat(pelvis().size()).isEqualTo(20);
    assertThat(pelvis().accelMps2(0, 3)).isNaN();
    assertThat(pelvis().accelMps2(1, 4)).isNaN();
    assertThat(pelvis().gyroRadPerS(2, 5)).isNaN();
  }

  @Test
  void textInANumberIsToldWithLineAndColumn() {
    lesson.cell(9, 7, "fast");
    assertThat(lesson.refusal())
        .isEqualTo(
            Broken.PELVIS
                + "motion.tsv, line 9, column gyro_z: \"fast\" is not a number. Write a number, or"
                + " n/a where the value is lost.");
  }

  @Test
  void aDecimalCommaIsToldAsSuch() {
    lesson.cell(9, 7, "12,5");
    assertThat(lesson.refusal())
        .contains("line 9, column gyro_z: \"12,5\" is not a number. Use a dot as decimal mark");
  }

  @Test
  void infinityIsNoNumber() {
    lesson.cell(9, 5, "Infinity");
    assertThat(lesson.refusal()).contains("column gyro_x: \"Infinity\" is not a number");
  }

  @Test
  void timeRunningBackwardsIsToldWithItsLine() {
    lesson.cell(11, 1, "0.001000");
    assertThat(lesson.refusal())
        .isEqualTo(
            Broken.PELVIS
                + "motion.tsv, line 11: time runs backwards, from 0.018 s to 0.001 s after the"
                + " start. Split the recording where its clock was set back.");
  }

  @Test
  void repeatedSamplesAreLeftOutAndCounted() {
    lesson.editLine(8, line -> line + "\n" + line + "\n" + line);
    assertThat(lesson.notice())
        .contains("line 9: the first of 2 samples that repeat the time of the one before");
    assertThat(pelvis().size()).isEqualTo(20);
  }

  @Test
  void aSampleWithoutATimeIsLeftOutAndCounted() {
    lesson.cell(8, 1, "n/a");
    assertThat(lesson.read().notices()).anyMatch(n -> n.contains("1 samples without a time"));
    assertThat(pelvis().size()).isEqualTo(19);
  }

  @Test
  void aLastLineCutBetweenColumnsIsLeftOut() {
    lesson.edit(pelvisTable(), text -> text.substring(0, text.lastIndexOf('\t')));
    assertThat(lesson.notice())
        .isEqualTo(
            Broken.PELVIS + "motion.tsv, line 20: the last line is cut short; it was left out.");
    assertThat(pelvis().size()).isEqualTo(19);
  }

  @Test
  void aLastLineCutInsideItsLastNumberIsLeftOut() {
    // Given: three digits and the line end are lost: "-12.345678" became "-12.345". Expect: the
    // shorter number is not believed.
    lesson.edit(pelvisTable(), text -> text.substring(0, text.length() - 4));
    assertThat(lesson.notice()).contains("line 20: the last line is cut short");
    assertThat(pelvis().size()).isEqualTo(19);
  }

  @Test
  void aLastLineThatLacksOnlyItsLineEndIsKept() {
    lesson.edit(pelvisTable(), text -> text.substring(0, text.length() - 1));
    assertThat(lesson.read().notices()).isEmpty();
    assertThat(pelvis().size()).isEqualTo(20);
  }

  @Test
  void anEmptyFileIsToldAsSuch() {
    lesson.put(pelvisTable(), new byte[0]);
    assertThat(lesson.refusal())
        .isEqualTo(
            Broken.PELVIS
                + "motion.tsv: is empty. Copy the recording again, or take this table out of it.");
  }

  @Test
  void aTableInUtf16IsToldAsSuch() {
    lesson.put(pelvisTable(), Broken.text(pelvisTable()).getBytes(StandardCharsets.UTF_16));
    assertThat(lesson.refusal())
        .isEqualTo(
            Broken.PELVIS
                + "motion.tsv: is written in UTF-16 or is no text at all. Save it as UTF-8 text.");
  }

  @Test
  void aTableWithAByteOrderMarkOrWindowsLineEndsIsReadAsIfItHadNone() {
    lesson.edit(pelvisTable(), text -> "\uFEFF" + text.replace("\n", "\r\n"));
    assertThat(lesson.read().notices()).isEmpty();
    assertThat(pelvis().size()).isEqualTo(20);
  }

  @Test
  void aChannelsFileInLatin1IsReadAndTold() {
    // Given: rates in "°/s" with the degree sign as the single byte B0, as older programs write.
    Path channels = lesson.motion(Broken.PELVIS + "channels.tsv");
    double radPerS = pelvis().gyroRadPerS(0, 0);
    lesson.put(
        channels,
        Broken.text(channels).replace("rad/s", "°/s").getBytes(StandardCharsets.ISO_8859_1));
    assertThat(lesson.notice()).contains("is not UTF-8; read as ISO-8859-1");
    // Within 1e-12: one multiplication.
    assertThat(pelvis().gyroRadPerS(0, 0))
        .isCloseTo(radPerS * Math.PI / 180, within(1e-12 * Math.abs(radPerS)));
  }

  @Test
  void aUnitThatSharesNoTimeWithThePelvisIsLeftOutAndTold() {
    Path scans = root.resolve("sub-mika/ses-01/sub-mika_ses-01_scans.tsv");
    lesson.edit(
        scans,
        text ->
            text.lines()
                .map(l -> l.contains("leadForearm") ? l.replace("T09:", "T10:") : l)
                .collect(java.util.stream.Collectors.joining("\n")));
    assertThat(lesson.notice())
        .isEqualTo(
            "sub-mika_ses-01_task-swing: lead_forearm left out, it shares no time with pelvis"
                + " (3600.0 to 3600.1 s against 0.0 to 0.0 s). Check acq_time in the scans file.");
    assertThat(lesson.read().recording().units()).hasSize(2);
  }

  @Test
  void withoutStartTimesTheUnitsAreTakenToStartTogetherAndThatIsTold() {
    lesson.delete(root.resolve("sub-mika/ses-01/sub-mika_ses-01_scans.tsv"));
    assertThat(lesson.notice())
        .isEqualTo(
            "sub-mika_ses-01_task-swing: no start times in a scans file; all units are taken to"
                + " start together.");
    assertThat(lesson.read().recording().units()).allMatch(u -> u.timeS(0) == 0);
  }

  @Test
  void aPlayerWithoutASideIsToldHowToFillIt() {
    lesson.edit(root.resolve("participants.tsv"), text -> text.replace("left", "n/a"));
    assertThat(lesson.refusal())
        .endsWith(
            "participants.tsv, line 2, column handedness: sub-mika has none. Write right or left:"
                + " the side the player swings from.");
    // The samples can be judged all the same: no side is needed for that.
    SessionRun run = Archive.open(root).sessions().get(0).runs().get(0);
    assertThat(RecordingReader.readUnits(run)).hasSize(3);
  }

  @Test
  void aPlayerWithoutARowIsToldHowToAddIt() {
    lesson.edit(root.resolve("participants.tsv"), text -> text.replace("sub-mika", "sub-noor"));
    assertThat(lesson.refusal())
        .endsWith(
            "participants.tsv: has no row for sub-mika. Add one with the player's handedness, right"
                + " or left (the side they swing from).");
  }

  @Test
  void aMissingParticipantsFileIsToldHowToWriteIt() {
    lesson.delete(root.resolve("participants.tsv"));
    assertThat(lesson.refusal())
        .contains("participants.tsv: does not exist")
        .contains("handedness");
  }

  @Test
  void anUnknownBodyPointIsNamedAndTheOtherUnitsAreRead() {
    lesson.edit(
        lesson.motion(Broken.FOREARM + "channels.tsv"),
        text -> text.replace("lead_forearm", "left_knee"));
    assertThat(lesson.notice())
        .isEqualTo(
            Broken.FOREARM
                + "channels.tsv: body points left out, as this program has no use for them:"
                + " left_knee.");
    assertThat(lesson.read().recording().units()).hasSize(2);
  }

  @Test
  void aRunWithNothingButUnknownBodyPointsIsRefused() {
    for (String unit : new String[] {"pelvis", "leadForearm", "leadHand"}) {
      lesson.edit(
          lesson.motion("sub-mika_ses-01_task-swing_tracksys-" + unit + "_channels.tsv"),
          text -> text.replaceAll("\tpelvis\t|\tlead_forearm\t|\tlead_hand\t", "\tknee\t"));
    }
    assertThat(lesson.refusal()).contains("no unit at a body point known here (pelvis,");
  }

  @Test
  void anUnknownUnitIsToldWithItsLine() {
    lesson.edit(
        lesson.motion(Broken.PELVIS + "channels.tsv"), text -> text.replace("m/s^2", "ft/s^2"));
    assertThat(lesson.refusal())
        .isEqualTo(
            Broken.PELVIS
                + "channels.tsv, line 3, column units: \"ft/s^2\" is no unit of acceleration known"
                + " here. Use m/s^2 or g.");
  }

  @Test
  void brokenJsonIsToldWithItsLine() {
    lesson.edit(lesson.motion(Broken.PELVIS + "motion.json"), text -> text.replaceFirst(",", ";"));
    assertThat(lesson.refusal()).contains("motion.json, line 2: is no valid JSON");
  }

  @Test
  void aTimeOfDayThatIsNoneIsToldAndTheSamplesAreRead() {
    Path scans = root.resolve("sub-mika/ses-01/sub-mika_ses-01_scans.tsv");
    lesson.edit(scans, text -> text.replaceFirst("2025-03-31T", "31.3.2025 "));
    assertThat(Archive.open(root).notices())
        .singleElement()
        .asString()
        .contains("_scans.tsv, line 2, column acq_time: \"31.3.2025 09:00")
        .hasLineCount(1);
    assertThat(lesson.notice()).contains("no start times in a scans file");
    assertThat(pelvis().size()).isEqualTo(20);
  }

  @Test
  void anEventsFileWithoutOnsetIsTold() {
    lesson.edit(lesson.motion(Broken.PELVIS + "events.tsv"), text -> text.replace("onset", "when"));
    assertThat(lesson.refusal()).contains("events.tsv, line 1: lacks a column onset or duration");
  }

  @Test
  void aRunTooLargeForTheMemoryIsRefusedBeforeItIsRead() {
    // Given: a heap of 1 KiB for three units of 20 samples, 7 columns of 8 bytes: 3.4 KB. Expect: a
    // refusal that names another way; the same run in 1 MiB passes.
    SessionRun run = Archive.open(root).sessions().get(0).runs().get(0);
    RunPlan plan = RunPlan.of(run, PointWords::pointOf, new java.util.ArrayList<>(), failure -> {});
    RecordingException told =
        org.assertj.core.api.Assertions.catchThrowableOfType(
            RecordingException.class, () -> RecordingReader.requireRoom(plan, 1 << 10));
    assertThat(told.getMessage()).contains("to be held whole").contains("Analyse it in pieces");
    RecordingReader.requireRoom(plan, 1 << 20);
  }

  @Test
  void aBinaryFileIsNoMotionTable() {
    byte[] bytes = new byte[400_000];
    java.util.Arrays.fill(bytes, (byte) 0xA7);
    lesson.put(pelvisTable(), bytes);
    assertThat(lesson.refusal()).contains("has no line end within 256 KiB");
  }

  @Test
  void aPathWithoutRecordingsIsToldWhatIsNeeded(@TempDir Path empty) {
    RecordingException told =
        org.assertj.core.api.Assertions.catchThrowableOfType(
            RecordingException.class, () -> Archive.open(empty));
    assertThat(told.getMessage()).contains("holds no recording. Give a dataset folder");
  }

  @Test
  void aNewRecordingThatContradictsThePlayersSideIsRefused() {
    // Given: mika is left-handed in the archive; a new run says right-handed. Expect: a refusal
    // before anything is written, as one of the two is a mix-up of players.
    var right =
        new steadyturn.ingest.sample.Recording(
            "x",
            steadyturn.ingest.sample.Player.unmeasured("mika", Handedness.RIGHT),
            Lessons.threeUnits(5, 1).units(),
            java.util.List.of());
    RecordingException told =
        org.assertj.core.api.Assertions.catchThrowableOfType(
            RecordingException.class,
            () ->
                RecordingWriter.into(root, "x")
                    .write(right, RunLabel.lesson("mika", "02"), Lessons.NINE_O_CLOCK));
    assertThat(told.getMessage()).contains("sub-mika swings left-handed, the new recording says");
    assertThat(root.resolve("sub-mika/ses-02")).doesNotExist();
  }
}
