package steadyturn.cli.page.paper;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadyturn.analysis.reading.MadeBy;
import steadyturn.cli.words.Words;

/** What made a page, in its last lines. */
public final class Origin {

  private Origin() {}

  /** The program, and each unit that was read by its calibration. */
  public static String of(MadeBy madeBy, Words words) {
    String program = words.text("page.made", madeBy.programVersion());
    List<String> units =
        madeBy.calibrations().stream()
            .map(
                its ->
                    words.text(
                        "page.made.unit", its.serialNumber(), words.day(its.day().toString())))
            .toList();
    return Stream.concat(Stream.of(program), units.stream()).collect(Collectors.joining(" "));
  }
}
