package steadyturn.cli.page;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.Properties;
import steadyturn.ingest.recording.disk.Shipped;

/** The drawn picture of a shipped drill: the hips from above, or arm and club, and what is new. */
final class DrillPicture {

  private static final Properties DRAWN = read();

  private DrillPicture() {}

  private static Properties read() {
    Properties all = new Properties();
    try {
      all.load(new StringReader(Shipped.text(DrillPicture.class, "drill-pictures.properties")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  /** Empty for a drill of the teacher's own. Drawn for a right-handed player; mirrored for left. */
  static Optional<Html> of(Pen pen, String drill) {
    return Optional.ofNullable(DRAWN.getProperty(drill))
        .map(
            markup -> {
              String name = pen.text("drill." + drill + ".name");
              return new Drawing("drill", 160, 110, name, pen.text("drill.picture.alt", name))
                  .mirrored(pen.leftIsTarget() < 0, markup)
                  .done();
            });
  }
}
