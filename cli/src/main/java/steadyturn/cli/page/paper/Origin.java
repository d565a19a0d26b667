package steadyturn.cli.page.paper;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.words.Words;

/** What made a page, in its last lines. */
public final class Origin {

  private Origin() {}

  /**
   * Writes the program, and each unit that was read by its calibration; the settings go along for
   * those who look into the file.
   */
  public static void write(MadeBy madeBy, Words words, Html to) {
    String program = words.text("page.made", madeBy.programVersion());
    List<String> units =
        madeBy.calibrations().stream()
            .map(
                its ->
                    words.text(
                        "page.made.unit", its.serialNumber(), words.day(its.day().toString())))
            .toList();
    String all = Stream.concat(Stream.of(program), units.stream()).collect(Collectors.joining(" "));
    to.element("p", all, "data-settings", madeBy.settings());
  }
}
