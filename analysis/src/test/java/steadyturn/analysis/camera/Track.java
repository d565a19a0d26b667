package steadyturn.analysis.camera;

import java.util.ArrayList;
import java.util.List;

/** The way of one segment, by millisecond: place (m, ground) and turn (ground from segment). */
final class Track {

  final List<double[]> placeM = new ArrayList<>();
  final List<double[]> turn = new ArrayList<>();

  Track(double[] placeM, double[] turn) {
    add(placeM, turn);
  }

  private void add(double[] p, double[] q) {
    placeM.add(p);
    turn.add(q);
  }

  int size() {
    return turn.size();
  }

  double[] lastPlaceM() {
    return placeM.get(size() - 1);
  }

  double[] lastTurn() {
    return turn.get(size() - 1);
  }

  void hold(int ms) {
    for (int i = 0; i < ms; i++) {
      add(lastPlaceM(), lastTurn());
    }
  }

  /** Goes there with the least jerk. */
  void to(int ms, double[] place, double[] q) {
    double[] from = lastPlaceM();
    double[] start = lastTurn();
    double[] way = Turn.vector(Turn.times(Turn.back(start), q));
    for (int i = 1; i <= ms; i++) {
      double u = soft((double) i / ms);
      double[] p = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        p[axis] = from[axis] + u * (place[axis] - from[axis]);
      }
      add(p, Turn.times(start, Turn.by(u * way[0], u * way[1], u * way[2])));
    }
  }

  /** 0 to 1 over 0 to 1, with rates of 0 at both ends. */
  static double soft(double x) {
    double u = Math.max(0, Math.min(1, x));
    return u * u * u * (10 - 15 * u + 6 * u * u);
  }
}
