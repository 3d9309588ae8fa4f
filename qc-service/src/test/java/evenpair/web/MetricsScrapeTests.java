package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.EvenpairDatabaseTest;
import evenpair.access.TestCallers;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** The metrics as the plant's monitoring reads them. */
@EvenpairDatabaseTest(
    properties = {
      "management.prometheus.metrics.export.enabled=true",
      "evenpair.metrics.interval=200ms",
      "evenpair.metrics.token=" + MetricsScrapeTests.TOKEN
    })
class MetricsScrapeTests {
  static final String TOKEN = "8yN4-for-tests-only-0123456789";

  @Autowired private MockMvc mvc;

  private String scrape() throws Exception {
    return mvc.perform(
            get(MetricsScrape.PATH).header("Authorization", "Bearer " + MetricsScrapeTests.TOKEN))
        .andExpect(status().isOk())
        .andReturn()
        .getResponse()
        .getContentAsString();
  }

  @Test
  void readsTheServicesStateWithTheTokenInPrometheusOwnWords() throws Exception {
    String metrics = scrape();
    assertThat(metrics)
        .contains(
            "evenpair_database_up 1.0",
            "evenpair_ledger_unsealed",
            "evenpair_ledger_one_role 0.0",
            "evenpair_disk_free_bytes",
            "evenpair_events_unfinished");
  }

  @Test
  void isClosedToAWrongTokenToNobodyAndToEngineersButNotToAdministrators() throws Exception {
    mvc.perform(get(MetricsScrape.PATH).header("Authorization", "Bearer wrong-" + TOKEN))
        .andExpect(status().isUnauthorized());
    mvc.perform(get(MetricsScrape.PATH).header(TestCallers.PERSON, TestCallers.NOBODY))
        .andExpect(status().isUnauthorized());
    mvc.perform(get(MetricsScrape.PATH).header(TestCallers.ROLES, "engineer"))
        .andExpect(status().isForbidden());
    mvc.perform(get(MetricsScrape.PATH).header(TestCallers.ROLES, "administrator"))
        .andExpect(status().isOk());
  }

  @Test
  void theTokenOpensNothingElse() throws Exception {
    mvc.perform(get("/api/stations").header("Authorization", "Bearer " + TOKEN))
        .andExpect(status().isUnauthorized());
  }

  @Test
  void refusesToStartWithATokenThatCanBeGuessed() {
    assertThatThrownBy(() -> new MetricsScrape("secret"))
        .isInstanceOf(StartRefused.class)
        .hasMessageContaining("6 characters");
  }
}
