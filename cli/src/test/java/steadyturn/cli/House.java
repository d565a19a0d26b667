package steadyturn.cli;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;

/** The compiled classes of all modules without their tests, read once a process. */
public final class House {

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("steadyturn");

  private House() {}

  /** All of them. */
  public static JavaClasses classes() {
    return CLASSES;
  }
}
