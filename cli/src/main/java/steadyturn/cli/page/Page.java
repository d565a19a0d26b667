package steadyturn.cli.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.cli.page.paper.Html;
import steadyturn.cli.page.paper.Origin;
import steadyturn.cli.page.reader.Audience;
import steadyturn.cli.page.reader.LengthUnits;
import steadyturn.cli.page.reader.Letter;
import steadyturn.cli.words.Words;

/** Writes a {@link Sheet} as one HTML file that needs nothing else. */
public final class Page {

  private final Pen pen;
  private final Letter letter;
  private final Html html = new Html();

  private Page(Pen pen, Letter letter) {
    this.pen = pen;
    this.letter = letter;
  }

  /** The whole file. */
  public static String html(
      Sheet sheet, Audience audience, LengthUnits units, Words words, Letter letter) {
    Page page = new Page(new Pen(sheet, words, units, audience), letter);
    page.document();
    return page.html.toString();
  }

  private void document() {
    String player = letter.name().isEmpty() ? pen.sheet().player().id() : letter.name();
    String title = text("page.title" + pen.reader(), player);
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
    html.element("p", text("page.cannot.text") + " " + text("page.private"));
    Origin.write(pen.sheet().madeBy(), pen.words(), html);
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
    String day = sheet.date().isEmpty() ? "" : ", " + pen.words().day(sheet.date());
    String from = letter.teacher().isEmpty() ? "" : " · " + text("page.from", letter.teacher());
    html.element("p", lesson + day + from + " · " + side + " · " + count + reps);
    if (!letter.says().isEmpty()) {
      html.element("p", letter.says(), "class", "says");
    }
    html.close("header");
  }

  /** Only drills, or nothing: no picture and no number can be told. */
  private void withoutFullSwings() {
    html.part(AdvicePart.oneThing(pen)).part(DrillPart.done(pen)).part(DrillPart.care(pen));
    if (!pen.forPlayer()) {
      notices();
    }
  }

  private void forTeacher() {
    html.open("div", "class", "beside").open("div").part(AdvicePart.oneThing(pen));
    html.part(AdvicePart.asks(pen)).close("div").open("div").part(SideBySide.of(pen));
    html.part(DrillPart.toDo(pen)).close("div", "div");
    html.open("div", "class", "others").part(AdvicePart.others(pen)).close("div");
    html.part(DrillPart.done(pen));
    html.open("section", "class", "pictures").element("h2", text("page.pictures"));
    html.open("div", "class", "figures");
    figure(TurnAgainstSlide.draw(pen), "picture.path", "picture.needs.pelvis");
    figure(SwingToSwing.draw(pen), "picture.same", "picture.needs.pelvis");
    html.close("div", "section").open("div", "class", "beside").open("div", "class", "pictures");
    figure(CockOnTheWayDown.draw(pen), "picture.cock", "picture.needs.wrist");
    notices();
    html.close("div").part(NumbersPart.means(pen)).close("div");
    pen.sheet().model().ifPresent(model -> html.part(NumbersPart.model(pen, model)));
  }

  private void forPlayer() {
    html.part(AdvicePart.oneThing(pen)).part(SideBySide.of(pen)).part(DrillPart.toDo(pen));
    html.open("div", "class", "others").part(AdvicePart.others(pen)).part(DrillPart.done(pen));
    html.close("div");
  }

  private void figure(Optional<Html> picture, String key, String needs) {
    if (picture.isPresent()) {
      html.figure(picture.get(), text(key + ".title"), text(key + ".text"));
    } else {
      html.element("p", text("picture.none", text(needs)), "class", "missing");
    }
  }

  private void notices() {
    Sheet sheet = pen.sheet();
    String flagged = flags(sheet.swings());
    List<String> notices = new ArrayList<>();
    if (!sheet.clubsLeftOut().isEmpty()) {
      notices.add(text("page.other-clubs", clubs(sheet.clubsLeftOut())));
    }
    if (!flagged.isEmpty()) {
      notices.add(text("page.flags", flagged));
    }
    notices.addAll(pen.words().told(sheet.notices()).keySet());
    if (!notices.isEmpty()) {
      html.open("section", "class", "notices").element("h2", text("page.notices"));
      html.list(notices.stream()).close("section");
    }
  }

  /** Each remark once, with the swings that have it. */
  private String flags(List<SwingResult> swings) {
    Map<String, List<String>> found = new LinkedHashMap<>();
    for (SwingResult swing : swings) {
      for (String flag : swing.flags()) {
        found.computeIfAbsent(flag, f -> new ArrayList<>()).add(Integer.toString(swing.number()));
      }
    }
    return found.entrySet().stream()
        .map(e -> text("flag." + e.getKey()) + " (" + String.join(", ", e.getValue()) + ")")
        .collect(Collectors.joining("; "));
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
