package evenpair.demo.screens;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.RequestOptions;
import evenpair.demo.player.LineClient;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/**
 * The service is killed in the middle of a batch, the page is loaded again, the browser is killed
 * too: what was measured meanwhile arrives exactly once and in order. Nothing is calibrated at this
 * bench, so that every answer is INVALID and every pair has to be measured again: said at once
 * while the service is there, and of those that have left the bench once it is back.
 */
@BrowserTest
class KilledServiceTests {
  private static final String WORD = "[data-testid=verdict]";
  private static final double PATIENCE_MS = 60_000;

  @TempDir(cleanup = CleanupMode.NEVER)
  Path profile;

  private BrowserContext browser;
  private Page page;

  @Test
  void losesNothingAndSendsInOrder(Chromium chromium) throws Exception {
    try (KillableService service = new KillableService()) {
      open(chromium, service);
      enrol(service);
      page.reload();
      shows("#product", "Sedge 2");
      until("navigator.serviceWorker.controller !== null");
      page.reload(); // from now on every page comes through the worker
      shows("#product", "Sedge 2");
      beginTheShift();
      measure(service, 1);
      shows(WORD, "INVALID");
      page.keyboard().press("Escape");

      service.kill();
      measure(service, 2);
      shows(WORD, "Held");

      page.reload();
      shows("[data-testid=held]", "not judged yet: 1");
      shows(".shift-line", "Sedge 2");
      measure(service, 3);
      shows(WORD, "Held");
      shows("[data-testid=held]", "not judged yet: 2");

      killTheBrowser();
      open(chromium, service);
      shows("[data-testid=held]", "not judged yet: 2");
      shows("#product", "Sedge 2");
      if (page.locator("#batch").isVisible()) {
        beginTheShift();
      }
      measure(service, 4);
      shows(WORD, "Held");
      shows("[data-testid=held]", "not judged yet: 3");

      service.start();
      enrol(service); // a killed browser forgets cookies of the last half minute, and nothing else
      page.reload();
      shows("[data-testid=again]", "Measure again: 4");
      assertThat(page.locator("[data-testid=held]"))
          .hasCount(0, new LocatorAssertions.HasCountOptions().setTimeout(PATIENCE_MS));
      assertThat(arrived(service)).containsExactly(line(1), line(2), line(3), line(4));
      browser.close();
    } finally {
      delete(profile);
    }
  }

  /** Serial and number of attempts of every inspection, the oldest first. */
  private static List<String> arrived(KillableService service) {
    LineClient station = LineClient.ofStation(service.address(), service.token());
    JsonNode items =
        station
            .get("/api/inspections?station=" + ServiceProcess.STATION + "&order=oldest")
            .path("items");
    List<String> found = new ArrayList<>();
    for (JsonNode item : items) {
      JsonNode whole = station.get("/api/inspections/" + item.path("id").asString());
      found.add(item.path("serial").asString() + " " + whole.path("attempts").size());
    }
    return found;
  }

  private static String line(int place) {
    return KillableService.serial(place) + " 1";
  }

  /** As a bench does after it was switched on; its browser belongs to the station. */
  private void open(Chromium chromium, KillableService service) {
    browser = chromium.keeping(profile);
    page = browser.pages().get(0);
    page.onFileChooser(chooser -> {});
    page.setDefaultTimeout(PATIENCE_MS);
    page.navigate(service.address() + "/#/bench/" + ServiceProcess.STATION);
  }

  private void enrol(KillableService service) {
    APIResponse enrolled =
        browser
            .request()
            .post(
                service.address() + "/api/stations/" + ServiceProcess.STATION + "/enrolment",
                RequestOptions.create()
                    .setHeader("Authorization", "Bearer " + service.token())
                    .setData(Map.of("name", "bench browser")));
    assertThat(enrolled.status()).as(enrolled.text()).isEqualTo(200);
  }

  private void beginTheShift() {
    page.locator("#batch").fill("SW-2647");
    page.locator("#operator").fill("op-11");
    page.locator("#product").selectOption("sedge-2");
    page.locator("#tuning").selectOption("plain");
    page.locator("#tuning").press("Enter");
    shows(".shift-line", "SW-2647");
  }

  private void measure(KillableService service, int place) {
    page.locator("#serial").fill(KillableService.serial(place));
    page.locator("#serial").press("Enter");
    shows(WORD, "Mount");
    page.locator("#left-file").setInputFiles(service.capture(place, "left"));
    page.locator("#right-file").setInputFiles(service.capture(place, "right"));
    page.keyboard().press("Enter");
    shows(".verdict-about", KillableService.serial(place));
  }

  /** All of its processes at once, known by the folder that this test made for them. */
  private void killTheBrowser() {
    String folder = profile.toString();
    List<ProcessHandle> processes =
        ProcessHandle.allProcesses()
            .filter(each -> each.info().commandLine().orElse("").contains(folder))
            .toList();
    assertThat(processes).isNotEmpty();
    processes.forEach(ProcessHandle::destroyForcibly);
    processes.forEach(each -> each.onExit().join());
  }

  private void shows(String selector, String text) {
    assertThat(page.locator(selector).first())
        .containsText(text, new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE_MS));
  }

  private void until(String expression) {
    long end = System.nanoTime() + (long) (PATIENCE_MS * 1e6);
    while (!Boolean.TRUE.equals(page.evaluate("() => Boolean(" + expression + ")"))) {
      assertThat(System.nanoTime()).as(expression).isLessThan(end);
      page.waitForTimeout(50);
    }
  }

  /** The browser may still be writing there when it has gone. */
  private static void delete(Path folder) throws java.io.IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(java.io.File::delete);
    }
  }
}
