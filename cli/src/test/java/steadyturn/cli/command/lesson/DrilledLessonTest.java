package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadyturn.analysis.lab.LessonSimulator;
import steadyturn.analysis.lab.LessonSpec;
import steadyturn.analysis.lab.SyntheticLesson;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.body.Variation;
import steadyturn.analysis.lab.truth.SwingTruth;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.cli.CommandLineRun;
import steadyturn.ingest.recording.dataset.RunLabel;
import steadyturn.ingest.recording.write.RecordingWriter;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;

/**
 * A drill from the files to the table and the page. Given: a simulated lesson of five slow half
 * swings without a ball that keep their angle, marked as the drill "hands apart" (goal 85 to 115 %
 * of the cock kept), seed 21.
 */
class DrilledLessonTest {

  @TempDir static Path archive;

  @BeforeAll
  static void writeTheLesson() {
    PlayerStyle style =
        PlayerStyle.steadyTurner()
            .with(Trait.ARM_TOP_DEG, Variation.about(-125, 3, 3))
            .with(Trait.ARM_FINISH_DEG, Variation.about(95, 3, 3))
            .with(Trait.BACK_S, Variation.about(1.5, 0.1, 0.08))
            .with(Trait.DOWN_S, Variation.about(0.8, 0.05, 0.05))
            .with(Trait.RELEASE_START_MS, Variation.about(350, 20, 20))
            .with(Trait.RELEASE_LENGTH_MS, Variation.about(350, 20, 20));
    SyntheticLesson lesson =
        LessonSimulator.simulate(
            LessonSpec.standard()
                .withPlayerId("ole")
                .withPlayer(style)
                .withHits(0)
                .withPractices(5)
                .withRateHz(200),
            21);
    Recording r = lesson.recording();
    List<SwingTruth> swings = lesson.truth().swings();
    double fromS = swings.get(0).eventS(SwingEvent.TAKEAWAY).orElseThrow() - 2;
    double toS = swings.get(4).eventS(SwingEvent.IMPACT).orElseThrow() + 3;
    List<Mark> marks = new ArrayList<>(r.marks());
    marks.add(new Mark(fromS, toS - fromS, "drill-rep", "", "apart-hands"));
    RecordingWriter.into(archive, "drilled")
        .write(
            new Recording(r.id(), r.player(), r.units(), marks),
            RunLabel.lesson("ole", "03"),
            LocalDateTime.parse("2026-05-04T10:00:00"));
  }

  @Test
  void theTableShowsEveryRepetitionWithItsRange() {
    CommandLineRun run = CommandLineRun.of("analyze", archive.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out())
        .contains("No full swing was found.", "Drills of lesson sub-ole_ses-03")
        .contains("Hands apart: cock kept, arm level down between 85 and 115 %")
        .containsPattern("5 +\\d+\\.\\d +~\\d+ ±\\d+ +inside")
        .contains("5 inside the goal, 0 outside, 0 cannot be told.");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 100);
  }

  @Test
  void thePageSaysTheSame() throws IOException {
    CommandLineRun run =
        CommandLineRun.of("report", archive.toString(), "--out", archive.resolve("p").toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(Files.readString(Path.of(run.out().strip())))
        .contains("No full swing was recorded in this lesson.")
        .contains("Hands apart: of the repetitions 5 were inside the goal, 0 outside")
        .contains("Stop if anything hurts")
        .doesNotContain("needs the pelvis unit", "None is needed for now");
  }

  @Test
  void aTeachersOwnGoalDecides() throws IOException {
    // Given: the same drill with a goal no wrist reaches, 120 to 140 %. Expect: none in it.
    Path own = archive.resolve("own.toml");
    Files.writeString(
        own,
        """
        [[drill]]
        name = "apart-hands"
        works-on = "release"
        goal = "wrist.kept at lead-arm-level-down between 120 and 140"
        reps = 6
        """);
    CommandLineRun run =
        CommandLineRun.of("analyze", archive.toString(), "--teaching", own.toString());
    assertThat(run.out()).contains("0 inside the goal");
  }
}
