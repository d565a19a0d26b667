package steadyturn.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Format;
import java.time.format.DateTimeFormatter;
import java.util.Formatter;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Scanner;
import org.junit.jupiter.api.Test;
import steadyturn.fusion.rotation.Quaternion;

/**
 * The plan of the house as tests: which way the data flow, who may print, where rotations are
 * computed. Given: every compiled class of the four modules, tests left out.
 */
final class HouseTest {

  private static final JavaClasses HOUSE = House.classes();

  @Test
  void allFourModulesAreLookedAt() {
    assertThat(
            HOUSE.stream().map(c -> c.getPackageName().replaceAll("^(steadyturn\\.\\w+).*", "$1")))
        .contains(
            "steadyturn.ingest", "steadyturn.fusion", "steadyturn.analysis", "steadyturn.cli");
  }

  @Test
  void dataFlowFromIngestToFusionToAnalysisToCli() {
    ArchRule rule =
        layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("ingest")
            .definedBy("steadyturn.ingest..")
            .layer("fusion")
            .definedBy("steadyturn.fusion..")
            .layer("analysis")
            .definedBy("steadyturn.analysis..")
            .layer("cli")
            .definedBy("steadyturn.cli..")
            .whereLayer("cli")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("analysis")
            .mayOnlyBeAccessedByLayers("cli")
            .whereLayer("fusion")
            .mayOnlyBeAccessedByLayers("analysis", "cli");
    rule.check(HOUSE);
  }

  @Test
  void noPackagesDependOnEachOtherInACircle() {
    slices().matching("steadyturn.(*.*)..").should().beFreeOfCycles().check(HOUSE);
    slices().matching("steadyturn.(**)").should().beFreeOfCycles().check(HOUSE);
  }

  /**
   * What makes lessons and units up must not leak into what measures them; a rehearsal shows them
   * at ports.
   */
  @Test
  void theLabIsSeenByItsOwnCommandsOnly() {
    ArchRule rule =
        noClasses()
            .that()
            .resideOutsideOfPackages(
                "steadyturn.analysis.lab..",
                "steadyturn.ingest.lab",
                "steadyturn.cli.command.lab",
                "steadyturn.cli.command.rehearsal")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("steadyturn.analysis.lab..", "steadyturn.ingest.lab");
    rule.check(HOUSE);
  }

  @Test
  void onlyTheCommandLinePrints() {
    ArchRule rule =
        noClasses()
            .that()
            .resideOutsideOfPackage("steadyturn.cli..")
            .should(GeneralCodingRules.ACCESS_STANDARD_STREAMS)
            .orShould()
            .callMethod(Throwable.class, "printStackTrace");
    rule.check(HOUSE);
  }

  @Test
  void onlyTheCommandLineSpeaks() {
    ArchRule rule =
        noClasses()
            .that()
            .resideOutsideOfPackage("steadyturn.cli..")
            .should()
            .dependOnClassesThat()
            .areAssignableTo(ResourceBundle.class);
    rule.check(HOUSE);
  }

  @Test
  void theProcessEndsInOnePlaceOnly() {
    ArchRule rule =
        noClasses()
            .that()
            .doNotBelongToAnyOf(Main.class)
            .should()
            .callMethod(System.class, "exit", int.class);
    rule.check(HOUSE);
  }

  /** Whoever needs the four numbers of a quaternion is doing algebra with it. */
  @Test
  void quaternionsAreTakenApartInTheRotationRoomOnly() {
    ArchRule rule =
        noClasses()
            .that()
            .resideOutsideOfPackages("steadyturn.fusion.rotation")
            .should()
            .callMethod(Quaternion.class, "w");
    rule.check(HOUSE);
  }

  @Test
  void roomsAreNamedAfterThingsOfTheDomain() {
    ArchRule rule =
        noClasses()
            .should()
            .resideInAnyPackage("..util..", "..model..", "..impl..", "..helper..", "..manager..")
            .orShould()
            .resideInAPackage("..common..");
    rule.check(HOUSE);
  }

  @Test
  void wallClockAndChanceComeInAsArguments() {
    ArchRule rule =
        noClasses()
            .that()
            .resideInAnyPackage("steadyturn.fusion..", "steadyturn.analysis..")
            .should()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(Math.class, "random")
            .orShould()
            .callConstructor(java.util.Random.class);
    rule.check(HOUSE);
  }

  @Test
  void noMethodGivesNullForAMissingThing() {
    ArchRule rule =
        methods()
            .that()
            .areDeclaredInClassesThat()
            .resideInAPackage("steadyturn..")
            .should()
            .notBeAnnotatedWith("org.jspecify.annotations.Nullable");
    rule.check(HOUSE);
  }

  /** A number with the digits of the reader's language is none to whoever reads the file. */
  @Test
  void everyTextIsFormattedForANamedLocale() {
    Class<?>[] formatted = {String.class, Object[].class};
    ArchRule rule =
        noClasses()
            .should()
            .callMethod(String.class, "format", formatted)
            .orShould()
            .callMethod(String.class, "formatted", Object[].class)
            .orShould()
            .callMethod(String.class, "toLowerCase")
            .orShould()
            .callMethod(String.class, "toUpperCase")
            .orShould()
            .callMethod(PrintWriter.class, "printf", formatted)
            .orShould()
            .callMethod(PrintWriter.class, "format", formatted)
            .orShould()
            .callMethod(PrintStream.class, "printf", formatted)
            .orShould()
            .callMethod(PrintStream.class, "format", formatted)
            .orShould()
            .callConstructor(Formatter.class)
            .orShould()
            .callConstructor(Scanner.class, InputStream.class)
            .orShould()
            .callMethod(DateTimeFormatter.class, "ofPattern", String.class)
            .orShould()
            .callMethod(Locale.class, "getDefault")
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(Format.class);
    rule.check(HOUSE);
  }

  /** A room of more files than this is two rooms, a file of more lines two files. */
  @Test
  void roomsAndFilesStaySmall() throws IOException {
    Map<Path, Long> rooms =
        SourceFiles.main().stream().collect(groupingBy(Path::getParent, counting()));
    assertThat(rooms)
        .allSatisfy((room, files) -> assertThat(files).as("%s", room).isLessThanOrEqualTo(25));
    for (Path file : SourceFiles.main()) {
      assertThat(Files.readAllLines(file)).as("%s", file).hasSizeLessThanOrEqualTo(300);
    }
  }

  @Test
  void eachNameOfATypeIsGivenOnce() throws IOException {
    Map<String, Long> names =
        SourceFiles.main().stream()
            .map(file -> file.getFileName().toString())
            .filter(name -> !name.equals("package-info.java"))
            .collect(groupingBy(name -> name, counting()));
    names.values().removeIf(times -> times == 1);
    assertThat(names).isEmpty();
  }
}
