package ovenproof.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Which room may know which. */
@AnalyzeClasses(packages = "ovenproof", importOptions = ImportOption.DoNotIncludeTests.class)
class DependencyArchitectureTest {

  @ArchTest
  static final ArchRule coreIsPure =
      noClasses()
          .that()
          .resideInAPackage("ovenproof.core..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "java.nio.file..",
              "java.sql..",
              "java.net..",
              "org.springframework..",
              "tools.jackson..",
              "javax.imageio..",
              "java.awt..")
          .because(
              "a calculation that opens files or asks the clock cannot be computed again elsewhere");

  @ArchTest
  static final ArchRule coreReadsNoFile =
      noClasses()
          .that()
          .resideInAPackage("ovenproof.core..")
          .should()
          .dependOnClassesThat()
          .haveNameMatching("java\\.io\\.(File|FileInputStream|FileOutputStream|RandomAccessFile)")
          .because("core works on values in memory; evidence is opened elsewhere");

  @ArchTest
  static final ArchRule coreAsksNoClock =
      noClasses()
          .that()
          .resideInAPackage("ovenproof.core..")
          .should()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(java.time.Instant.class, "now")
          .because("a verdict must be the same tomorrow");

  @ArchTest
  static final ArchRule coreKnowsNobody =
      classes()
          .that()
          .resideInAPackage("ovenproof.core..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "ovenproof.core..",
              "java..",
              "org.hipparchus..",
              "org.apache.commons..",
              "org.ejml..",
              "boofcv..",
              "georegression..",
              "org.ddogleg..",
              "pabeles..",
              "org.jspecify..")
          .because("core is the innermost room: everyone uses it, it uses nobody");

  @ArchTest
  static final ArchRule kitchenEstimatesNothing =
      noClasses()
          .that()
          .resideInAPackage("ovenproof.kitchen..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "ovenproof.core.trace..",
              "ovenproof.core.thermal..",
              "ovenproof.core.photo..",
              "ovenproof.core.panel..",
              "ovenproof.core.statistics..",
              "ovenproof.core.scoring..",
              "ovenproof.core.ranking..",
              "ovenproof.core.safety..")
          .because("a truth made with the estimator under test would agree with its mistakes");

  @ArchTest
  static final ArchRule featuresFormNoCircle =
      slices()
          .matching("ovenproof.(*)..")
          .should()
          .beFreeOfCycles()
          .because("a circle of features is one feature that nobody can read alone");

  @ArchTest
  static final ArchRule coreFormsNoCircle =
      slices()
          .matching("ovenproof.core.(*)..")
          .should()
          .beFreeOfCycles()
          .because("each question of the core is answered on its own");

  @ArchTest
  static final ArchRule onlyTheWebKnowsSpring =
      noClasses()
          .that()
          .resideOutsideOfPackages("ovenproof.web..", "ovenproof.desk..", "ovenproof.benchmarks..")
          .and()
          .haveSimpleNameNotEndingWith("Controller")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.springframework..")
          .because(
              "services are plain constructors wired in one class, so that the command line starts in"
                  + " a fraction of a second and folder and desk give the same numbers");

  @ArchTest
  static final ArchRule featuresDoNotKnowTheirDoors =
      noClasses()
          .that()
          .resideOutsideOfPackages("ovenproof.cli..", "ovenproof.web..", "ovenproof.benchmarks..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("ovenproof.cli..")
          .because("command line and web are two doors to the same services");
}
