package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.products.Products.StoredLimitSet;
import evenpair.web.Ids;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.env.MockEnvironment;
import org.springframework.transaction.support.TransactionTemplate;

/** What units were judged by stays readable when limits/ no longer has it. */
class VanishedLimitsTests extends ProductsOverHttp {
  @Autowired VersionStore store;
  @Autowired GoldenDesk desk;
  @Autowired SignedVersions signed;
  @Autowired Ids ids;
  @Autowired TransactionTemplate transaction;

  private LimitsLoader restarted() {
    return new LimitsLoader(store, signed, ids, transaction, new MockEnvironment());
  }

  @Test
  void ofAProductAreFoundInTheDatabase() throws Exception {
    given("wren-1");
    StoredLimitSet judgedBy =
        new StoredProducts(store, desk, Clock.systemUTC())
            .limitSet("wren-1", "plain", 1)
            .orElseThrow();

    restarted().load(List.of());

    StoredProducts after = new StoredProducts(store, desk, Clock.systemUTC());
    assertThat(after.find("wren-1")).isPresent();
    assertThat(after.limitSet(judgedBy.id()).digest()).isEqualTo(judgedBy.digest());
    assertThat(after.limitSet(judgedBy.id()).golden().level()).isEqualTo(judgedBy.golden().level());
    assertThat(after.goldens("wren-1", Instant.now())).containsOnlyKeys("plain");
    mvc.perform(get(sets("wren-1") + "/1")).andExpect(status().isOk());
    mvc.perform(get(goldens("wren-1") + "/1")).andExpect(status().isOk());
  }

  @Test
  void ofATuningAreReadableAndGetNoNewVersion() throws Exception {
    LimitsFolder files = LimitsLoaderTests.folder("wren-2", 100, 1);
    String warm = Examples.judgeable("warm", 1).replace("product: sedge-2", "product: wren-2");
    files.files().put("warm.yaml", Examples.bytes(warm));
    loader.load(List.of(files));
    files.files().remove("warm.yaml");
    String plainOnly =
        Examples.PRODUCT
            .replace("product: sedge-2", "product: wren-2")
            .replaceAll("(?s)  - name: warm.*", "");
    files.files().put("product.yaml", Examples.bytes(plainOnly));

    restarted().load(List.of(files));

    String sets = "/api/products/wren-2/tunings/warm/limit-sets";
    mvc.perform(get(sets)).andExpect(jsonPath("$.items[0].version").value(1));
    mvc.perform(get(sets + "/1"))
        .andExpect(status().isOk())
        .andExpect(jsonPath("$.limitSet.tuning").value("warm"));
    mvc.perform(get("/api/products/wren-2/tunings/warm/golden-responses/1"))
        .andExpect(status().isOk())
        .andExpect(jsonPath("$.expectation").isEmpty());
    mvc.perform(
            post(sets)
                .param("author", "qe-1")
                .contentType("application/yaml")
                .content(warm.replace("version: 1", "version: 2")))
        .andExpect(status().isNotFound())
        .andExpect(jsonPath("$.type").value("/problems/unknown-tuning"));
  }
}
