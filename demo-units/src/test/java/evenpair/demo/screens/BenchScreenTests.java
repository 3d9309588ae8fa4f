package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.FileChooser;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@BrowserTest
class BenchScreenTests {
  private static final String WORD = "[data-testid=verdict]";

  @Test
  void asksForTheStationOnceAndRemembersIt(Screen screen) {
    screen.open("#/bench").shows("main h1", "Which bench");
    screen.press("Enter");
    screen.shows(".station h1", "bench-1");
    screen.open("").shows(".station h1", "bench-1");
  }

  @Test
  void judgesAPairByTheKeyboardAlone(Screen screen, RunningService service) {
    screen.open("#/bench/bench-2");
    fillInTheShift(screen, "plain");
    screen.type(RunningService.spareUnit(1));
    screen.press("Enter");
    screen.hasFocus(".capture.left");
    choose(screen, service.capture(1, "left"));
    screen.hasFocus(".capture.right");
    choose(screen, service.capture(1, "right"));
    screen.hasFocus("button[type=submit]");
    screen.press("Enter");
    screen.shows(WORD, "PASS");
    screen.shows(".verdict-about", RunningService.spareUnit(1));
    screen.hasFocus("#serial");
    screen.shows(".recent", RunningService.spareUnit(1));
    screen.until("document.querySelectorAll('.plot-room.response canvas').length === 1");
  }

  @Test
  void saysWhyAPairFailsAndMarksWhere(Screen screen, RunningService service) {
    screen.open("#/bench/bench-3");
    fillInTheShift(screen, "plain");
    send(screen, service, 2);
    screen.shows(WORD, "FAIL");
    screen.shows(".verdict-reasons", "Right earpiece");
    screen.shows(".verdict-reasons", "allowed");
    assertThat(screen.at(".verdict-shape svg").getAttribute("data-shape")).isEqualTo("FAIL");
    screen.until("document.querySelector('.regions .bad') !== null");
    assertThat(screen.at(".readout .wide dd").first().textContent()).contains("Hz");
  }

  @Test
  void showsWhatAnotherRigSendsAsItArrives(Screen screen, RunningService service) {
    screen.open("#/bench/bench-1").shows(".live", "live");
    screen.shows(".recent", "SG2-");
    service.measureTheLateUnit();
    screen.shows(".verdict-about", RunningService.LATE_UNIT);
    screen.shows(".recent-list li:first-child", RunningService.LATE_UNIT);
  }

  @Test
  void saysThatASerialIsWrongBeforeItIsMeasuredAndKeepsTheFiles(
      Screen screen, RunningService service) {
    screen.open("#/bench/bench-2");
    fillInTheShift(screen, "plain");
    screen.at("#left-file").setInputFiles(service.capture(3, "left"));
    screen.at("#right-file").setInputFiles(service.capture(3, "right"));
    screen.at("#serial").fill("XX-1");
    screen.at("#serial").press("Enter");
    screen.shows(WORD, "Stop");
    screen.shows(".verdict-reasons", "XX-1 is not a serial number of Sedge 2");
    assertThat(screen.at(".capture.chosen").count()).isEqualTo(2);
  }

  @Test
  void holdsWhatTheServiceCannotTakeAndSendsItByItself(Screen screen, RunningService service) {
    screen.expectComplaint("ERR_INTERNET_DISCONNECTED").open("#/bench/bench-2");
    fillInTheShift(screen, "plain");
    screen.at("#left-file").setInputFiles(service.capture(3, "left"));
    screen.at("#right-file").setInputFiles(service.capture(3, "right"));
    screen.at("#serial").fill(RunningService.spareUnit(3));
    screen.page().context().setOffline(true);
    screen.at("#serial").press("Enter");
    screen.shows(WORD, "Held");
    screen.shows("[data-testid=held]", "not judged yet: 1");
    screen.hasFocus("#serial");
    screen.page().context().setOffline(false);
    screen.shows(WORD, "FAIL");
    screen.shows(".verdict-about", RunningService.spareUnit(3));
  }

  @Test
  void movesThePlotsCursorAndTheListByArrows(Screen screen) {
    screen.open("#/bench/bench-1").shows(".recent-list li:nth-child(2)", "SG2-");
    screen.shows(".readout .wide dd >> nth=0", "Hz");
    screen.at("#serial").focus();
    String before = screen.at(".readout .wide dd").first().textContent();
    screen.press("ArrowRight");
    assertThat(screen.at(".readout .wide dd").first().textContent()).isNotEqualTo(before);
    screen.press("ArrowDown");
    assertThat(screen.at(".recent-list li:nth-child(2) button").getAttribute("aria-current"))
        .isEqualTo("true");
    screen.hasFocus("#serial");
  }

