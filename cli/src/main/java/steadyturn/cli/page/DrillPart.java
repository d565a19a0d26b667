package steadyturn.cli.page;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Collectors;
import steadyturn.analysis.coach.drill.DrillRep;
import steadyturn.analysis.coach.drill.DrillScore;
import steadyturn.analysis.coach.teaching.Drill;
import steadyturn.analysis.coach.teaching.GoalVerdict;
import steadyturn.analysis.compare.ComparisonRow;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Html;
import steadyturn.ingest.recording.disk.Shipped;

/** The drill with its goal and its cautions, and how the drills of this lesson went. */
record DrillPart(Pen pen, Html html) {

  private static final Properties DRAWN = drawn();

  /** The drill of the priority; the teacher also sees the others that may help. */
  static Html toDo(Pen pen) {
    DrillPart part = new DrillPart(pen, new Html());
    List<Drill> drills = pen.sheet().drillsToDo();
    if (pen.forPlayer() && drills.isEmpty()) {
      return part.html;
    }
    part.html.open("section", "class", "drill");
    part.html.element("h2", part.text("page.drill" + pen.reader()));
    if (drills.isEmpty()) {
      part.html.element("p", part.text("page.drill.none"));
    } else {
      part.drill(drills.get(0));
      part.others(drills.subList(1, drills.size()));
    }
    part.html.close("section");
    return part.html;
  }

  /** Repetitions of this lesson and their effect. */
  static Html done(Pen pen) {
    DrillPart part = new DrillPart(pen, new Html());
    if (!pen.sheet().drills().isEmpty()) {
      part.html.open("section").element("h2", part.text("page.drills-done"));
      pen.sheet().drills().forEach(part::score);
      part.html.close("section");
    }
    return part.html;
  }

  /** The cautions of the drills that were done; nothing without any. */
  static Html care(Pen pen) {
    DrillPart part = new DrillPart(pen, new Html());
    List<String> cautions =
        pen.sheet().drills().stream()
            .flatMap(score -> score.drill().cautions().stream())
            .distinct()
            .toList();
    if (!cautions.isEmpty()) {
      part.care(cautions);
    }
    return part.html;
  }

  private void drill(Drill drill) {
    String key = "drill." + drill.name();
    html.element("p", text(key + ".name"), "class", "big");
    html.open("div", "class", "drawn");
    picture(pen, drill.name()).ifPresent(html::part);
    html.open("dl");
    html.element("dt", text("page.drill.do")).element("dd", text(key + ".do"));
    html.element("dt", text("page.drill.feel")).element("dd", text(key + ".feel"));
    html.element("dt", text("page.drill.goal"));
    html.element("dd", Pen.sentence(goal(drill)) + ". " + text("page.drill.reps", drill.reps()));
    html.close("dl", "div");
    care(drill.cautions());
  }

  private void care(List<String> cautions) {
    html.open("div", "class", "care").element("h3", text("page.care"));
    html.list(cautions.stream().map(caution -> text("caution." + caution))).close("div");
  }

  /** The band in words; for the player without signs, sideways with its direction. */
  private String goal(Drill drill) {
    Measure measure = drill.judgedBy().measure();
    String name = pen.name(drill.judgedBy());
    if (!drill.hasNumber()) {
      return text("page.drill.goal.open");
    }
    if (measure.unit().equals("%") && drill.high() >= 100) {
      return text("page.drill.goal.over", name, pen.amounts().asSetWithUnit(drill.low(), measure));
    }
    if (!pen.forPlayer()) {
      return text(
          "page.drill.goal.words",
          name,
          pen.amounts().asSet(drill.low(), measure),
          pen.amounts().asSetWithUnit(drill.high(), measure));
    }
    String low = pen.amounts().plain(drill.low(), measure);
    String high = pen.amounts().plain(drill.high(), measure);
    if (measure == Measure.PELVIS_SLIDE) {
      low = text(drill.low() < 0 ? "unit.away" : "unit.towards", low);
      high = text(drill.high() < 0 ? "unit.away" : "unit.towards", high);
    } else if (drill.low() < 0 && drill.high() <= 0) {
      return text("page.drill.goal.words", name, high, low);
    } else if (drill.low() < 0) {
      return text("page.drill.goal.most", name, high);
    }
    return text("page.drill.goal.words", name, low, high);
  }

  private void others(List<Drill> drills) {
    if (pen.forPlayer() || drills.isEmpty()) {
      return;
    }
    html.element("h3", text("page.drill.others")).open("ul");
    for (Drill drill : drills) {
      html.open("li").element("strong", text("drill." + drill.name() + ".name") + ". ");
      html.words(Pen.sentence(goal(drill)) + ".").close("li");
    }
    html.close("ul");
  }

  private void score(DrillScore score) {
    String name = text("drill." + score.drill().name() + ".name");
    html.open("p");
    html.words(
        text(
            "page.drills-done.score",
            name,
            score.count(GoalVerdict.INSIDE),
            score.count(GoalVerdict.OUTSIDE),
            score.count(GoalVerdict.CANNOT_BE_TOLD)));
    if (score.unseen() > 0) {
      html.words(" " + text("page.drills-done.unseen", score.unseen()));
    }
    if (!pen.forPlayer() && !score.reps().isEmpty()) {
      html.words(" " + text("page.drills-done.each", each(score)));
    }
    score.effect().ifPresent(e -> html.words(" " + effect(e)));
    html.close("p");
    String title = text("picture.effect.title", name);
    Optional<Html> picture = BeforeAndAfter.draw(pen, score);
    if (picture.isPresent()) {
      html.open("div", "class", "figures");
      html.figure(picture.get(), title, text("picture.effect.text")).close("div");
    }
  }

  private String each(DrillScore score) {
    Measure measure = score.drill().judgedBy().measure();
    return score.reps().stream()
        .map(DrillRep::value)
        .map(v -> pen.ranged(v.value(), v.low(), v.high(), measure))
        .collect(Collectors.joining(", "));
  }

  private String effect(ComparisonRow e) {
    Measure measure = e.what().measure();
    return text(
        "page.effect",
        pen.amount(e.first(), measure),
        pen.amount(e.second(), measure),
        text("verdict." + e.verdict().word()));
  }

  private String text(String key, Object... values) {
    return pen.text(key, values);
  }

  /**
   * The drawn picture of a shipped drill, mirrored for the left; empty for one of the teacher's.
   */
  static Optional<Html> picture(Pen pen, String drill) {
    return Optional.ofNullable(DRAWN.getProperty(drill))
        .map(
            markup -> {
              String name = pen.text("drill." + drill + ".name");
              return new Drawing("drill", 160, 110, name, pen.text("drill.picture.alt", name))
                  .mirrored(pen.leftIsTarget() < 0, markup)
                  .done();
            });
  }

  private static Properties drawn() {
    Properties all = new Properties();
    try {
      all.load(new StringReader(Shipped.text(DrillPart.class, "drill-pictures.properties")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }
}
