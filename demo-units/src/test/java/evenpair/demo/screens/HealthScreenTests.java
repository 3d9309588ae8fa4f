package evenpair.demo.screens;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import org.junit.jupiter.api.Test;

/** The plant on one page, and pages that keep up while the line goes on. */
@BrowserTest
class HealthScreenTests {
  /** Of this class alone, so that what other tests measure moves nothing here. */
  private static final String STATION = "bench-health";

  private static final String CARD = ".health-card[aria-label='" + STATION + "']";

  /** Good pairs of the demo batch that no other test plays. */
  private static final int LIVE_UNIT = 12;

  @Test
  void showsWhatEachStationFoundLastAndHowTheServiceIs(Screen screen) {
    screen.open("#/health").shows(".health-card[aria-label='bench-1']", "first pass");
    assertThat(screen.at(".health-card[aria-label='bench-1'] .last-verdicts a").first())
        .isVisible();
    screen.shows(".health-service", "answers in");
    screen.shows(".health-service", "free of");
    screen.shows(".health-head .live", "live");
  }

  @Test
  void saysWhatABenchHoldsAsSoonAsItIsToldAndLeavesTheFocusWhereItIs(
      Screen screen, RunningService service) {
    service.send("PUT", "/api/stations/" + STATION, "{}");
    screen.open("#/health").shows(CARD, "never made");
    screen.shows(".health-head .live", "live");
    screen.at(CARD + " a.row-link").focus();
    service.send(
        "PUT",
        "/api/stations/" + STATION + "/held",
        "{\"count\": 3, \"oldestAt\": \"2026-01-05T07:00:00Z\"}");
    screen.shows(CARD, "3 held");
    screen.hasFocus(CARD + " a.row-link");
  }

  @Test
  void namesNobodyToAnOperator(Screen screen) {
    screen.asOperator().open("#/health").shows(".health-card[aria-label='bench-1']", "attempts in");
    assertThat(screen.at(".health-card details")).hasCount(0);
  }

  @Test
  void aBatchTakesInANewUnitUnderTheReadersHands(Screen screen, RunningService service) {
    String serial = RunningService.unit(LIVE_UNIT);
    screen
        .open("#/batch/" + RunningService.BATCH + "?product=sedge-2&tuning=plain")
        .shows(".unit-list", RunningService.BAD_UNIT);
    screen.shows(".batch-head .live", "live");
    String row = ".unit-list li:has-text('" + RunningService.BAD_UNIT + "') button";
    screen.at(row).first().focus();
    screen.evaluate("() => { scrollTo(0, 150); window.kept = document.activeElement }");
    Object before = screen.evaluate("() => scrollY");
    service.measure(LIVE_UNIT);
    screen.shows(".unit-list", serial);
    screen.until("document.activeElement === window.kept && window.kept.isConnected");
    org.assertj.core.api.Assertions.assertThat(screen.evaluate("() => scrollY")).isEqualTo(before);
  }
}
