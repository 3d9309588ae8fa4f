package evenpair.demo.screens;

import org.junit.jupiter.api.Test;

@BrowserTest
class SealScreenTests {
  @Test
  void walksTheSealByTheKeyboardAndShowsTheHeadToKeep(Screen screen) {
    screen.open("#/seal").shows("h1", "Does the record hold");
    screen.hasFocus(".seal-check button");
    screen.press("Enter");
    screen.shows(".seal-word h2", "The seal holds");
    screen.shows(".seal-facts", "Capture files read again");
    String head = screen.at(".seal-head-now").textContent();
    screen.at("#seal-head").fill(head.substring(0, head.indexOf(':') + 17));
    screen.at("#seal-head").press("Enter");
    screen.shows(".seal-word h2", "The seal holds");
  }

  @Test
  void saysThatBlocksAreGoneWhichSomebodyHasOnPaper(Screen screen) {
    screen.open("#/seal").shows("h1", "Does the record hold");
    screen.at("#seal-head").fill("999999:0123456789abcdef");
    screen.at("#seal-head").press("Enter");
    screen.shows(".seal-word h2", "The seal is broken");
    screen.shows(".seal-word", "block 999999 was printed and is not in the database");
  }

  @Test
  void saysWhatAHeadLooksLike(Screen screen) {
    screen.expectComplaint("status of 400").open("#/seal").shows("h1", "Does the record hold");
    screen.at("#seal-head").fill("twelve");
    screen.at("#seal-head").press("Enter");
    screen.shows(".seal-result", "a block's number, a colon");
  }

  @Test
  void judgesAUnitAgainAndListsTheRun(Screen screen) {
    screen.open("#/seal").shows(".again h2", "Judge stored captures again");
    screen.at("#again-serial").fill(RunningService.spareUnit(1));
    screen.at("#again-serial").press("Enter");
    screen.shows(".again-table tbody", "asked for");
  }
}