  /** What the bench measured last comes late, while the batch is being typed. */
  @Test
  void suggestsNoBatchUnderTheHandOfSomeoneWhoTypesOne(Screen screen) {
    List<Route> held = new ArrayList<>();
    screen.page().route("**/api/inspections?*", held::add);
    screen.open("#/bench/bench-1").shows("#product", "Sedge 2");
    screen.at("#batch").focus();
    screen.press("Control+A");
    held.forEach(Route::resume);
    screen.page().unroute("**/api/inspections?*");
    screen.shows(".recent-list", "SG2-");
    screen.type("SW-2648");
    assertThat(screen.at("#batch").inputValue()).isEqualTo("SW-2648");
  }

  @Test
  void showsTheKeysAndGoesBackToTheSerial(Screen screen) {
    screen.open("#/bench/bench-1");
    fillInTheShift(screen, "plain");
    screen.press("?");
    screen.shows("dialog.keys", "Keys");
    screen.press("Escape");
    assertThat(screen.at("dialog.keys").count()).isZero();
    screen.hasFocus("#serial");
  }

  @Test
  void teachesWhatToDoAtABenchThatHasMeasuredNothing(Screen screen) {
    screen.open("#/bench/bench-9").shows(WORD, "Scan a pair");
    screen.shows(".verdict-reasons", "Scan or type the serial number");
  }

  /** Capital letters at least 12 % of the window's height, and the whole word inside its panel. */
  @ParameterizedTest
  @CsvSource({"1280, 800", "1024, 768", "800, 1280"})
  void writesTheVerdictLargeEnoughForTwoMetres(int width, int height, Screen screen) {
    screen.as(width, height, ColorScheme.LIGHT).open("#/bench/bench-1").shows(WORD, "");
    screen.until(
        "document.querySelector('.verdict').dataset.state === 'fail'"
            + " || document.querySelector('.verdict').dataset.state === 'pass'");
    Object share =
        screen.evaluate(
            """
        () => {
          const word = document.querySelector('.verdict-word')
          const style = getComputedStyle(word)
          const ctx = document.createElement('canvas').getContext('2d')
          ctx.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`
          return ctx.measureText('E').actualBoundingBoxAscent / innerHeight
        }""");
    assertThat(((Number) share).doubleValue()).isGreaterThanOrEqualTo(0.12);
    for (String longest : new String[] {"INVALID", "RESEAT"}) {
      Object inside =
          screen.evaluate(
              """
          (text) => {
            const word = document.querySelector('.verdict-word')
            word.textContent = text
            const range = document.createRange()
            range.selectNodeContents(word)
            return range.getBoundingClientRect().right <= document.querySelector('.verdict').getBoundingClientRect().right
          }"""
                  .replace("(text)", "(text = '" + longest + "')"));
      assertThat(inside).as(longest).isEqualTo(true);
    }
  }

  /** What stays for the shift, typed and tabbed; Enter leads to the serial. */
  static void fillInTheShift(Screen screen, String tuning) {
    fillInTheShift(screen, "SW-2648", tuning);
  }

  static void fillInTheShift(Screen screen, String batch, String tuning) {
    screen.shows("#product", "Sedge 2");
    screen.hasFocus("#batch");
    screen.press("Control+A");
    screen.type(batch);
    screen.press("Tab");
    screen.type("op-17");
    screen.press("Tab");
    screen.type("Sedge 2");
    screen.press("Tab");
    screen.type(tuning);
    assertThat(screen.at("#product").inputValue()).isEqualTo("sedge-2");
    assertThat(screen.at("#tuning").inputValue()).isEqualTo(tuning.equals("in turn") ? "" : tuning);
    screen.press("Enter");
    screen.hasFocus("#serial");
    screen.shows(".shift-line", batch);
  }

  private static void choose(Screen screen, Path file) {
    FileChooser chooser = screen.page().waitForFileChooser(() -> screen.press("Enter"));
    chooser.setFiles(file);
  }

  private static void send(Screen screen, RunningService service, int place) {
    screen.at("#left-file").setInputFiles(service.capture(place, "left"));
    screen.at("#right-file").setInputFiles(service.capture(place, "right"));
    screen.at("#serial").fill(RunningService.spareUnit(place));
    screen.at("#serial").press("Enter");
  }
}
