package evenpair.demo;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairApplication;
import evenpair.access.Accounts;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.player.Crew;
import evenpair.demo.player.Player;
import evenpair.inspections.RecordedUnits;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.inspections.RecordedUnits.Which;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.ReasonKind;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ConfigurableApplicationContext;
import tools.jackson.databind.JsonNode;

/**
 * The demo, judged once more from what is stored: every verdict and every reason again. A unit of
 * every kind of reason and good ones in an ordinary run; the whole demo under the profile {@code
 * long-runs}.
 */
class ReplayTests {
  private static final boolean WHOLE = Boolean.getBoolean("evenpair.whole-demo");

  /**
   * Good; USB frame noise, buzzing driver, low sensitivity, never seals, swapped polarity, leaky
   * seat, mismatched pair, shifted crossover, distorted driver; good.
   */
  private static final int[] SEDGE = {1, 2, 6, 7, 9, 13, 16, 19, 24, 31, 40};

  /** Good, low sensitivity. */
  private static final int[] REED = {1, 3};

  @TempDir static Path data;

  private static ConfigurableApplicationContext service;
  private static Crew crew;

  @BeforeAll
  static void playTheWholeDemo() {
    service =
        SpringApplication.run(
            EvenpairApplication.class,
            "--server.port=0",
            "--evenpair.data=" + data.resolve("plant"));
    URI base =
        URI.create(
            "http://localhost:"
                + service.getEnvironment().getRequiredProperty("local.server.port"));
    crew = Crew.hire(service.getBean(Accounts.class), base, data.resolve("demo"));
    PrintStream quiet = new PrintStream(OutputStream.nullOutputStream());
    new Player(crew, data.resolve("demo"), Clock.systemUTC(), quiet)
        .play(
            WHOLE
                ? List.of(DemoBatch.sedge(), DemoBatch.reed())
                : List.of(DemoBatch.sedge().only(SEDGE), DemoBatch.reed().only(REED)));
  }

  @AfterAll
  static void stop() {
    if (service != null) {
      service.close();
    }
  }

  private record Part(String product, String tuning, String batch) {
    Which all() {
      return new Which(product, tuning, Set.of(batch), Set.of(), null, null, null);
    }
  }

  static Stream<Part> parts() {
    return Stream.of(
        new Part("sedge-2", "plain", "SW-2647"),
        new Part("sedge-2", "level", "SW-2647"),
        new Part("sedge-2", "warm", "SW-2647"),
        new Part("sedge-2", "lively", "SW-2647"),
        new Part("reed-1", "plain", "SW-2651"));
  }

  @ParameterizedTest
  @MethodSource("parts")
  void theActiveSetGivesEveryRecordedVerdictAndReasonAgain(Part part) {
    RecordedUnits recorded = service.getBean(RecordedUnits.class);
    List<RecordedUnit> units = recorded.find(part.all());
    StoredLimitSet active =
        service
            .getBean(Products.class)
            .activeAt(part.product(), part.tuning(), Clock.systemUTC().instant())
            .orElseThrow();

    Map<UUID, Judgement> again = recorded.again(units);
    Map<UUID, Judgement> byActive = recorded.by(active, units, RecordedUnit::uncertainty);

    boolean sedge = "sedge-2".equals(part.product());
    assertThat(units).hasSize(sedge ? WHOLE ? 40 : SEDGE.length : WHOLE ? 6 : REED.length);
    for (RecordedUnit unit : units) {
      for (Judgement judgement :
          List.of(again.get(unit.inspection()), byActive.get(unit.inspection()))) {
        assertThat(judgement.verdict().name()).as(unit.serial()).isEqualTo(unit.verdict());
        assertThat(judgement.reasons()).as(unit.serial()).isEqualTo(unit.reasons());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("parts")
  void aTrialOfTheActiveSetFlipsNobodyAndSaysSo(Part part) {
    JsonNode trial =
        crew.person(Crew.ENGINEER)
            .post(
                "/api/batches/%s/trials?product=%s&tuning=%s"
                    .formatted(part.batch(), part.product(), part.tuning()),
                Map.of());

    assertThat(trial.path("flips").path("shown").size()).isZero();
    assertThat(trial.path("predicted").path("passed").intValue())
        .isEqualTo(trial.path("recorded").path("passed").intValue());
  }

  @Test
  void theDemoHoldsEveryKindOfReasonThatARecordCanEndWith() {
    // else the replay above would show little
    Set<ReasonKind> kinds = new TreeSet<>();
    RecordedUnits recorded = service.getBean(RecordedUnits.class);
    parts()
        .flatMap(part -> recorded.find(part.all()).stream())
        .flatMap(unit -> unit.reasons().stream())
        .forEach(reason -> kinds.add(reason.kind()));

    assertThat(kinds)
        .contains(
            ReasonKind.SEAL,
            ReasonKind.POLARITY,
            ReasonKind.THD,
            ReasonKind.HIGH_ORDER_DISTORTION,
            ReasonKind.IDLE_NOISE,
            ReasonKind.LEVEL,
            ReasonKind.WINDOW,
            ReasonKind.MATCH);
  }
}
