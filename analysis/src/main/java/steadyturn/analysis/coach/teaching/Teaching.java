package steadyturn.analysis.coach.teaching;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * The teacher's rules: limits, findings in order of importance, what is good, consequences and
 * drills. Start with {@link TeachingReader#shipped()}.
 *
 * @param asks names of the questions about set-up, which the units cannot see
 */
public record Teaching(
    Map<String, Limit> limits,
    List<String> asks,
    List<Rule> findings,
    List<Rule> good,
    List<Consequence> consequences,
    List<Drill> drills,
    List<OwnLimit> ownLimits) {

  public Teaching {
    limits = Map.copyOf(limits);
    asks = List.copyOf(asks);
    findings = List.copyOf(findings);
    good = List.copyOf(good);
    consequences = List.copyOf(consequences);
    Map<String, Limit> known = limits;
    drills = drills.stream().map(drill -> drill.withGoal(drill.goal().with(known))).toList();
    ownLimits = List.copyOf(ownLimits);
  }

  /** These rules with another file's on top: the same name replaces, a new one goes to the end. */
  public Teaching with(Teaching other) {
    Map<String, Limit> both = new LinkedHashMap<>(limits);
    both.putAll(other.limits);
    return new Teaching(
        both,
        merged(asks, other.asks, Function.identity()),
        merged(findings, other.findings, Rule::name),
        merged(good, other.good, Rule::name),
        merged(consequences, other.consequences, Consequence::name),
        merged(drills, other.drills, Drill::name),
        merged(ownLimits, other.ownLimits, Function.identity()));
  }

  private static <T, K> List<T> merged(List<T> base, List<T> top, Function<T, K> name) {
    Map<K, T> byName = new LinkedHashMap<>();
    base.forEach(each -> byName.put(name.apply(each), each));
    top.forEach(each -> byName.put(name.apply(each), each));
    return new ArrayList<>(byName.values());
  }

  /** These rules with the limits that the teacher set for a player and a club. */
  public Teaching forPlayer(String player, String club) {
    Map<String, Limit> own = new LinkedHashMap<>(limits);
    for (OwnLimit each : ownLimits) {
      if (each.isFor(player, club)) {
        own.computeIfPresent(each.limit(), (name, limit) -> limit.withValue(each.value(), ""));
      }
    }
    return new Teaching(own, asks, findings, good, consequences, drills, ownLimits);
  }

  /** A limit by its name. */
  public Limit limit(String name) {
    return Optional.ofNullable(limits.get(name)).orElseThrow(() -> missing("limit", name));
  }

  public Consequence consequence(String name) {
    return find("consequence", name, consequences, Consequence::name);
  }

  /** A drill by its name. */
  public Drill drill(String name) {
    return find("drill", name, drills, Drill::name);
  }

  private static <T> T find(String kind, String name, List<T> all, Function<T, String> nameOf) {
    return all.stream()
        .filter(each -> nameOf.apply(each).equals(name))
        .findFirst()
        .orElseThrow(() -> missing(kind, name));
  }

  private static TeachingException missing(String kind, String name) {
    return new TeachingException(
        "there is no "
            + kind
            + " \""
            + name
            + "\" in the teaching file. Add it or correct the name.");
  }

  /** Refuses rules that point at something that is not there. */
  Teaching checked() {
    List<Rule> rules = new ArrayList<>(findings);
    rules.addAll(good);
    for (Rule rule : rules) {
      rule.when().forEach(need -> limit(need.limit()));
      rule.tendsTo().forEach(this::consequence);
      rule.drills().forEach(this::drill);
    }
    for (Consequence each : consequences) {
      each.seenWhen().forEach(need -> limit(need.limit()));
      requireAnEnd(each);
    }
    ownLimits.forEach(own -> limit(own.limit()));
    drills.stream()
        .filter(drill -> !drill.hasNumber())
        .forEach(drill -> List.of(drill.goal().from(), drill.goal().to()).forEach(this::bound));
    return this;
  }

  private void bound(String written) {
    if (Character.isLetter(written.charAt(0))) {
      limit(written);
    }
  }

  /** A tendency points at what it is a tendency of, and so on, but never back at itself. */
  private void requireAnEnd(Consequence start) {
    Set<String> seen = new LinkedHashSet<>();
    Consequence at = start;
    while (!at.tendencyOf().isEmpty()) {
      if (!seen.add(at.name())) {
        throw TeachingException.of(
            "consequence %s: tendency-of goes round in a circle (%s -> %s). Let one of them have"
                + " seen-when or look = true instead.",
            start.name(), String.join(" -> ", seen), at.name());
      }
      at = consequence(at.tendencyOf());
    }
  }
}
