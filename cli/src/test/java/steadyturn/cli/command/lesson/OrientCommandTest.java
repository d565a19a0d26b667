package steadyturn.cli.command.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.cli.CommandLineRun;
import steadyturn.cli.command.calibrate.HandledUnit;

class OrientCommandTest {

  private static final double G = 9.80665;

  @TempDir private Path folder;

  /** 3 s of rest, then a quarter turn about z in 1 s, then 2 s of rest; bias 1 deg/s. */
  private Path quarterTurn() throws IOException {
    double[] level = {0, 0, G};
    return new HandledUnit(new double[3], new double[] {0.017, -0.01, 0.008})
        .add(3, level, new double[3], false)
        .add(1, level, new double[] {0, 0, Math.PI / 2}, false)
        .add(2, level, new double[3], false)
        .write(folder.resolve("turn.csv"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"online", "offline", "low-pass", "kalman"})
  void aTableGivesOneQuaternionARow(String method) throws IOException {
    // Given: a quarter turn about z. Expect: a header, a row a sample with its own time, and a
    // quarter turn between first and last: |q0* q1| has scalar part cos 45 deg. Within 0.01: noise
    // of 0.001 rad/s and the bias left after 3 s, over 6 s.
    CommandLineRun run =
        CommandLineRun.of(
            "orient", quarterTurn().toString(), "--map", HandledUnit.MAP, "--method", method);
    assertThat(run.exitCode()).as(run.err()).isZero();
    List<String> lines = run.out().lines().toList();
    assertThat(lines.get(0)).isEqualTo("time_s,qw,qx,qy,qz");
    assertThat(lines).hasSize(601);
    assertThat(lines.get(600)).startsWith("5.990000,");
    double[] first = numbers(lines.get(1));
    double[] last = numbers(lines.get(600));
    double scalar = 0;
    for (int i = 1; i < 5; i++) {
      scalar += first[i] * last[i];
    }
    assertThat(Math.abs(scalar)).isCloseTo(Math.cos(Math.PI / 4), within(0.01));
  }

  private static double[] numbers(String row) {
    return Arrays.stream(row.split(",", -1)).mapToDouble(Double::parseDouble).toArray();
  }

  @Test
  void sigmasAndFilesOnRequest() throws IOException {
    Path out = folder.resolve("out.csv");
    CommandLineRun run =
        CommandLineRun.of(
            "orient",
            quarterTurn().toString(),
            "--map",
            HandledUnit.MAP,
            "--sigma",
            "--out",
            out.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out()).isEmpty();
    List<String> lines = Files.readAllLines(out);
    assertThat(lines.get(0)).endsWith(",inclination_sigma_deg,heading_sigma_deg");
    assertThat(numbers(lines.get(300))[5]).isBetween(0.1, 1.0);
  }

  @Test
  void aStoTableHasAHeaderAndQuaternionsInTabs() throws IOException {
    CommandLineRun run =
        CommandLineRun.of(
            "orient", quarterTurn().toString(), "--map", HandledUnit.MAP, "--format", "sto");
    assertThat(run.exitCode()).as(run.err()).isZero();
    List<String> lines = run.out().lines().toList();
    assertThat(lines.get(0)).isEqualTo("DataRate=100.000000");
    int header = lines.indexOf("endheader");
    assertThat(lines.get(header + 1)).isEqualTo("time\tlead_hand_imu");
    assertThat(lines.get(header + 2)).matches("0\\.000000\t(-?[0-9.]+,){3}-?[0-9.]+");
    assertThat(lines).hasSize(header + 2 + 600);
  }

  @Test
  void anArchiveGetsDerivatives() throws IOException {
    // Given: a simulated lesson of one swing. Expect: table, channels and JSON of each of its
    // three units, seven columns as the channels file says, as many rows as the raw table.
    String archive = folder.resolve("archive").toString();
    String[] simulate = {"simulate", "--out", archive, "--swings", "1", "--rate", "200"};
    assertThat(CommandLineRun.of(simulate).exitCode()).isZero();
    CommandLineRun run = CommandLineRun.of("orient", archive);
    assertThat(run.exitCode()).as(run.err()).isZero();
    List<String> tables = run.out().lines().toList();
    assertThat(tables).hasSize(3).allMatch(t -> t.contains("_desc-orientation_motion.tsv"));
    for (String table : tables) {
      Path channels = Path.of(table.replace("_motion.tsv", "_channels.tsv"));
      assertThat(Files.readAllLines(channels)).hasSize(8);
      assertThat(Files.exists(Path.of(table.replace("_motion.tsv", "_motion.json")))).isTrue();
      String raw = table.replace("derivatives/steadyturn/", "").replace("_desc-orientation", "");
      List<String> rows = Files.readAllLines(Path.of(table));
      assertThat(rows).hasSameSizeAs(Files.readAllLines(Path.of(raw)));
      assertThat(rows.get(0).split("\t", -1)).hasSize(7);
    }
  }

  @Test
  void whatTakesThePlaceOfOlderTablesIsToldBesideTheResults() {
    // Given: the same lesson oriented twice. Expect: the same three tables listed both times, and
    // the second time a line each about the older table, on standard error.
    String archive = folder.resolve("archive").toString();
    String[] simulate = {"simulate", "--out", archive, "--swings", "1", "--rate", "200"};
    assertThat(CommandLineRun.of(simulate).exitCode()).isZero();
    CommandLineRun first = CommandLineRun.of("orient", archive);
    CommandLineRun second = CommandLineRun.of("orient", archive);
    assertThat(first.err()).doesNotContain("older table");
    assertThat(second.out()).isEqualTo(first.out());
    assertThat(second.err().lines().filter(line -> line.contains("older table"))).hasSize(3);
  }

  @Test
  void wrongUsageIsToldInOneLine() throws IOException {
    String table = quarterTurn().toString();
    CommandLineRun run = CommandLineRun.of("orient", table, "--map", "no-such-map");
    assertThat(run.exitCode()).isEqualTo(1);
    assertThat(run.err().lines()).hasSize(1);
    CommandLineRun method =
        CommandLineRun.of("orient", table, "--map", HandledUnit.MAP, "--method", "guess");
    assertThat(method.exitCode()).isEqualTo(2);
    assertThat(method.err()).contains("there is no method \"guess\"");
  }
}
