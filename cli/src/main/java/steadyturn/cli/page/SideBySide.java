package steadyturn.cli.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Drawing;
import steadyturn.cli.page.paper.Html;

/**
 * The picture that a reader sees first: yours, and where we want to go, two at a time. Of what the
 * finding is about; without a finding, or where that was not measured, of what was.
 */
record SideBySide(Pen pen) {

  private static final double SMALL_WIDTH = 150;
  private static final double SMALL_HEIGHT = 90;

  private enum Kind {
    HINGE,
    BEND,
    TIME
  }

  /** The section with the pictures; empty where nothing that can be drawn was measured. */
  static Html of(Pen pen) {
    SideBySide side = new SideBySide(pen);
    return Stream.of(side.wanted(), Kind.HINGE, Kind.TIME, Kind.BEND)
        .filter(kind -> side.drawn(kind, false).isPresent())
        .findFirst()
        .map(side::section)
        .orElseGet(Html::new);
  }

  private Kind wanted() {
    Optional<Measure> measure =
        pen.sheet().advice().priority().stream()
            .map(RuleFinding::evidence)
            .flatMap(List::stream)
            .map(e -> e.need().what().measure())
            .findFirst();
    if (measure.filter(m -> m == Measure.WRIST_KEPT).isPresent()) {
      return Kind.BEND;
    }
    return measure.filter(m -> !m.id().startsWith("pelvis")).isPresent() ? Kind.TIME : Kind.HINGE;
  }

  private Optional<Html> drawn(Kind kind, boolean goal) {
    return switch (kind) {
      case HINGE -> goal ? HingePicture.goal(pen) : HingePicture.now(pen);
      case BEND -> ArmPicture.bend(pen, goal);
      case TIME -> ArmPicture.time(pen, goal);
    };
  }

  private Html section(Kind kind) {
    boolean toGo =
        pen.sheet().advice().priority().isPresent() && (kind != Kind.HINGE || goalDiffers());
    Html html = new Html().open("section", "class", "pictures");
    html.element("h2", pen.text("hinge.title" + pen.reader()), "class", "unseen");
    html.open("div", "class", toGo ? "sides" : "sides alone");
    html.figure(drawn(kind, false).orElseThrow(), pen.text("hinge.now" + pen.reader()), "");
    if (toGo) {
      html.figure(drawn(kind, true).orElseThrow(), pen.text("hinge.goal"), "");
    }
    html.close("div");
    if (kind == Kind.HINGE) {
      examples(html);
    } else {
      html.element("p", pen.text(kind == Kind.BEND ? "bend.text" : "time.text"), "class", "small");
    }
    if (kind == Kind.HINGE && pen.forPlayer()) {
      HingeInTime.moving(pen).ifPresent(html::part);
    }
    return html.close("section");
  }

  /** Of some findings, such as turns that differ each time, the mean has nowhere to go. */
  private boolean goalDiffers() {
    return Hips.measured(pen)
        .filter(now -> now.goal(pen.sheet().teaching()).differFrom(now))
        .isPresent();
  }

  /** What it looks like in who turns and in who slides, so that nobody needs the words. */
  private void examples(Html html) {
    html.open("div", "class", "examples");
    html.figure(example(pen, true), "", pen.text("hinge.turns"));
    html.figure(example(pen, false), "", pen.text("hinge.slides"));
    html.element("p", pen.text("hinge.text" + pen.reader()), "class", "small");
    html.close("div");
  }

  /** The two small examples that stand beside every hinge. */
  static Html example(Pen pen, boolean turns) {
    String name = pen.text(turns ? "hinge.turns" : "hinge.slides");
    Drawing drawing =
        new Drawing(
            turns ? "example-turns" : "example-slides",
            (int) SMALL_WIDTH,
            (int) SMALL_HEIGHT,
            name,
            pen.text(turns ? "hinge.turns.alt" : "hinge.slides.alt"));
    HingePicture picture =
        new HingePicture(
            drawing,
            SMALL_WIDTH,
            SMALL_HEIGHT,
            HingePicture.HALF_HIPS_MM,
            pen.leftIsTarget(),
            HingePicture.USUAL_MM);
    Hips hips = turns ? Hips.TURNS : Hips.SLIDES;
    picture.bars(hips, false);
    picture.pin(hips, Optional.empty(), false);
    return drawing.done();
  }
}
