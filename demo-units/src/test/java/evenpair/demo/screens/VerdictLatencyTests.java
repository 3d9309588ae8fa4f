package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * Not a test of behaviour: measures on this machine how long it takes from a capture that is
 * complete to the painted verdict, and prints it. Run by hand, with nothing else running.
 */
@BrowserTest
@EnabledIfSystemProperty(named = "verdict.latency.units", matches = "[1-9]\\d*")
class VerdictLatencyTests {
  private static final String WORD = "[data-testid=verdict]";

  /** The first ones find caches empty and code not yet compiled; a shift has hundreds. */
  private static final int WARM_UP = 5;

  @Test
  void printsMedianAndNinetyFifthPercentile(Screen screen, RunningService service) {
    int units = Integer.getInteger("verdict.latency.units");
    screen.open("#/bench/bench-2");
    BenchScreenTests.fillInTheShift(screen, "SW-2699", "plain");
    double[] millis = new double[units];
    for (int n = -WARM_UP; n < units; n++) {
      double taken = measure(screen, service, "SG2-%06d".formatted(800_000 + WARM_UP + n));
      if (n >= 0) {
        millis[n] = taken;
      }
    }
    Arrays.sort(millis);
    assertThat(millis[0]).isPositive();
    System.out.printf(
        "captured to painted, n = %d: median %.0f ms, 95 %% %.0f ms, longest %.0f ms%n",
        units, at(millis, 0.5), at(millis, 0.95), millis[units - 1]);
  }

  private static double measure(Screen screen, RunningService service, String serial) {
    screen.type(serial);
    screen.press("Enter");
    screen.shows(WORD, "Mount");
    screen.shows(".verdict-about", serial);
    screen.at("#left-file").setInputFiles(service.capture(1, "left"));
    screen.at("#right-file").setInputFiles(service.capture(1, "right"));
    screen.evaluate("() => performance.clearMarks()");
    screen.press("Enter");
    screen.shows(WORD, "PASS");
    screen.until("performance.getEntriesByName('evenpair-verdict-painted').length");
    return ((Number)
            screen.evaluate(
                "() => performance.getEntriesByName('evenpair-verdict-painted')[0].startTime"
                    + " - performance.getEntriesByName('evenpair-captured')[0].startTime"))
        .doubleValue();
  }

  /** The smallest value that at least this share of all does not exceed. */
  private static double at(double[] sorted, double share) {
    return sorted[(int) Math.ceil(share * sorted.length) - 1];
  }
}
