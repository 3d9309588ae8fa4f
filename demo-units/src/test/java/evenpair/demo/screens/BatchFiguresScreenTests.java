package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The panels below a batch's clouds; what a few units cannot tell is said. */
@BrowserTest
class BatchFiguresScreenTests {
  private static final String PLAIN =
      "#/batch/" + RunningService.BATCH + "?product=sedge-2&tuning=plain";

  @Test
  void sayWhatTooFewUnitsCannotTell(Screen screen) {
    screen.open(PLAIN).shows(".yield", "Final, after rework");
    screen.until("document.querySelectorAll('.figures').length === 4");
    for (String panel : new String[] {"capability", "charts", "components"}) {
      screen.at("." + panel + "-figures").scrollIntoViewIfNeeded();
      screen.shows("." + panel + "-figures .missing", "Too few units");
    }
  }

  @Test
  void explainHowTheyAreMeasured(Screen screen) {
    screen.open(PLAIN);
    screen.until("document.querySelectorAll('.figures').length === 4");
    screen.at(".capability-figures").scrollIntoViewIfNeeded();
    screen.shows(".capability-figures .missing", "Too few units");
    screen.at(".capability-figures .how summary").focus();
    screen.press("Enter");
    screen.shows(".capability-figures .how", "Bissell");
  }

  @Test
  void nameTheUnitsBehindAReason(Screen screen) {
    screen.open(PLAIN).shows(".reasons", "units");
    screen.at(".reason-units summary").first().focus();
    screen.press("Enter");
    assertThat(screen.at(".reason-units[open] a").first().textContent()).startsWith("SG2-");
    screen.at(".reason-units[open] a").first().focus();
    screen.press("Enter");
    screen.shows(".unit-head h1", "SG2-");
  }

  @Test
  void narrowThePageByStation(Screen screen) {
    screen.open(PLAIN + "&station=bench-1").shows(".facts", "units judged");
    assertThat(screen.at("#narrow-station").inputValue()).isEqualTo("bench-1");
    screen.expectComplaint("status of 422");
    screen.open(PLAIN + "&to=2001-01-01T00:00:00.000Z").shows(".state-page", "measured there and");
    screen.at(".narrowing button").focus();
    screen.press("Enter");
    screen.shows(".yield", "Final, after rework");
  }

  /** The shared service has too few units for a chart: one is drawn here from given numbers. */
  @Test
  void walkAlongAChartAndOpenAUnitByTheKeyboard(Screen screen) {
    screen.open("#/outside").shows("h1", "Somebody"); // a page that draws itself once
    screen.evaluate(
        """
        async () => {
          const { OrderChart } = await import("/js/batch/order-chart.js")
          const unit = (i) => ({ inspection: "i" + i, serial: "XX-" + i, verdict: "PASS" })
          const chart = new OrderChart({ label: "trial", say: (v) => v.toFixed(2), onOpen: (u) => { document.title = "opened " + u.serial },
            panels: [{ title: "value", lines: [[0, 1, 9, null]], centre: 0.5, lower: [-1, -1, -1, -1], upper: [2, 2, 2, 2] }],
            points: [0, 1, 2, 3].map((i) => ({ at: "2026-11-2" + (3 + i) + "T12:00:00Z", units: [unit(i)] })),
            signals: [{ panel: 0, text: "Beyond", points: [2] }] })
          document.querySelector("main").replaceChildren(chart.element)
          chart.element.focus()
        }""");
    screen.shows(".order-readout", "Arrow keys");
    screen.press("ArrowRight");
    screen.shows(".order-readout", "XX-0");
    screen.press("ArrowRight");
    screen.press("ArrowRight");
    screen.shows(".order-readout", "XX-2");
    screen.shows(".order-readout", "Beyond");
    assertThat(screen.at(".order-out").count()).isEqualTo(1);
    screen.press("Enter");
    screen.until("document.title === 'opened XX-2'");
  }

  @Test
  void takeRoundNumbersForAnAxis(Screen screen) {
    screen.open("#/batch");

    assertThat(
            screen.evaluate(
                "async () => (await import('/js/batch/order-chart.js')).ticks(-0.23, 0.71).join()"))
        .isEqualTo("0,0.5");
    assertThat(
            screen.evaluate(
                "async () => { const m = await import('/js/batch/narrowing.js'); return"
                    + " m.dayOf(m.startOf('2026-11-24', 1), -1) }"))
        .isEqualTo("2026-11-24");
  }
}
