package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.command.live.UnitSearch;
import steadyturn.cli.output.json.Json;
import steadyturn.cli.words.PlainWords;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Which unit is worn where. A unit that tells it itself is believed; the others are told apart by
 * being moved, one after the other, in the order in which they are asked for.
 */
final class UnitTable implements AutoCloseable {

  private static final List<BodyPoint> WANTED =
      List.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);

  /** A unit that turned so far, and three times as far as any other, is the one that is moved. */
  private static final double MOVED_DEG = 60;

  private static final double TIMES = 3;

  /** A unit that lies there shows some noise. */
  private static final double STILL_DEG_PER_S = 12;

  private final UnitSearch search;
  private final Map<String, BodyPoint> worn = new LinkedHashMap<>();
  private final Map<String, Double> movedDeg = new LinkedHashMap<>();
  private List<UnitSearch.Found> found = List.of();

  /**
   * Begins to listen.
   *
   * @param given places that were told with the command
   */
  UnitTable(List<UnitChoice> given) {
    search = UnitSearch.at(given.stream().map(UnitChoice::path).toList());
    given.forEach(choice -> choice.point().ifPresent(point -> worn.put(choice.place(), point)));
  }

  /** Looks at what moves since the last look. */
  void look(double sinceS) {
    found = search.found();
    for (UnitSearch.Found unit : found) {
      unit.worn().filter(this::isFree).ifPresent(point -> worn.putIfAbsent(unit.place(), point));
      double moved = unit.turnDegPerS() > STILL_DEG_PER_S ? unit.turnDegPerS() * sinceS : 0;
      movedDeg.merge(unit.place(), moved, Double::sum);
    }
    Optional<BodyPoint> asked = asked();
    if (asked.isPresent()) {
      moved().ifPresent(unit -> wear(unit.place(), asked.get()));
    }
  }

  private boolean isFree(BodyPoint point) {
    return !worn.containsValue(point);
  }

  private Optional<UnitSearch.Found> moved() {
    List<UnitSearch.Found> most = new ArrayList<>(found);
    most.removeIf(unit -> worn.containsKey(unit.place()));
    most.sort((a, b) -> Double.compare(moved(b), moved(a)));
    if (most.isEmpty() || moved(most.get(0)) < MOVED_DEG) {
      return Optional.empty();
    }
    double next = most.size() > 1 ? moved(most.get(1)) : 0;
    return Optional.of(most.get(0)).filter(first -> moved(first) > TIMES * next);
  }

  private double moved(UnitSearch.Found unit) {
    return movedDeg.getOrDefault(unit.place(), 0.0);
  }

  /** The point whose unit is to be moved next; empty when there is none left to tell. */
  Optional<BodyPoint> asked() {
    boolean isLeft = found.stream().anyMatch(u -> u.rateHz() > 0 && !worn.containsKey(u.place()));
    return isLeft ? WANTED.stream().filter(this::isFree).findFirst() : Optional.empty();
  }

  /** A unit is worn there. */
  void wear(String place, BodyPoint point) {
    worn.values().remove(point);
    worn.put(place, point);
    movedDeg.clear();
  }

  /** Begins anew. */
  void forget() {
    worn.clear();
    movedDeg.clear();
  }

  /** Units that send and whose place is known, as the recorder takes them. */
  List<UnitChoice> choices() {
    List<UnitChoice> choices = new ArrayList<>();
    for (UnitSearch.Found unit : found) {
      if (unit.rateHz() > 0 && worn.containsKey(unit.place())) {
        choices.add(unit.at(worn.get(unit.place())));
      }
    }
    return choices;
  }

  /** How often the units were seen to be alive, for the page. */
  ObjectNode json() {
    ObjectNode node = Json.object();
    Json.list(node, "found", found, this::json);
    asked().ifPresent(point -> node.put("ask", PlainWords.bodyPoint(point)));
    return node.put("ready", !choices().isEmpty());
  }

  private ObjectNode json(UnitSearch.Found unit) {
    String place = unit.place();
    ObjectNode node =
        Json.object().put("place", place).put("name", place.substring(1 + place.lastIndexOf('/')));
    BodyPoint point = worn.get(unit.place());
    return node.put("worn", point == null ? "" : PlainWords.bodyPoint(point))
        .put("hz", Math.round(unit.rateHz()))
        .put("moving", Math.min(10, (int) (unit.turnDegPerS() / 15)))
        .put("trouble", unit.trouble());
  }

  @Override
  public void close() {
    search.close();
  }
}
