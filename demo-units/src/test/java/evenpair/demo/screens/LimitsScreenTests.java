package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/**
 * The limits workbench. What is approved here is approved in the tuning {@code lively}, on which no
 * other test looks.
 */
@BrowserTest
class LimitsScreenTests {
  private static final String PLAIN = "#/limits/sedge-2/plain?batch=" + RunningService.BATCH;
  private static final String LIVELY = "#/limits/sedge-2/lively?batch=" + RunningService.BATCH;
  private static final String MATCH = "[data-edge='mid:match:']";
  private static final String CONFIRMED = "document.querySelector('.confirmation.confirmed')";

  private static String predicted(int passed) {
    return "document.querySelector('.yield-share.predicted')?.dataset.passed === '" + passed + "'";
  }

  @Test
  void beginsWithTheActiveSetWhichGivesEveryRecordedVerdictAgain(Screen screen) {
    screen.open(PLAIN).until(CONFIRMED);

    screen.shows(".sides", "Recorded");
    screen.shows(".flips", "every unit keeps its recorded verdict");
    screen.until("document.querySelectorAll('.limit-room canvas').length === 2");
    assertThat(screen.at(".check-shares tbody tr.bad").count())
        .as("the dead tweeter fails some check")
        .isPositive();
  }

  @Test
  void movesAnEdgeByTheArrowKeysAndTheNumbersFollow(Screen screen) {
    screen.open(PLAIN).until(CONFIRMED);
    String before = screen.at(".yield-share.predicted").getAttribute("data-passed");

    screen.at(MATCH).focus();
    for (int step = 0; step < 9; step++) {
      screen.press("ArrowDown");
    }

    // 0.1 dB between left and right no real pair keeps over the whole mid range
    screen.until("document.querySelector(\"" + MATCH + "\").value === '0.1'");
    screen.until(predicted(0));
    screen.until(CONFIRMED);
    screen.shows(".flips", before + " would fail that passed");
    screen.shows(".flip-list", "Left and right differ");
    screen.press("Escape");
    screen.until("document.activeElement === document.body");
  }

  @Test
  void dragsAnEdgeWithTheMouse(Screen screen) {
    screen.open(PLAIN).until(CONFIRMED);
    screen.at(".limit-room.match").scrollIntoViewIfNeeded();
    var box = screen.at(".limit-room.match .u-over").boundingBox();
    double dbHeight = box.height / 12; // match limits up to 4.5 dB are shown over ±6 dB
    double x = box.x + box.width * 0.55; // some 900 Hz, in the mid range
    double middle = box.y + box.height / 2;

    screen.page().mouse().move(x, middle - dbHeight);
    screen.page().mouse().down();
    screen.page().mouse().move(x, middle - 2 * dbHeight);
    screen.page().mouse().up();

    screen.until("Math.abs(Number(document.querySelector(\"" + MATCH + "\").value) - 2) <= 0.2");
    screen.until("document.querySelector(\"" + MATCH + "\").classList.contains('chosen')");
  }

  @Test
  void comparesTwoSetsSideBySide(Screen screen) {
    screen.open(PLAIN).until(CONFIRMED);
    screen.at(".keep-b").click();
    screen.at(MATCH).fill("0.1");
    screen.press("Enter");

    screen.until(predicted(0));
    screen.shows(".sides thead", "B");
    screen.shows(".set-head", "kept as B");
    screen.until("document.querySelectorAll('.sides tbody tr:first-child td').length === 3");
  }

  @Test
  void saysHowManyUnitsAPromiseNeeds(Screen screen) {
    screen.open(PLAIN).until(CONFIRMED);
    screen.at("#proposal-of").selectOption("passed");
    screen.at("#proposal-confidence").fill("50");
    screen.at(".proposal button[type=submit]").click();

    // 1 − 0.98^n ≥ 0.5 from n = 35 on (ln 0.5/ln 0.98 = 34.3)
    screen.shows(".proposal-result", "35 units in the second half, 70 in all");
    screen.shows(".proposal-result .promise", "needs 35 units");
  }

  @Test
  void pricesRiskAndScrap(Screen screen) {
    screen.open(PLAIN).until(CONFIRMED);
    screen.at("#money-scrap").fill("40");
    screen.at("#money-escape").fill("200");
    screen.at("#money-u").fill("0.15");
    screen.press("Tab");

    screen.shows(".money-result", "With escapes");
    screen.until("document.querySelectorAll('.tightness svg').length === 2");
  }

  @Test
  void draftsASetThatAnotherEngineerApproves(Screen screen) {
    screen.open(LIVELY).until(CONFIRMED);
    screen.at("[data-edge='bass:match:']").fill("1.4");
    screen.press("Enter");
    screen.at(".save-draft").click();
    screen.shows(".drafted", "Another engineer can approve it");
    screen.until("document.querySelector('tr[data-state=draft]')");
    screen.shows(
        ".difference-words",
        "The match limit in bass lowered from 1.5 dB to 1.4 dB, 20 Hz–200 Hz.");

    screen.expectComplaint("status of 409").at("tr[data-state=draft] [data-act=approve]").click();
    screen.at("#version-reason").fill("the batch sits well inside");
    screen.press("Enter");
    screen.shows(".version-form", "another engineer must");

    screen.asSecondEngineer().open(LIVELY).until("document.querySelector('tr[data-state=draft]')");
    screen.at("tr[data-state=draft] [data-act=approve]").click();
    screen.at("#version-reason").fill("the batch sits well inside");
    screen.press("Enter");
    screen.until("document.querySelector('tr[data-state=active]')?.dataset.version === '2'");
    screen.shows("tr[data-state=active]", "not yet in limits/");

    screen.at("tr[data-version='1'] [data-act=rollBack]").click();
    screen.at(".version-form button[type=submit]").click();
    screen.until("document.querySelector('tr[data-state=draft]')?.dataset.version === '3'");
  }

  @Test
  void namesEachProblemOfAYamlFileWithItsPlace(Screen screen) {
    screen.open(PLAIN).until(CONFIRMED);
    screen.expectComplaint("status of 422");
    byte[] wrong =
        "product: sedge-2\ntuning: plain\nversion: 7\nsmoothing: 1/5 octave\n"
            .getBytes(StandardCharsets.UTF_8);

    screen.at("#yaml-file").setInputFiles(new FilePayload("plain.yaml", "application/yaml", wrong));

    screen.shows(".yaml-told", "plain.yaml cannot be taken");
    screen.shows(".yaml-problems", "Line 4");
  }
}
