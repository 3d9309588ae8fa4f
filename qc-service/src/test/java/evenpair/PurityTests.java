package evenpair;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleName;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Acoustics, statistics and tolerance compute and nothing else: no Spring, no JPA, no file, no
 * clock, no random source. So a trial with the active limit set reproduces every verdict, and a
 * test needs nothing but numbers.
 */
class PurityTests {
  private static final JavaClasses OURS =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("evenpair.acoustics", "evenpair.statistics", "evenpair.tolerance");
  private static final JavaClasses BROKEN =
      new ClassFileImporter().importPackages("violations.pure");

  /** Only the declaration of the module itself may name Spring Modulith. */
  private static final DescribedPredicate<JavaClass> DECLARATION = simpleName("package-info");

  private static ArchRule namesOnlyComputation(String base) {
    String[] pure = pureBelow(base);
    return classes()
        .that(resideInAnyPackage(pure).and(DescribedPredicate.not(DECLARATION)))
        .should()
        .onlyDependOnClassesThat(
            resideInAnyPackage(pure)
                .or(
                    resideInAnyPackage(
                        "java.lang",
                        "java.lang.annotation",
                        "java.lang.invoke",
                        "java.lang.runtime",
                        "java.util",
                        "java.util.function",
                        "java.util.stream",
                        "java.util.regex",
                        "java.util.concurrent..",
                        "org.apache.commons.math3..",
                        // JTransforms, and the package in which it keeps its number of threads
                        "org.jtransforms..",
                        "pl.edu.icm.jlargearrays")));
  }

  private static ArchRule asksNoRandomSource(String base) {
    return noClasses()
        .that()
        .resideInAnyPackage(pureBelow(base))
        .should()
        .dependOnClassesThat(
            resideInAnyPackage("java.util.random..", "org.apache.commons.math3.random..")
                .or(
                    JavaClass.Predicates.belongToAnyOf(
                        Random.class, SplittableRandom.class, ThreadLocalRandom.class)))
        .orShould()
        .callMethod(Math.class, "random")
        .orShould()
        .callMethod(StrictMath.class, "random")
        .orShould()
        .callMethod(UUID.class, "randomUUID");
  }

  private static ArchRule asksNoClock(String base) {
    return noClasses()
        .that()
        .resideInAnyPackage(pureBelow(base))
        .should()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .dependOnClassesThat(resideInAnyPackage("java.time.."));
  }

  private static String[] pureBelow(String base) {
    return new String[] {base + ".acoustics..", base + ".statistics..", base + ".tolerance.."};
  }

  @Test
  void pureModulesNameOnlyComputation() {
    namesOnlyComputation("evenpair").check(OURS);
  }

  @Test
  void pureModulesAskNoRandomSource() {
    asksNoRandomSource("evenpair").check(OURS);
  }

  @Test
  void pureModulesAskNoClock() {
    asksNoClock("evenpair").check(OURS);
  }

  @ParameterizedTest
  @CsvSource({
    "ReadsAFile, java.nio.file.Files",
    "IsABean, org.springframework.stereotype.Component"
  })
  void aPureClassThatReachesOutIsFoundWithBothNames(String from, String to) {
    assertThatThrownBy(() -> namesOnlyComputation("violations.pure").check(BROKEN))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining(from)
        .hasMessageContaining(to);
  }

  @Test
  void aPureClassThatRollsDiceIsFoundWithBothNames() {
    assertThatThrownBy(() -> asksNoRandomSource("violations.pure").check(BROKEN))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("RollsDice")
        .hasMessageContaining("java.lang.Math.random");
  }

  @Test
  void aPureClassThatAsksTheClockIsFoundWithBothNames() {
    assertThatThrownBy(() -> asksNoClock("violations.pure").check(BROKEN))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("AsksTheClock")
        .hasMessageContaining("java.lang.System.currentTimeMillis");
  }
}
