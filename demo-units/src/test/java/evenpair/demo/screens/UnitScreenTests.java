package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

@BrowserTest
class UnitScreenTests {
  @Test
  void showsEveryInspectionOfAUnitWithItsWordAndShape(Screen screen) {
    screen.open("#/unit/" + RunningService.BAD_UNIT).shows(".unit-word", "FAIL");
    screen.shows(".history", "plain");
    screen.shows(".history", "FAIL");
    screen.until("document.querySelector('.history li svg[data-shape=FAIL]') !== null");
    screen.shows(".record-reasons", "Right earpiece");
  }

  @Test
  void plotsThePairAndTheDifferenceBelow(Screen screen) {
    screen.open("#/unit/" + RunningService.GOOD_UNIT).shows(".plot-note", "Hatched: outside");
    screen.until("document.querySelectorAll('.unit-plot canvas').length === 2");
  }

  @Test
  void walksThroughTheHistoryByArrows(Screen screen) {
    screen.open("#/unit/" + RunningService.GOOD_UNIT).shows(".history", "plain");
    screen.until("document.querySelector('.history li:first-child [aria-current=true]')");
    screen.at(".unit-head h1").click();
    screen.press("ArrowDown");
    screen.until("document.querySelector('.history li:nth-child(2) [aria-current=true]')");
    screen.shows(".record .facts-list", "bench-");
  }

  @Test
  void handsOutTheOriginalCaptures(Screen screen) throws IOException {
    screen.open("#/unit/" + RunningService.GOOD_UNIT).shows(".attempts", "Left");
    Download download =
        screen.page().waitForDownload(() -> screen.at(".download.left").first().click());
    byte[] bytes = Files.readAllBytes(download.path());
    assertThat(new String(Arrays.copyOf(bytes, 4), StandardCharsets.US_ASCII)).isEqualTo("RIFF");
  }

  @Test
  void opensTheCertificateOfAPassedInspection(Screen screen) {
    screen.open("#/unit/" + RunningService.GOOD_UNIT).shows(".record-word", "PASS");
    screen
        .page()
        .waitForResponse(
            answer ->
                answer.url().endsWith("/certificate")
                    && answer.status() == 200
                    && "application/pdf".equals(answer.headerValue("content-type")),
            () -> screen.at(".record .paper-button").click());
  }

  @Test
  void saysKindlyWhyAFailedUnitHasNoCertificate(Screen screen) {
    screen
        .expectComplaint("status of 409")
        .open("#/unit/" + RunningService.BAD_UNIT)
        .shows(".unit-word", "FAIL");
    screen.at(".unit-head .paper-button").click();
    screen.until("document.querySelector('.unit-head .paper-why').textContent.length > 30");
  }

  @Test
  void teachesWhatASerialNumberIsFor(Screen screen) {
    screen
        .expectComplaint("status of 404")
        .open("#/unit/SG2-999999")
        .shows(".state-page", "SG2-999999");
    screen.at("#unit-serial").fill(RunningService.GOOD_UNIT);
    screen.at("#unit-serial").press("Enter");
    screen.shows(".unit-head h1", RunningService.GOOD_UNIT);
  }
}
