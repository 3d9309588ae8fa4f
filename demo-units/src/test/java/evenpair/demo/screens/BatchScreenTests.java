package evenpair.demo.screens;

import static evenpair.demo.screens.Screen.text;

import org.junit.jupiter.api.Test;

@BrowserTest
class BatchScreenTests {
  private static final String PLAIN =
      "#/batch/" + RunningService.BATCH + "?product=sedge-2&tuning=plain";

  @Test
  void listsTheBatchesAndOpensOneByTheKeyboard(Screen screen) {
    screen.expectComplaint("status of 422").open("#/batch").shows(".list", RunningService.BATCH);
    screen.link(RunningService.BATCH).focus();
    screen.press("Enter");
    screen.shows("main h1", RunningService.BATCH);
  }

  @Test
  void asksForTheTuningOfAMixedBatchAndTakesTheAnswer(Screen screen) {
    screen
        .expectComplaint("status of 422")
        .open("#/batch/" + RunningService.BATCH)
        .shows(".state-page", "more than one kind");
    screen.at(".choice").filter(text("plain")).click();
    screen.shows(".yield", "Yield");
    screen.shows(".chip[aria-current]", "plain");
  }

  @Test
  void saysTheYieldWithItsIntervalAndTheNumberOfUnits(Screen screen) {
    screen.open(PLAIN).shows(".yield-share", "%");
    screen.shows(".yield-words", "Wilson");
    screen.shows(".yield-words", "n = ");
    screen.shows(".counts", "failed");
  }

  @Test
  void ranksTheReasonsInWords(Screen screen) {
    screen.open(PLAIN).shows(".reasons", "earpiece");
    screen.until("document.querySelector('.reasons .bar-fill') !== null");
  }

  @Test
  void saysWhatTheLimitSetRisksOnceAsked(Screen screen) {
    screen.open(PLAIN).shows(".risks summary", "risks");
    screen.at(".risks summary").focus();
    screen.press("Enter");
    screen.shows(".risks table", "Producer's risk");
    screen.shows(".risks table", "mid, match");
    screen.shows(".risks", "JCGM 106");
  }

  @Test
  void drawsACloudForEachChannelAndOneForTheDifference(Screen screen) {
    screen.open(PLAIN).shows(".clouds", "Left − right");
    screen.until("document.querySelectorAll('.cloud canvas').length === 3");
    screen.shows(".cloud.left h3", "n = ");
  }

  @Test
  void opensAUnitOfTheListByArrowsAndEnter(Screen screen) {
    screen.open(PLAIN).shows(".unit-list", RunningService.BAD_UNIT);
    screen.press("ArrowDown");
    String serial = screen.at(".unit-list .marked .serial").textContent();
    screen.press("Enter");
    screen.shows(".unit-head h1", serial);
  }

  @Test
  void marksACurveWhenItIsClickedAndOpensItWhenClickedAgain(Screen screen) {
    screen.open(PLAIN);
    screen.until("document.querySelectorAll('.cloud canvas').length === 3");
    com.microsoft.playwright.options.BoundingBox over =
        screen.at(".cloud.left .u-over").boundingBox();
    double x = over.x + over.width / 2;
    double y = over.y + over.height / 2;
    screen.page().mouse().click(x, y);
    screen.shows(".unit-list .marked", "SG2-");
    String serial = screen.at(".unit-list .marked .serial").textContent();
    screen.page().mouse().click(x, y);
    screen.shows(".unit-head h1", serial);
  }
}
