package evenpair.batches;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.EvenpairDatabaseTest;
import evenpair.access.People;
import evenpair.access.TestCallers;
import evenpair.acoustics.Curve;
import evenpair.batches.GoldenJson.Build;
import evenpair.batches.GoldenJson.BuildRequest;
import evenpair.batches.GoldenJson.Comparison;
import evenpair.batches.GoldenJson.RegionDifference;
import evenpair.inspections.MeasuredCurves;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.products.GoldenResponses;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.MeasuredChannel;
import evenpair.tolerance.MeasuredPair;
import evenpair.web.Texts;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.support.TransactionTemplate;

/** With the demo's own products: what is built is stored by them and compared with theirs. */
@EvenpairDatabaseTest
class GoldenDraftTests {
  @Autowired private Products products;
  @Autowired private GoldenResponses goldens;
  @Autowired private GoldenComparisons comparisons;
  @Autowired private GoldenDrafts drafts;
  @Autowired private Texts texts;
  @Autowired private MockMvcTester mvc;
  @Autowired private People people;
  @Autowired private TransactionTemplate transaction;

  @BeforeEach
  void signIn() {
    TestCallers.signIn(transaction.execute(status -> people.refer("qe-golden")), "qe-golden");
  }

  @AfterEach
  void signOut() {
    TestCallers.signOut();
  }

  @Test
  void isStoredAndComparedOverHttp() {
    StoredLimitSet active = products.activeAt("reed-1", "plain", Instant.now()).orElseThrow();
    Curve raised = active.golden().level().plus(0.5);
    MeasuredChannel channel = new MeasuredChannel(raised, active.golden().phaseDeg());
    GoldenSelection selection = new GoldenSelection(new Line(active.id(), channel), products);

    Build build =
        new GoldenBuilder(goldens, selection, comparisons, drafts)
            .build(
                "reed-1",
                "plain",
                new BuildRequest(null, "SW-2700", null, true, "qe-golden", null),
                new GoldenWords(texts, Locale.ENGLISH));

    assertThat(build.saved().name()).isEqualTo(active.set().golden());
    String all = "/api/products/reed-1/tunings/plain/golden-responses/";
    assertThat(build.saved().href()).isEqualTo(all + build.saved().version());
    assertThat(mvc.get().uri(build.saved().href()))
        .hasStatusOk()
        .bodyJson()
        .extractingPath("$.state")
        .isEqualTo("draft");
    assertThat(mvc.get().uri(build.saved().href() + "/comparison?with=1"))
        .hasStatusOk()
        .bodyJson()
        .extractingPath("$.offsetDb")
        .isEqualTo(0.5);
    assertThat(mvc.get().uri(all + "77/comparison?with=1")).hasStatus(404);
  }

  @Test
  void ofADerivedTuningLiesWhereItsFiltersPutIt() {
    Curve warm = goldens.version("sedge-2", "warm", 1).response().level();

    Comparison found =
        comparisons
            .withExpected("sedge-2", "warm", warm, new GoldenWords(texts, Locale.ENGLISH))
            .orElseThrow();

    // the files were made by the same formula, written to 0.001 dB, from a plain one so written
    assertThat(found.regions()).isNotEmpty();
    for (RegionDifference region : found.regions()) {
      assertThat(region.largestDb()).isCloseTo(0, within(0.002));
    }
  }

  /** Three units that are all the same. */
  private record Line(UUID limitSet, MeasuredChannel channel) implements MeasuredCurves {
    @Override
    public List<MeasuredUnit> of(Collection<UUID> inspections) {
      return List.of();
    }

    @Override
    public List<MeasuredUnit> ofBatch(String batch, String product, String tuning) {
      return List.of(unit("A", 1), unit("B", 2), unit("C", 3));
    }

    private MeasuredUnit unit(String serial, long n) {
      return new MeasuredUnit(
          new UUID(1, n),
          serial,
          "SW-2700",
          "reed-1",
          "plain",
          "bench-1",
          "closed",
          "PASS",
          limitSet,
          Instant.EPOCH,
          new MeasuredPair(channel, channel));
    }
  }
}
