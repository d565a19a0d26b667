package steadyturn.cli.command.lesson;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.lesson.UnitResult;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.lesson.LessonAnswers;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Player;

/**
 * Every swing of some lessons.
 *
 * @param swings in order, each with its place in its lesson
 * @param lessons names of the lessons in full, by their ids
 * @param days of the lessons, as 2026-05-04; empty where no run says when it began
 * @param players whose they are
 * @param units that were worn, a recording each
 */
record Gathered(
    List<LessonSwing> swings,
    Map<String, String> lessons,
    Map<String, String> days,
    Set<Player> players,
    List<UnitResult> units) {

  static Gathered of(Lessons lessons, AnalysisSettings settings) {
    Gathered all =
        new Gathered(
            new ArrayList<>(),
            new LinkedHashMap<>(),
            new HashMap<>(),
            new LinkedHashSet<>(),
            new ArrayList<>());
    LessonAnswers answers = new LessonAnswers(lessons, settings);
    lessons.each(
        lesson -> {
          int ball = 0;
          for (LessonResult result : answers.of(lesson).results()) {
            all.players.add(result.player());
            all.units.addAll(result.units());
            for (SwingResult swing : result.swings()) {
              all.swings.add(new LessonSwing(lesson.id(), swing, ++ball));
            }
          }
          String name = Words.say("page.lesson", ReportCommand.label(lesson));
          String day = ReportCommand.date(lesson);
          all.days.put(lesson.id(), day);
          all.lessons.put(lesson.id(), day.isEmpty() ? name : name + ", " + Words.inUse().day(day));
        });
    return all;
  }

  /** What the comparison rests on. */
  MadeBy madeBy(AnalysisSettings settings) {
    return MadeBy.of(settings, units.stream());
  }

  /** The day of a lesson, or an empty string. */
  String day(String lesson) {
    return days.getOrDefault(lesson, "");
  }
}
