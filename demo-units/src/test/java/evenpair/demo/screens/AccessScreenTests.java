package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import evenpair.demo.player.Crew;
import org.junit.jupiter.api.Test;

@BrowserTest
class AccessScreenTests {
  @Test
  void asksToSignInAndGoesOnToWhatWasAskedFor(Screen screen, RunningService service) {
    screen.asNobody().expectComplaint("status of 401").open("#/batch").shows("main h1", "Sign in");
    screen.hasFocus("#sign-in-name");
    screen.type(Crew.ENGINEER);
    screen.press("Tab");
    screen.type("not the password");
    screen.press("Enter");
    screen.shows(".sign-in-wrong", "do not belong together");
    screen.hasFocus("#sign-in-password");
    screen.type(service.crew().password(Crew.ENGINEER));
    screen.press("Enter");
    screen.shows("main", RunningService.BATCH);
    screen.shows(".who", Crew.ENGINEER);
  }

  @Test
  void showsEachOnlyWhatIsOfUseAndSignsOut(Screen screen) {
    screen.asOperator().open("#/bench").shows("nav.screens", "Bench");
    assertThat(screen.at("nav.screens a").filter(Screen.text("Batch")).count()).isZero();
    screen.open("#/people").shows("main h1", "Sign in");
    screen.shows(".sign-in", "administrators");
    screen.open("#/bench").at(".sign-out").click();
    screen.shows("main h1", "Sign in");
  }

  @Test
  void addsAPersonAndErasesTheName(Screen screen) {
    screen.asAdministrator().as(1280, 800, ColorScheme.LIGHT);
    screen.open("#/people/new").hasFocus("#person-name");
    screen.type("Walker of the people page");
    screen.at("#person-operator").check();
    screen.press("Enter");
    screen.shows(".people-side", "shown this once");
    screen.shows(".people-list", "Walker of the people page");
    screen.at(".erase").click();
    screen.shows(".erase", "Really erase Walker of the people page");
    screen.at(".erase").click();
    screen.shows(".people-side", "erased");
    assertThat(screen.at(".people-list").textContent()).doesNotContain("Walker of the people page");
  }

  @Test
  void makesAStationATokenAndLetsTheBrowserBelongToIt(Screen screen) {
    screen.asAdministrator().open("#/tokens").at("#station-name").fill("walk-page");
    screen.press("Enter");
    screen.shows("main h1", "Tokens of walk-page");
    screen.hasFocus("#token-name");
    screen.type("rig by the door");
    screen.press("Enter");
    screen.shows(".people-side", "shown this once");
    screen.at("#token-name").fill("this browser");
    screen.at(".person-form .button:not(.primary)").click();
    screen.shows(".who", "at walk-page");
    screen.at(".list button").first().click();
    screen.shows(".people-side", "revoked");
  }
}
