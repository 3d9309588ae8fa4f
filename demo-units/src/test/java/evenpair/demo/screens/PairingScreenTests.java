package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.demo.player.Crew;
import org.junit.jupiter.api.Test;

/** Pairing, a unit among all others, and its story. */
@BrowserTest
class PairingScreenTests {
  private static final String UNIT = RunningService.GOOD_UNIT;

  /** Every unit of the batch in the plain tuning, proposed with the keyboard alone. */
  private static void propose(Screen screen) {
    screen.open("#/pairing?batch=" + RunningService.BATCH + "&product=sedge-2&tuning=plain");
    screen.shows(".pairing-form", "Product and tuning");
    screen.at("#pairing-which").selectOption("all");
    screen.at(".pairing-form button[type=submit]").focus();
    screen.press("Enter");
    screen.shows(".pairing-figures", "pairs gained");
  }

  @Test
  void proposesPairsAndDrawsTheMarkedOne(Screen screen) {
    propose(screen);
    screen.shows(".pair-list .marked", "SG2-");
    screen.until("document.querySelectorAll('.pairing-plot canvas').length === 2");
    screen.shows(".pair-facts", "Balance");
    screen.shows(".pairing-notes", "rework");
    String first = screen.at(".pair-list .marked .pair-serial").textContent();
    screen.press("ArrowDown");
    screen.until(
        "document.querySelector('.pair-list .marked .pair-serial').textContent !== '"
            + first
            + "'");
  }

  @Test
  void saysWhyAnEarpieceIsLeftOut(Screen screen) {
    propose(screen);
    screen.at(".pairing-others summary").first().focus();
    assertThat(screen.at(".pairing-others").textContent())
        .contains("may not be paired", RunningService.BAD_UNIT + ".R");
  }

  @Test
  void keepsProposalsAndNamesUnknownSerials(Screen screen) {
    propose(screen);
    screen.expectComplaint("status of 422");
    screen.open("#/pairing").shows(".pairing-start .list", "sedge-2");
    screen.at("#pairing-serials").fill("SG2-999998\nSG2-999999");
    screen.at(".pairing-form button[type=submit]").click();
    screen.shows(".pairing-answer", "SG2-999998, SG2-999999");
  }

  @Test
  void setsAUnitBesideAllOthers(Screen screen) {
    screen.open("#/across/" + UNIT + "?tuning=plain").shows(".across-head h1", UNIT);
    screen.shows(".across-answer", "left − right is");
    screen.until("document.querySelectorAll('.dot-plot canvas').length === 1");
    screen.shows(".measure-list [aria-current=true]", "worst");
    screen.shows(".like-lists", "Nearest shape");
    screen.at(".like-lists button").last().click();
    screen.shows(".like-lists table", "SG2-");
  }

  @Test
  void tellsAUnitsStoryFromMountingToCertificate(Screen screen) {
    screen.open("#/unit/" + UNIT);
    screen.shows(".story", "Mounted");
    screen.shows(".story", "limit set version");
    screen.shows(".story-certificate", "certificate can be printed");
    screen.shows(".story-attempt", Crew.OPERATOR);
  }

  @Test
  void namesNobodyToAnOperator(Screen screen) {
    Screen operator = screen.asOperator();
    operator.open("#/unit/" + UNIT).shows(".story-attempt", "By the operator.");
    assertThat(operator.at(".story").textContent()).doesNotContain(Crew.OPERATOR + ".");
  }
}
