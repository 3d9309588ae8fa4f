package evenpair.demo.screens;

import org.junit.jupiter.api.Test;

@BrowserTest
class GoldenScreenTests {
  private static final String PLAIN = "#/golden/sedge-2/plain?batch=" + RunningService.BATCH;

  @Test
  void showsTheCloudOfTheUnitsThatPassed(Screen screen) {
    screen.open(PLAIN).shows(".golden-facts", "curves: ");
    screen.until("document.querySelectorAll('.golden .cloud-room canvas').length === 1");
    screen.shows(".member-list", RunningService.GOOD_UNIT);
    screen.shows(".comparison", "Against the golden response in use");
    screen.until("document.querySelector('.comparison li') !== null");
  }

  @Test
  void walksThroughTheUnitsAndSaysWhyOneCannotBeSpared(Screen screen) {
    screen
        .expectComplaint("status of 422")
        .open(PLAIN)
        .shows(".member-list", RunningService.GOOD_UNIT);
    // other tests may have measured further good units of the batch
    int units = screen.at(".member-list li").count();
    for (int left = units - 1; left >= 2; left--) {
      screen.press("ArrowDown");
      screen.hasFocus(".member-list .marked button");
      screen.press("Enter");
      if (left > 2) {
        screen.shows(".golden-facts", "Units: " + left);
      }
    }
    screen.shows(".golden-body .state-page", "units");
  }

  @Test
  void savesADraftAndComparesItWithTheVersionInUse(Screen screen) {
    screen.open(PLAIN).shows(".golden-facts", "Units: ");
    screen.at(".golden-side .steps button[type=submit]").click();
    screen.shows(".steps-result", "stored as a draft");
    screen.shows(".golden-versions .list", "draft");
    screen.shows(".golden-versions .comparison", "version 2 less version 1");
  }
}
