package evenpair;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.ApplicationModule;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.modulith.core.Violations;

/** One package is one module, and each uses only those that the design lets it use. */
class ModularityTests {
  /**
   * The design's table of direct dependencies, complete. {@code web} is shared; the pure three must
   * do without it.
   */
  private static final Map<String, Set<String>> DESIGN =
      Map.ofEntries(
          Map.entry("web", Set.of()),
          Map.entry("acoustics", Set.of()),
          Map.entry("statistics", Set.of()),
          Map.entry("tolerance", Set.of("acoustics", "statistics")),
          Map.entry("access", Set.of("web")),
          Map.entry("ledger", Set.of("web")),
          Map.entry("captures", Set.of("acoustics", "web")),
          Map.entry("print", Set.of("acoustics", "tolerance", "web")),
          Map.entry("products", Set.of("acoustics", "tolerance", "access", "ledger", "web")),
          Map.entry(
              "stations",
              Set.of(
                  "acoustics",
                  "statistics",
                  "tolerance",
                  "captures",
                  "products",
                  "access",
                  "ledger",
                  "web")),
          Map.entry(
              "inspections",
              Set.of(
                  "acoustics",
                  "statistics",
                  "tolerance",
                  "captures",
                  "products",
                  "stations",
                  "access",
                  "ledger",
                  "web")),
          Map.entry(
              "batches",
              Set.of(
                  "acoustics",
                  "statistics",
                  "tolerance",
                  "products",
                  "stations",
                  "inspections",
                  "access",
                  "print",
                  "web")),
          Map.entry("pairing", Set.of("tolerance", "products", "inspections", "access", "web")),
          Map.entry(
              "certificates",
              Set.of("products", "stations", "inspections", "access", "ledger", "print", "web")),
          Map.entry(
              "traceability",
              Set.of(
                  "acoustics",
                  "statistics",
                  "tolerance",
                  "access",
                  "ledger",
                  "captures",
                  "print",
                  "products",
                  "stations",
                  "inspections",
                  "batches",
                  "pairing",
                  "certificates",
                  "web")));

  private static final ApplicationModules MODULES =
      ApplicationModules.of(EvenpairApplication.class);

  @Test
  void everyModuleUsesOnlyWhatItMay() {
    MODULES.verify();
  }

  @Test
  void modulesAndWhatTheyMayUseAreTheDesigns() throws ClassNotFoundException {
    Map<String, Set<String>> declared = new TreeMap<>();
    for (String module :
        MODULES.stream().map(module -> module.getIdentifier().toString()).toList()) {
      ApplicationModule declaration =
          Class.forName("evenpair." + module + ".package-info")
              .getPackage()
              .getAnnotation(ApplicationModule.class);
      assertThat(declaration).as("package-info of %s", module).isNotNull();
      declared.put(module, new TreeSet<>(List.of(declaration.allowedDependencies())));
    }
    assertThat(declared).isEqualTo(new TreeMap<>(DESIGN));
  }

  @Test
  void aLowerModuleThatNamesAnUpperOneIsFoundWithBothNames() {
    ApplicationModules broken =
        ApplicationModules.of("violations.modules", (ImportOption) location -> true);
    assertThatThrownBy(broken::verify)
        .isInstanceOf(Violations.class)
        .hasMessageContaining("lower")
        .hasMessageContaining("upper")
        .hasMessageContaining("violations.modules.lower.Judge")
        .hasMessageContaining("violations.modules.upper.Record");
  }
}
