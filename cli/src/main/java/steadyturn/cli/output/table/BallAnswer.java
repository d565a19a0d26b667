package steadyturn.cli.output.table;

import static steadyturn.cli.words.Words.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;
import steadyturn.analysis.coach.teaching.GoodBand;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.cli.words.PlainWords;
import steadyturn.cli.words.Words;

/**
 * What is said right after a ball, a line a measure: this ball, what is usual for the player in
 * this lesson, and what the teacher calls good. Fits into 80 columns with two to spare.
 *
 * @param player whose own limits the teacher may have set
 */
public record BallAnswer(String player, Teaching teaching) {

  /**
   * One measure of a ball in words.
   *
   * @param name of the measure and its key position
   * @param figure value, half-width and unit
   * @param usual of this player in this lesson, or empty
   * @param goal of the teacher, or empty
   * @param bounds the numbers behind them
   */
  public record Row(
      MeasureAt what, String name, String figure, String usual, String goal, Bounds bounds) {

    List<String> cells() {
      return List.of("  " + name, figure, usual, goal);
    }
  }

  /** What is usual, and the ends of what the teacher calls good; not finite where there is none. */
  public record Bounds(double usual, double over, double under) {}

  private static final int WIDTH = 78;

  /** So many balls make something usual (our choice). */
  private static final int USUAL_FROM = 2;

  private static final List<MeasureAt> TOLD =
      List.of(
          new MeasureAt(Measure.PELVIS_TURN, "top"),
          new MeasureAt(Measure.PELVIS_SLIDE, "top"),
          new MeasureAt(Measure.PELVIS_CENTRE_DISTANCE, "top"),
          new MeasureAt(Measure.PELVIS_TURN, "impact"),
          new MeasureAt(Measure.PELVIS_SLIDE, "impact"),
          new MeasureAt(Measure.WRIST_RELEASE, ""),
          new MeasureAt(Measure.TEMPO_RATIO, ""));

  /**
   * The lines of one ball.
   *
   * @param before the balls before it, of which those with the same club and kind count as usual
   */
  public List<String> lines(SwingResult ball, List<SwingResult> before) {
    List<String> lines = new ArrayList<>(List.of(""));
    lines.add(say("ball.head", ball.number(), LessonTable.title(ball)));
    if (!ball.note().isEmpty()) {
      lines.addAll(Layout.beside("  \"", 4, ball.note(), WIDTH));
    }
    for (String flag : LessonTable.flagsToTell(ball)) {
      lines.addAll(Layout.beside("  !", 4, PlainWords.flag(flag), WIDTH));
    }
    List<List<String>> rows = rows(TOLD, ball, before).stream().map(Row::cells).toList();
    if (!rows.isEmpty()) {
      lines.addAll(Layout.table(rows, rows.get(0).size()));
    }
    lines.addAll(Reasons.of(List.of(ball), BallAnswer::isTold, 2, WIDTH));
    return lines;
  }

  /** The measures that are told of every ball. */
  public static List<MeasureAt> told() {
    return TOLD;
  }

  /** The same row by row, of any measures that the ball has. */
  public List<Row> rows(List<MeasureAt> told, SwingResult ball, List<SwingResult> before) {
    List<SwingResult> alike =
        before.stream()
            .filter(SwingResult::counts)
            .filter(b -> LessonTable.title(b).equals(LessonTable.title(ball)))
            .toList();
    return told.stream()
        .filter(what -> what.orWhyNot(ball).isPresent())
        .map(what -> row(what, ball, alike))
        .toList();
  }

  /** What a ball is called: club and kind. */
  public static String title(SwingResult ball) {
    return LessonTable.title(ball);
  }

  /** What is to be known of a ball, in sentences. */
  public static List<String> flags(SwingResult ball) {
    return LessonTable.flagsToTell(ball).stream().map(PlainWords::flag).toList();
  }

  /** What is said when a ball is noted as another one than it was taken for; else nothing. */
  public static List<String> changed(SwingResult was, SwingResult is) {
    String title = LessonTable.title(is);
    return title.equals(LessonTable.title(was))
        ? List.of()
        : List.of(say("ball.changed", is.number(), title));
  }

  /** The lines of something to know of a unit, a step or a mark. */
  public static List<String> lines(Notice notice) {
    return Words.inUse().told(List.of(notice)).keySet().stream()
        .flatMap(sentence -> Layout.beside("*", 2, sentence, WIDTH).stream())
        .toList();
  }

  /** What later answers need of a ball; the rest need not be kept. */
  public static SwingResult kept(SwingResult ball) {
    return new SwingResult(
        ball.number(),
        ball.club(),
        ball.kind(),
        ball.flags(),
        List.of(),
        ball.measures().stream().filter(BallAnswer::isTold).toList(),
        List.of());
  }

  private static boolean isTold(MeasureValue value) {
    boolean isWhyNot = value.at().isEmpty() && !value.given();
    return TOLD.stream()
        .anyMatch(
            what ->
                what.measure() == value.measure() && (isWhyNot || what.at().equals(value.at())));
  }

  private Row row(MeasureAt what, SwingResult ball, List<SwingResult> alike) {
    String unit = PlainWords.unit(what.measure());
    MeasureValue value = what.orWhyNot(ball).orElseThrow();
    String figure = Figure.narrow(value);
    Bounds bounds = bounds(what, ball.club(), usual(what, alike));
    return new Row(
        what,
        say("ball.row." + what.measure().id(), atWords(what)),
        (figure + " " + unit).strip(),
        Double.isFinite(bounds.usual) ? say("ball.usual", Figure.beside(bounds.usual, value)) : "",
        goal(what, bounds),
        bounds);
  }

  private static String atWords(MeasureAt what) {
    return what.at().isEmpty() ? "" : PlainWords.keyPosition(what.at());
  }

  private static double usual(MeasureAt what, List<SwingResult> alike) {
    double[] values =
        alike.stream()
            .flatMap(swing -> what.in(swing).stream())
            .filter(MeasureValue::given)
            .mapToDouble(MeasureValue::value)
            .toArray();
    return values.length < USUAL_FROM ? Double.NaN : StatUtils.mean(values);
  }

  private Bounds bounds(MeasureAt what, String club, double usual) {
    Optional<GoodBand> band = GoodBand.of(teaching.forPlayer(player, club), what);
    return new Bounds(
        usual,
        band.map(GoodBand::low).orElse(Double.NaN),
        band.map(GoodBand::high).orElse(Double.NaN));
  }

  /** The bounds of what the teacher calls good; empty where nothing is said of it. */
  private static String goal(MeasureAt what, Bounds bounds) {
    String over = Figure.asSet(bounds.over, what.measure());
    String under = Figure.asSet(bounds.under, what.measure());
    if (Double.isFinite(bounds.over) && Double.isFinite(bounds.under)) {
      return say("ball.goal.between", over, under);
    }
    return Double.isFinite(bounds.over)
        ? say("ball.goal.over", over)
        : Double.isFinite(bounds.under) ? say("ball.goal.under", under) : "";
  }
}
