package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.cli.words.Words;

/** Writes a {@link Sheet} as one HTML file that needs nothing else. */
public final class Page {

  private final Pen pen;
  private final Html html = new Html();

  private Page(Pen pen) {
    this.pen = pen;
  }

  /** The whole file. */
  public static String html(Sheet sheet, Audience audience, LengthUnits units, Words words) {
    Page page = new Page(new Pen(sheet, words, units, audience));
    page.document();
    return page.html.toString();
  }

  private void document() {
    String title = text("page.title", pen.sheet().player().id());
    html.begin(
        pen.words().language(),
        title + ", " + pen.sheet().lesson(),
        "class",
        pen.audience() + (pen.sheet().model().isPresent() ? " model" : ""));
    header(title);
    if (pen.sheet().swings().isEmpty()) {
      withoutFullSwings();
    } else if (pen.forPlayer()) {
      forPlayer();
    } else {
      forTeacher();
    }
    html.open("footer").element("h2", text("page.cannot"));
    html.element("p", text("page.cannot.text")).element("p", text("page.private"));
    html.close("footer").end();
  }

  private void header(String title) {
    Sheet sheet = pen.sheet();
    html.open("header").element("h1", title);
    String club = sheet.club().isEmpty() ? text("page.any-club") : sheet.club();
    int swings = sheet.swings().size();
    String count = text(swings == 1 ? "page.swings.one" : "page.swings", swings, club);
    int repetitions = sheet.repetitions().size();
    String reps = repetitions == 0 ? "" : ", " + text("page.swings.reps", repetitions);
    String side = text("page.handed." + sheet.player().handed().word());
    String lesson = text("page.lesson", sheet.lesson());
    String day = sheet.date().isEmpty() ? "" : ", " + sheet.date();
    html.element("p", lesson + day + " · " + side + " · " + count + reps).close("header");
  }

  /** Only drills, or nothing: no picture and no number can be told. */
  private void withoutFullSwings() {
    html.part(AdvicePart.oneThing(pen)).part(DrillPart.done(pen)).part(DrillPart.care(pen));
    if (!pen.forPlayer()) {
      notices();
    }
  }

  private void forTeacher() {
    html.part(AdvicePart.asks(pen)).part(AdvicePart.oneThing(pen)).part(DrillPart.toDo(pen));
    html.open("div", "class", "side-by-side").part(AdvicePart.others(pen)).close("div");
    html.part(DrillPart.done(pen));
    pictures();
    figure(CockOnTheWayDown.draw(pen), "picture.cock", "picture.needs.wrist");
    figure(SwingToSwing.draw(pen), "picture.same", "picture.needs.pelvis");
    html.close("div", "section");
    pen.sheet().model().ifPresent(model -> html.part(NumbersPart.model(pen, model)));
    html.part(NumbersPart.means(pen));
    notices();
  }

  private void forPlayer() {
    html.part(AdvicePart.oneThing(pen)).part(DrillPart.toDo(pen));
    pictures();
    figure(SwingToSwing.draw(pen), "picture.same", "picture.needs.pelvis");
    html.open("div").part(AdvicePart.others(pen)).close("div");
    html.close("div").element("p", text("page.about.player"), "class", "small").close("section");
    html.part(DrillPart.done(pen));
  }

  private void pictures() {
    html.open("section", "class", "pictures").element("h2", text("page.pictures"));
    html.open("div", "class", "figures");
    figure(HipsFromAbove.draw(pen), "picture.above", "picture.needs.pelvis");
    figure(TurnAgainstSlide.draw(pen), "picture.path", "picture.needs.pelvis");
  }

  private void figure(Optional<Html> picture, String key, String needs) {
    html.figure(
        picture.orElseGet(
            () -> new Html().element("p", text("picture.none", text(needs)), "class", "missing")),
        text(key + ".title"),
        text(key + (pen.forPlayer() ? ".player" : ".text")));
  }

  private void notices() {
    Sheet sheet = pen.sheet();
    String flagged =
        sheet.swings().stream()
            .filter(s -> !s.flags().isEmpty())
            .map(s -> s.number() + " (" + flags(s) + ")")
            .collect(Collectors.joining("; "));
    List<String> notices = new ArrayList<>();
    if (!sheet.clubsLeftOut().isEmpty()) {
      notices.add(text("page.other-clubs", clubs(sheet.clubsLeftOut())));
    }
    if (!flagged.isEmpty()) {
      notices.add(text("page.flags", flagged));
    }
    notices.addAll(pen.words().told(sheet.notices()).keySet());
    if (!notices.isEmpty()) {
      html.open("section").element("h2", text("page.notices"));
      html.list(notices.stream()).close("section");
    }
  }

  private String flags(SwingResult swing) {
    return swing.flags().stream()
        .map(flag -> text("flag." + flag))
        .collect(Collectors.joining(", "));
  }

  private String clubs(Map<String, Integer> clubs) {
    return clubs.entrySet().stream()
        .map(
            e -> e.getValue() + " × " + (e.getKey().isEmpty() ? text("page.any-club") : e.getKey()))
        .collect(Collectors.joining(", "));
  }

  private String text(String key, Object... values) {
    return pen.text(key, values);
  }
}
