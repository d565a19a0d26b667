package steadyturn.cli.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.cli.words.Words;
import steadyturn.ingest.sample.Handedness;

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
    html.raw("<!DOCTYPE html>\n");
    html.open("html", "lang", pen.words().language()).open("head");
    html.empty("meta", "charset", "utf-8");
    html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    html.empty("link", "rel", "icon", "href", "data:,");
    html.element("title", title + ", " + pen.sheet().lesson());
    html.open("style").raw(style()).close("style").close("head");
    html.open("body", "class", pen.audience() + (pen.sheet().model().isPresent() ? " model" : ""))
        .open("main");
    header(title);
    if (pen.sheet().swings().isEmpty()) {
      withoutFullSwings();
    } else if (pen.forPlayer()) {
      forPlayer();
    } else {
      forTeacher();
    }
    footer();
    html.close("main").close("body").close("html").raw("\n");
  }

  private void header(String title) {
    Sheet sheet = pen.sheet();
    html.open("header").element("h1", title);
    String club = sheet.club().isEmpty() ? text("page.any-club") : sheet.club();
    String count =
        text(
            sheet.swings().size() == 1 ? "page.swings.one" : "page.swings",
            sheet.swings().size(),
            club);
    String reps =
        sheet.repetitions().isEmpty()
            ? ""
            : ", " + text("page.swings.reps", sheet.repetitions().size());
    String side =
        text(
            sheet.player().handed() == Handedness.RIGHT ? "page.handed.right" : "page.handed.left");
    String lesson = text("page.lesson", sheet.lesson());
    String day = sheet.date().isEmpty() ? "" : ", " + sheet.date();
    html.element("p", lesson + day + " · " + side + " · " + count + reps);
    html.close("header");
  }

  /** Only drills, or nothing: no picture and no number can be told. */
  private void withoutFullSwings() {
    html.part(AdvicePart.oneThing(pen));
    html.part(DrillPart.done(pen));
    html.part(DrillPart.care(pen));
    if (!pen.forPlayer()) {
      notices();
    }
  }

  private void forTeacher() {
    html.part(AdvicePart.asks(pen));
    html.part(AdvicePart.oneThing(pen));
    html.part(DrillPart.toDo(pen));
    html.open("div", "class", "side-by-side").part(AdvicePart.others(pen)).close("div");
    html.part(DrillPart.done(pen));
    html.open("section", "class", "pictures")
        .element("h2", text("page.pictures"))
        .open("div", "class", "figures");
    figure(HipsFromAbove.draw(pen), "picture.above", "picture.needs.pelvis");
    figure(TurnAgainstSlide.draw(pen), "picture.path", "picture.needs.pelvis");
    figure(CockOnTheWayDown.draw(pen), "picture.cock", "picture.needs.wrist");
    figure(SwingToSwing.draw(pen), "picture.same", "picture.needs.pelvis");
    html.close("div").close("section");
    pen.sheet().model().ifPresent(model -> html.part(NumbersPart.model(pen, model)));
    html.part(NumbersPart.means(pen));
    notices();
  }

  private void forPlayer() {
    html.part(AdvicePart.oneThing(pen));
    html.part(DrillPart.toDo(pen));
    html.open("section", "class", "pictures")
        .element("h2", text("page.pictures"))
        .open("div", "class", "figures");
    figure(HipsFromAbove.draw(pen), "picture.above", "picture.needs.pelvis");
    figure(TurnAgainstSlide.draw(pen), "picture.path", "picture.needs.pelvis");
    figure(SwingToSwing.draw(pen), "picture.same", "picture.needs.pelvis");
    html.open("div").part(AdvicePart.others(pen)).close("div");
    html.close("div").element("p", text("page.about.player"), "class", "small").close("section");
    html.part(DrillPart.done(pen));
  }

  private void figure(Optional<Html> picture, String key, String needs) {
    html.open("figure");
    if (picture.isPresent()) {
      html.part(picture.get());
    } else {
      html.element("p", text("picture.none", text(needs)), "class", "missing");
    }
    html.open("figcaption").element("strong", text(key + ".title") + ". ");
    html.words(text(key + (pen.forPlayer() ? ".player" : ".text")));
    html.close("figcaption").close("figure");
  }

  private void notices() {
    Sheet sheet = pen.sheet();
    String flagged =
        sheet.swings().stream()
            .filter(s -> !s.flags().isEmpty())
            .map(s -> s.number() + " (" + flags(s) + ")")
            .collect(Collectors.joining("; "));
    if (sheet.notices().isEmpty() && sheet.clubsLeftOut().isEmpty() && flagged.isEmpty()) {
      return;
    }
    html.open("section").element("h2", text("page.notices")).open("ul");
    if (!sheet.clubsLeftOut().isEmpty()) {
      html.element("li", text("page.other-clubs", clubs(sheet.clubsLeftOut())));
    }
    if (!flagged.isEmpty()) {
      html.element("li", text("page.flags", flagged));
    }
    pen.words().told(sheet.notices()).keySet().forEach(n -> html.element("li", n));
    html.close("ul").close("section");
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

  private void footer() {
    html.open("footer");
    html.element("h2", text("page.cannot"));
    html.element("p", text("page.cannot.text"));
    html.element("p", text("page.private"));
    html.close("footer");
  }

  private String text(String key, Object... values) {
    return pen.words().text(key, values);
  }

  static String style() {
    try (InputStream in = Page.class.getResourceAsStream("page.css")) {
      if (in == null) {
        throw new IllegalStateException("page.css is not beside " + Page.class);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
