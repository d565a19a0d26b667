package steadyturn.cli.command.mat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.live.LiveEvents;
import steadyturn.cli.command.live.LiveSession;
import steadyturn.cli.command.live.PortOptions;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.terminal.Console;
import steadyturn.ingest.live.LiveListener;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Player;

/** The run under way, with the wear steps of the units that are worn in it. */
record MatSession(LiveSession live, GuidedSteps steps, List<BodyPoint> worn) {

  /** Where a lesson is recorded, whose it is and with what. */
  record Setting(
      Path root, Player player, String label, List<UnitChoice> units, PortOptions ports) {}

  /** Begins to record. */
  static MatSession begin(
      Setting setting, LessonNotes notes, LiveEvents hears, LiveListener besides, Console console)
      throws IOException {
    LiveSession live =
        LiveSession.start(
            setting.root(),
            setting.player(),
            setting.label(),
            AnalysisSettings.defaults(),
            hears,
            console);
    live.open(setting.units(), setting.ports(), besides);
    List<BodyPoint> worn = setting.units().stream().flatMap(unit -> unit.point().stream()).toList();
    List<String> done = notes.list("steps");
    GuidedSteps steps =
        new GuidedSteps(
            live,
            worn,
            done,
            step -> {
              List<String> all = new java.util.ArrayList<>(notes.list("steps"));
              all.remove(step.word());
              all.add(step.word());
              notes.put("steps", all);
            });
    return new MatSession(live, steps, worn);
  }

  String run() {
    return live.recorder().label().id();
  }
}
