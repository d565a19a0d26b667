package steadyturn.cli.page;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Coach;
import steadyturn.analysis.coach.ModelComparison;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.Notice;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;

/**
 * What a page says, before it is put into words and pictures.
 *
 * @param lesson label of the lesson
 * @param date its day, or an empty string where it was not noted
 * @param club the club most balls were hit with, or an empty string
 * @param swings the full swings with that club
 * @param clubsLeftOut clubs of other full swings, with their number
 * @param repetitions every swing that was a repetition of a drill
 * @param model comparison with the model swing; empty where none was asked for
 * @param notices what a reader should know
 * @param madeBy what the values rest on besides the recordings
 */
public record Sheet(
    String lesson,
    String date,
    Player player,
    String club,
    List<SwingResult> swings,
    Map<String, Integer> clubsLeftOut,
    List<SwingResult> repetitions,
    Teaching teaching,
    Advice advice,
    List<DrillScore> drills,
    Optional<ModelComparison> model,
    List<Notice> notices,
    MadeBy madeBy) {

  public Sheet {
    swings = List.copyOf(swings);
    clubsLeftOut = new LinkedHashMap<>(clubsLeftOut);
    repetitions = List.copyOf(repetitions);
    drills = List.copyOf(drills);
    notices = List.copyOf(notices);
  }

  /**
   * Gathers a page.
   *
   * @param runs the recordings of the lesson, one after the other
   * @param club the club the page is about; empty for the one with most swings
   * @param model swings to hold the player's against; empty for none
   */
  public static Sheet of(
      String lesson, LessonRuns runs, Teaching teaching, String club, Optional<SwingGroup> model) {
    List<Mark> marks = runs.marks();
    List<SwingResult> full = runs.hits();
    Map<String, Integer> clubs = new LinkedHashMap<>();
    full.forEach(swing -> clubs.merge(swing.club(), 1, Integer::sum));
    String chosen = club.isEmpty() ? most(clubs) : club;
    clubs.remove(chosen);
    List<SwingResult> about = full.stream().filter(s -> s.club().equals(chosen)).toList();
    return new Sheet(
        lesson,
        runs.date(),
        runs.player(),
        chosen,
        about,
        clubs,
        runs.of(SwingKind.DRILL),
        teaching.forPlayer(runs.player().id(), chosen),
        new Coach(teaching).advise(runs.player().id(), chosen, about),
        DrillScore.of(teaching, marks, withClub(runs.swings(), chosen), runs.rehearsals()),
        model.filter(m -> !about.isEmpty()).map(m -> compared(m, about)),
        runs.notices(),
        MadeBy.of(AnalysisSettings.defaults(), runs.units()));
  }

  /** What pictures of one group need: its swings, and nothing of a lesson. */
  static Sheet of(Player player, SwingGroup group, Teaching teaching) {
    List<SwingResult> swings = group.swings().stream().map(LessonSwing::swing).toList();
    return new Sheet(
        "",
        "",
        player,
        group.name(),
        swings,
        Map.of(),
        List.of(),
        teaching,
        new Coach(teaching).advise(player.id(), group.name(), swings),
        List.of(),
        Optional.empty(),
        List.of(),
        MadeBy.of(AnalysisSettings.defaults(), Stream.empty()));
  }

  private static String most(Map<String, Integer> clubs) {
    return clubs.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse("");
  }

  private static List<SwingResult> withClub(List<SwingResult> swings, String club) {
    return swings.stream().filter(s -> s.club().equals(club) || s.club().isEmpty()).toList();
  }

  private static ModelComparison compared(SwingGroup model, List<SwingResult> swings) {
    return ModelComparison.of(model, group(swings), MeasureAt.defaults());
  }

  /** The swings as a group of one lesson. */
  static SwingGroup group(List<SwingResult> swings) {
    return new SwingGroup("swings", swings.stream().map(s -> new LessonSwing("", s)).toList());
  }

  /** The drills of the priority that are still ahead of this player, the first to be done. */
  public List<Drill> drillsToDo() {
    return advice.priority().map(found -> found.drills(teaching, group())).orElse(List.of());
  }

  SwingGroup group() {
    return group(swings);
  }
}
