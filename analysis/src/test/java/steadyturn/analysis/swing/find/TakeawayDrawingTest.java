package steadyturn.analysis.swing.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.BodyPoint;

/**
 * The figure of docs/measures.md: takeaway and top on the curve of one made swing, as found, with
 * their intervals. {@code -Dtakeaway.redraw=true} draws it anew.
 */
class TakeawayDrawingTest {

  private static final Path DRAWING = Path.of("..", "docs", "takeaway.svg");
  private static final String BACK = "#0072B2";
  private static final String DOWN = "#A34700";

  @Test
  void theFigureShowsWhereTakeawayAndTopAreFound() throws IOException {
    // Given: a waggle that runs into the takeaway, seed 1. Expect: docs/takeaway.svg as drawn from
    // what the finder makes of it, to the letter.
    String drawn = draw();
    if (Boolean.getBoolean("takeaway.redraw")) {
      Files.writeString(DRAWING, drawn);
    }
    assertThat(Files.readString(DRAWING)).isEqualTo(drawn);
  }

  private static String draw() {
    MadeSwing made = new MadeSwing(MadeSwing.Family.WAGGLE_INTO_TAKEAWAY, 1);
    Swing swing =
        SwingFinder.withDefaults().find(made.recording(500, BodyPoint.LEAD_FOREARM)).get(0);
    EventTime takeaway = swing.event(SwingEvent.TAKEAWAY).orElseThrow();
    EventTime top = swing.event(SwingEvent.TOP).orElseThrow();
    return """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 760 330" font-family="serif" \
        font-size="15" role="img" aria-label="Two curves of how fast the lead forearm turns in the \
        plane of the swing. On the left it goes back and forth before the swing; the takeaway is \
        the last moment at which it turns away at less than 8 degrees per second. On the right it \
        turns away, stops and comes down; the top is where the curve crosses zero.">
          <rect width="760" height="330" fill="#fdfbf6"/>
        """
        + panel("takeaway", 60, takeaway, made::rateDegPerS, -0.45, 0.15, -110, 70, 8)
        + panel("top", 430, top, made::rateDegPerS, -0.2, 0.1, -240, 200, 0)
        + "</svg>\n";
  }

  /** One moment and the curve around it; turning away is drawn upwards on the left only. */
  private static String panel(
      String name,
      int leftPx,
      EventTime at,
      DoubleUnaryOperator rate,
      double fromS,
      double toS,
      double low,
      double high,
      double level) {
    int sign = level > 0 ? -1 : 1;
    double zeroPx = leftPx - 280 * fromS / (toS - fromS);
    StringBuilder line = new StringBuilder();
    for (int i = 0; i <= 140; i++) {
      double t = fromS + (toS - fromS) * i / 140;
      double y = sign * rate.applyAsDouble(at.timeS() + t);
      line.append(
          text("%.1f,%.1f ", leftPx + 2.0 * i, px(Math.max(low, Math.min(high, y)), low, high)));
    }
    double halfPx = 1.96 * at.sdS() * 280 / (toS - fromS);
    return text("  <text x=\"%d\" y=\"34\" font-size=\"19\">The %s</text>\n", leftPx, name)
        + text(
            "  <rect x=\"%.1f\" y=\"60\" width=\"%.1f\" height=\"200\" fill=\"#d9d4c7\"/>\n",
            zeroPx - halfPx, 2 * halfPx)
        + text(
            "  <path d=\"M%d %.1f h280\" stroke=\"#777\" stroke-dasharray=\"2 4\"/>\n",
            leftPx, px(0, low, high))
        + text(
            "  <path d=\"M%d %.1f h280\" stroke=\"#222\" stroke-dasharray=\"7 4\"/>\n",
            leftPx, px(level, low, high))
        + text(
            "  <polyline points=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"2.5\"/>\n",
            line.toString().strip(), level > 0 ? BACK : DOWN)
        + text(
            "  <circle cx=\"%.1f\" cy=\"%.1f\" r=\"6\" fill=\"#222\"/>\n",
            zeroPx, px(level, low, high))
        + text(
            "  <text x=\"%d\" y=\"290\">%s</text>\n",
            leftPx, level > 0 ? "the last moment away slower than 8°/s" : "away becomes down")
        + text(
            "  <text x=\"%d\" y=\"312\" font-size=\"13\" fill=\"#444\">%s</text>\n",
            leftPx,
            text(
                "%s to %.0f°/s; %.1f s; grey: ±",
                level > 0 ? "up: away, fast" : "up: down, fast", high, toS - fromS));
  }

  private static double px(double value, double low, double high) {
    return 260 - 200 * (value - low) / (high - low);
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
