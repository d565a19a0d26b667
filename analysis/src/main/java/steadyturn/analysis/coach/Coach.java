package steadyturn.analysis.coach;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.analysis.coach.RuleFinding.Link;
import steadyturn.analysis.coach.RuleFinding.Seen;
import steadyturn.analysis.coach.teaching.Consequence;
import steadyturn.analysis.coach.teaching.Rule;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;

/**
 * Chooses the one thing to work on. Findings are tried in the order of the teaching file; the first
 * that holds beyond doubt is the priority. What it already explains is not told again.
 */
public record Coach(Teaching teaching) {

  private static final int MOST_FURTHER = 2;
  private static final int FEW_MORE = 12;

  /**
   * Advice for one player and club.
   *
   * @param player label of the player, for limits of their own
   * @param club the club, or an empty string
   * @param swings full swings with that club in one lesson; without any there is no advice
   */
  public Advice advise(String player, String club, List<SwingResult> swings) {
    if (swings.isEmpty()) {
      return new Advice(0, teaching.asks(), Optional.empty(), List.of(), List.of(), List.of());
    }
    List<LessonSwing> lesson = swings.stream().map(s -> new LessonSwing("", s)).toList();
    Teaching own = teaching.forPlayer(player, club);
    Witness witness = new Witness(new SwingGroup("lesson", lesson), own);
    List<RuleFinding> found = new ArrayList<>();
    List<RuleFinding> waiting = new ArrayList<>();
    List<RuleFinding> open = new ArrayList<>();
    for (Rule rule : own.findings()) {
      RuleFinding finding = finding(rule, witness, own);
      if (finding.found() == Certainty.YES) {
        boolean waits = open.stream().anyMatch(o -> soonSettled(o) && otherWork(o, finding));
        (waits ? waiting : found).add(finding);
      } else if (leans(finding)) {
        open.add(finding);
      }
    }
    List<RuleFinding> told = withoutExplained(found, List.of());
    return new Advice(
        swings.size(),
        own.asks(),
        told.stream().findFirst(),
        Stream.concat(told.stream().skip(1), waiting(waiting, told, open))
            .limit(MOST_FURTHER)
            .toList(),
        good(witness, own),
        withoutExplained(open, told));
  }

  /** Beyond doubt, and yet no priority while something more important is open. */
  private static Stream<RuleFinding> waiting(
      List<RuleFinding> waiting, List<RuleFinding> told, List<RuleFinding> open) {
    List<RuleFinding> before = new ArrayList<>(told);
    before.addAll(open);
    return withoutExplained(waiting, before).stream();
  }

  private List<RuleFinding> good(Witness witness, Teaching own) {
    return own.good().stream()
        .map(rule -> finding(rule, witness, own))
        .filter(finding -> finding.found() == Certainty.YES)
        .toList();
  }

  private RuleFinding finding(Rule rule, Witness witness, Teaching own) {
    List<Evidence> evidence = witness.of(rule.when());
    Certainty found = Witness.together(evidence);
    List<Link> chain = found == Certainty.NO ? List.of() : chain(rule, witness, own);
    return new RuleFinding(rule, found, evidence, chain, moreSwings(evidence));
  }

  /** Looks like a finding, and no condition speaks surely against it. */
  private static boolean leans(RuleFinding finding) {
    return finding.found() == Certainty.NOT_SURE_YET
        && finding.evidence().stream().allMatch(Evidence::leansTowards);
  }

  /**
   * Whether a few more swings would settle it; until then whatever comes after it waits. The arms
   * are not corrected while it may yet be the pelvis.
   */
  private static boolean soonSettled(RuleFinding open) {
    return open.moreSwings().orElse(FEW_MORE + 1) <= FEW_MORE;
  }

  /** Whether two findings ask for other drills; where they do not, neither waits for the other. */
  private static boolean otherWork(RuleFinding one, RuleFinding other) {
    return !one.rule().drills().equals(other.rule().drills());
  }

  /** The largest number any condition asks for; empty when one of them cannot be settled so. */
  private static OptionalInt moreSwings(List<Evidence> evidence) {
    int most = 0;
    for (Evidence each : evidence) {
      if (each.holds() == Certainty.NOT_SURE_YET) {
        if (each.moreSwings().isEmpty()) {
          return OptionalInt.empty();
        }
        most = Math.max(most, each.moreSwings().getAsInt());
      }
    }
    return most == 0 ? OptionalInt.empty() : OptionalInt.of(most);
  }

  private static List<Link> chain(Rule rule, Witness witness, Teaching own) {
    Map<String, Link> links = new LinkedHashMap<>();
    for (String name : rule.tendsTo()) {
      links.put(name, link(own.consequence(name), witness, own));
    }
    return List.copyOf(links.values());
  }

  private static Link link(Consequence consequence, Witness witness, Teaching own) {
    if (consequence.look()) {
      return new Link(consequence, Seen.LOOK, List.of());
    }
    if (!consequence.tendencyOf().isEmpty()) {
      Link origin = link(own.consequence(consequence.tendencyOf()), witness, own);
      Seen seen =
          origin.kind() == Seen.SEEN || origin.kind() == Seen.TENDENCY
              ? Seen.TENDENCY
              : origin.kind();
      return new Link(consequence, seen, origin.evidence());
    }
    List<Evidence> evidence = witness.of(consequence.seenWhen());
    return switch (Witness.together(evidence)) {
      case YES -> new Link(consequence, Seen.SEEN, evidence);
      case NO -> new Link(consequence, Seen.NOT_SEEN, evidence);
      case NOT_SURE_YET -> new Link(consequence, Seen.NOT_SURE_YET, evidence);
    };
  }

  /** Leaves out what one told before covers, or one above it in the list. */
  private static List<RuleFinding> withoutExplained(
      List<RuleFinding> findings, List<RuleFinding> told) {
    List<RuleFinding> left = new ArrayList<>();
    Set<RuleFinding> before = new LinkedHashSet<>(told);
    for (RuleFinding finding : findings) {
      if (before.stream().noneMatch(each -> explains(each, finding))) {
        left.add(finding);
        before.add(finding);
      }
    }
    return left;
  }

  private static boolean explains(RuleFinding before, RuleFinding finding) {
    return before.rule().covers().contains(finding.rule().name());
  }
}
