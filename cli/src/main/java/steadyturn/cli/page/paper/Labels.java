package steadyturn.cli.page.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds for each label of a picture the place that keeps clear of lines and other labels. */
public final class Labels {

  private static final double HEIGHT = 14;

  /** A letter is about so wide as a part of the height of the type. */
  private static final double LETTER = 0.52;

  /** Where a label may stand; anchor start, middle or end. */
  public record Spot(double x, double y, String anchor) {}

  private record Stroke(double x1, double y1, double x2, double y2, double half) {}

  private final double width;
  private final double height;
  private final List<Stroke> strokes = new ArrayList<>();

  /** For a picture of such a size, px. */
  public Labels(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** A line that labels keep clear of. */
  public Labels avoid(double x1, double y1, double x2, double y2, double lineWidth) {
    strokes.add(new Stroke(x1, y1, x2, y2, lineWidth / 2));
    return this;
  }

  /** The first spot with room around it, else the one with most; later labels keep clear of it. */
  public Spot place(String text, double typePx, List<Spot> spots) {
    double wide = LETTER * typePx * text.length();
    Spot best =
        spots.stream()
            .filter(spot -> clearance(spot, wide) >= 3)
            .findFirst()
            .orElseGet(
                () ->
                    spots.stream()
                        .max(Comparator.comparingDouble(spot -> clearance(spot, wide)))
                        .orElseThrow());
    double left = left(best, wide);
    avoid(left, middle(best), left + wide, middle(best), HEIGHT);
    return best;
  }

  /**
   * Room between a label and what is nearest, px; negative where they overlap or leave the paper.
   */
  double clearance(Spot spot, double wide) {
    double left = left(spot, wide);
    double inside =
        Math.min(
            Math.min(left, width - left - wide), Math.min(spot.y() - HEIGHT, height - spot.y()));
    double room = inside < 0 ? 10 * inside : Double.POSITIVE_INFINITY;
    for (Stroke stroke : strokes) {
      for (int k = 0; k <= 8; k++) {
        double x = left + wide * k / 8;
        room = Math.min(room, distance(x, middle(spot), stroke) - stroke.half() - HEIGHT / 2);
      }
    }
    return room;
  }

  private static double middle(Spot spot) {
    return spot.y() - HEIGHT / 3;
  }

  private static double left(Spot spot, double wide) {
    return switch (spot.anchor()) {
      case "start" -> spot.x();
      case "end" -> spot.x() - wide;
      default -> spot.x() - wide / 2;
    };
  }

  private static double distance(double x, double y, Stroke s) {
    double dx = s.x2() - s.x1();
    double dy = s.y2() - s.y1();
    double length2 = dx * dx + dy * dy;
    double part =
        length2 == 0
            ? 0
            : Math.max(0, Math.min(1, ((x - s.x1()) * dx + (y - s.y1()) * dy) / length2));
    return Math.hypot(x - s.x1() - part * dx, y - s.y1() - part * dy);
  }
}
