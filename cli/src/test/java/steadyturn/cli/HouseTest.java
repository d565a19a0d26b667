package steadyturn.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.GeneralCodingRules;
import steadyturn.fusion.rotation.Quaternion;

/**
 * The plan of the house as tests: which way the data flow, who may print, where rotations are
 * computed. Given: every compiled class of the four modules, tests left out.
 */
@AnalyzeClasses(packages = "steadyturn", importOptions = ImportOption.DoNotIncludeTests.class)
final class HouseTest {

  @ArchTest
  static final ArchRule dataFlowFromIngestToFusionToAnalysisToCli =
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

  @ArchTest
  static final ArchRule noPackagesDependOnEachOtherInACircle =
      slices().matching("steadyturn.(*.*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule onlyTheCommandLinePrints =
      noClasses()
          .that()
          .resideOutsideOfPackage("steadyturn.cli..")
          .should(GeneralCodingRules.ACCESS_STANDARD_STREAMS)
          .orShould()
          .callMethod(Throwable.class, "printStackTrace");

  @ArchTest
  static final ArchRule theProcessEndsInOnePlaceOnly =
      noClasses()
          .that()
          .doNotBelongToAnyOf(Main.class)
          .should()
          .callMethod(System.class, "exit", int.class);

  /** Whoever needs the four numbers of a quaternion is doing algebra with it. */
  @ArchTest
  static final ArchRule quaternionsAreTakenApartInTheRotationRoomOnly =
      noClasses()
          .that()
          .resideOutsideOfPackages("steadyturn.fusion.rotation")
          .should()
          .callMethod(Quaternion.class, "w");

  @ArchTest
  static final ArchRule roomsAreNamedAfterThingsOfTheDomain =
      noClasses()
          .should()
          .resideInAnyPackage("..util..", "..model..", "..impl..", "..helper..", "..manager..")
          .orShould()
          .resideInAPackage("..common..");

  @ArchTest
  static final ArchRule wallClockAndChanceComeInAsArguments =
      noClasses()
          .that()
          .resideInAnyPackage("steadyturn.fusion..", "steadyturn.analysis..")
          .should()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(Math.class, "random")
          .orShould()
          .callConstructor(java.util.Random.class);

  @ArchTest
  static final ArchRule noMethodGivesNullForAMissingThing =
      methods()
          .that()
          .areDeclaredInClassesThat()
          .resideInAPackage("steadyturn..")
          .should()
          .notBeAnnotatedWith("org.jspecify.annotations.Nullable");
}
