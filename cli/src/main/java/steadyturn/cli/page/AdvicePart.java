package steadyturn.cli.page;

import java.util.List;
import java.util.stream.Stream;
import steadyturn.analysis.coach.Advice;
import steadyturn.analysis.coach.Evidence;
import steadyturn.analysis.coach.RuleFinding;
import steadyturn.analysis.coach.RuleFinding.Link;
import steadyturn.analysis.coach.RuleFinding.Seen;
import steadyturn.analysis.compare.GroupComparison;
import steadyturn.analysis.measure.Measure;
import steadyturn.cli.page.paper.Html;

/** The one thing, what else, what is good, and what is not sure yet. */
record AdvicePart(Pen pen, Advice advice, Html html) {

  private static AdvicePart of(Pen pen) {
    return new AdvicePart(pen, pen.sheet().advice(), new Html());
  }

  static Html oneThing(Pen pen) {
    AdvicePart part = of(pen);
    part.priority();
    return part.html;
  }

  static Html others(Pen pen) {
    AdvicePart part = of(pen);
    part.whatIsGood();
    part.further();
    part.besides();
    return part.html;
  }

  /** Questions about set-up, which the units cannot see; for the teacher only. */
  static Html asks(Pen pen) {
    Advice advice = pen.sheet().advice();
    Html html = new Html().open("section", "class", "ask").element("h2", pen.text("ask.title"));
    Stream<String> look =
        advice.priority().stream()
            .flatMap(found -> links(found, Seen.LOOK))
            .map(link -> pen.text("ask.look", consequence(pen, link)));
    html.list(Stream.concat(advice.asks().stream().map(ask -> pen.text("ask." + ask)), look));
    return html.close("section");
  }

  private void priority() {
    html.open("section", "class", "one");
    boolean isGood = advice.priority().isEmpty() && !advice.good().isEmpty();
    html.element("h2", text(isGood ? "page.how-it-went" : "page.one-thing" + pen.reader()));
    if (advice.priority().isPresent()) {
      finding(advice.priority().get());
    } else if (advice.swings() == 0) {
      html.element("p", text("page.no-swing"), "class", "big");
    } else if (advice.swings() < GroupComparison.FEWEST_SWINGS) {
      html.element("p", text("page.not-enough"), "class", "big");
    } else if (pen.forPlayer() && !advice.good().isEmpty()) {
      String how = advice.open().isEmpty() ? "" : ".so-far";
      html.element("p", text("page.keep" + how), "class", "big");
      html.list(good(), "class", "good");
      if (!advice.open().isEmpty()) {
        html.element("h3", text("page.open")).part(open());
      }
      html.element("p", text("page.keep.more" + how));
    } else {
      nothingSure();
      html.part(pen.forPlayer() ? new Html() : FewNumbers.within(pen, advice.good()));
    }
    html.close("section");
  }

  /**
   * Nothing is wrong beyond doubt: because all is well so far, or because it cannot be told yet.
   */
  private void nothingSure() {
    if (advice.open().isEmpty()) {
      html.element("p", text("page.nothing"), "class", "big");
      html.element("p", text("page.nothing" + (pen.forPlayer() ? ".player" : ".teacher")));
    } else {
      html.element("p", text("page.unsure"), "class", "big").part(open());
    }
  }

  private void finding(RuleFinding finding) {
    String source = finding.rule().source();
    String key = "finding." + finding.rule().name();
    html.element("p", text(key + (pen.forPlayer() ? ".aim" : ".name")), "class", "big");
    html.element("p", text(key + (pen.forPlayer() ? ".player" : ".teacher")));
    if (pen.forPlayer()) {
      html.list(finding.evidence().stream().map(this::evidence), "class", "seen-by");
    } else {
      html.part(FewNumbers.against(pen, finding));
      chain(finding);
      String named = source.isBlank() ? text("source.own") : source;
      String confidence = text("confidence." + finding.rule().confidence());
      html.element("p", text("page.source", named, confidence), "class", "small");
    }
  }

  private String evidence(Evidence e) {
    Measure measure = e.need().what().measure();
    String of = pen.name(e.need().what());
    String name = Pen.sentence(e.need().ofSpread() ? text("page.spread-of", of) : of);
    if (pen.forPlayer()) {
      return name + ": " + pen.about(e.value(), measure) + ".";
    }
    String limit = text("page.limit", pen.amounts().asSetWithUnit(e.limit().value(), measure));
    return name + ": " + pen.ranged(e.value(), e.low(), e.high(), measure) + "; " + limit + ".";
  }

  /** What it tends to cause, where there is a sign of it, one after the other. */
  private void chain(RuleFinding finding) {
    List<Link> signs = links(finding, Seen.SEEN, Seen.TENDENCY).toList();
    if (signs.isEmpty()) {
      return;
    }
    html.element("h3", text("page.tends-to"));
    html.open("ol", "class", "chain");
    for (Link link : signs) {
      String seen = link.kind().word();
      html.open("li");
      html.element("span", consequence(pen, link));
      html.words(" ").element("em", text("seen." + seen), "class", seen).close("li");
    }
    html.close("ol");
  }

  private static Stream<Link> links(RuleFinding finding, Seen... kinds) {
    return finding.chain().stream().filter(link -> List.of(kinds).contains(link.kind()));
  }

  private static String consequence(Pen pen, Link link) {
    return pen.text("consequence." + link.consequence().name() + ".teacher");
  }

  private void whatIsGood() {
    boolean told = advice.good().isEmpty() || advice.priority().isEmpty();
    if (pen.forPlayer() && told) {
      return;
    }
    html.open("section").element("h2", text("page.good"));
    if (advice.good().isEmpty()) {
      html.element("p", text("page.good.none"));
    } else {
      html.list(good(), "class", "good");
    }
    html.close("section");
  }

  private Stream<String> good() {
    return advice.good().stream().map(g -> text("good." + g.rule().name() + ".player"));
  }

  private void further() {
    if (advice.further().isEmpty() || pen.forPlayer()) {
      return;
    }
    html.open("section").element("h2", text("page.further")).open("ul");
    for (RuleFinding finding : advice.further()) {
      html.open("li");
      html.element("strong", text("finding." + finding.rule().name() + ".name") + ". ");
      html.words(text("finding." + finding.rule().name() + ".teacher") + " ");
      finding.evidence().forEach(e -> html.words(evidence(e) + " "));
      html.close("li");
    }
    html.close("ul", "section");
  }

  /** Beside a finding; without one it is told in its place. */
  private void besides() {
    boolean hasSwings = advice.swings() >= GroupComparison.FEWEST_SWINGS;
    boolean isTold = advice.priority().isEmpty() && hasSwings;
    boolean concernsPlayer = !pen.forPlayer() || advice.priority().isEmpty();
    if (!advice.open().isEmpty() && !isTold && concernsPlayer) {
      html.open("section").element("h2", text("page.open")).part(open()).close("section");
    }
  }

  private Html open() {
    return new Html().list(advice.open().stream().map(this::open));
  }

  private String open(RuleFinding finding) {
    String name = text("finding." + finding.rule().name() + ".name");
    if (finding.moreSwings().isEmpty()) {
      return text("page.open.error" + pen.reader(), name);
    }
    int more = finding.moreSwings().getAsInt();
    return text(more == 1 ? "page.open.more.one" : "page.open.more", name, more);
  }

  private String text(String key, Object... values) {
    return pen.text(key, values);
  }
}
