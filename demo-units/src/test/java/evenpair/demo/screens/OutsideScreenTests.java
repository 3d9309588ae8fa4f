package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

@BrowserTest
class OutsideScreenTests {
  private static final String UNIT = "SG2-004201";

  /**
   * One side of the unit as recorded, as a reviewer would have it: another level, tabs, something
   * added in the treble.
   */
  private static FilePayload curve(Screen screen, String side, double trebleDb) {
    Object text =
        screen.evaluate(
            """
            async () => {
              const unit = await (await fetch('/api/units/%s')).json()
              const plain = unit.tunings.find((one) => one.tuning === 'plain')
              const curves = await (await fetch(`/api/inspections/${plain.inspection}/curves?smoothing=none`)).json()
              return curves.frequencyHz.map((hz, i) => {
                const db = curves.%s.levelDb[i]
                return `${hz}\\t${db - 14 + (hz > 6000 ? %s : 0)}`
              }).join('\\n')
            }"""
                .formatted(UNIT, side, trebleDb));
    return new FilePayload(
        "review-" + side + ".frd", "text/plain", text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static void choose(Screen screen, double trebleDb) {
    screen.open("#/outside/" + UNIT).shows("h1", UNIT);
    screen
        .at("#outside-files")
        .setInputFiles(
            new FilePayload[] {curve(screen, "left", trebleDb), curve(screen, "right", 0)});
    screen.until("document.querySelectorAll('.outside-files li').length === 2");
    assertThat(screen.at("#holds-1").inputValue()).isEqualTo("right");
    screen.at("#rig-tuning").selectOption("plain");
    screen.at("#rig-simulator").selectOption("IEC 60318-4");
    screen.at("#rig-uncertainty").fill("0.5");
    screen.at("#rig-levelled").selectOption("false");
  }

  @Test
  void saysInSentencesThatBothAgreeAndShowsBothDifferences(Screen screen) {
    choose(screen, 0);
    screen.at(".outside-actions .primary").click();
    screen.shows(".answer-word h2", "agree");
    screen.shows(".answer-table", "±");
    screen.until("document.querySelectorAll('.answer-room canvas').length === 1");
    screen.shows(".answer-readout", "ours");
  }

  @Test
  void saysWhereTheyDisagreeAndKeepsTheAnswer(Screen screen) {
    choose(screen, -9);
    screen.at("#source-name").fill("A reader of the trade press");
    screen.at(".outside-actions button:not(.primary)").click();
    screen.shows(".answer-word h2", "disagree in treble");
    screen.shows(".outside-kept", "A reader of the trade press");
    screen.shows(".dossiers", "Dossier");
  }

  @Test
  void namesTheFileThePlaceAndTheMend(Screen screen) {
    screen.expectComplaint("status of 422").open("#/outside/" + UNIT).shows("h1", UNIT);
    screen
        .at("#outside-files")
        .setInputFiles(
            new FilePayload(
                "average.txt", "text/plain", "20 80\n30 x\n".getBytes(StandardCharsets.UTF_8)));
    screen.at(".outside-actions .primary").click();
    screen.shows(".outside-problem", "line 2, column 2");
  }

  @Test
  void teachesWhatThePageIsForWithoutAUnit(Screen screen) {
    screen.open("#/outside").shows("h1", "Somebody found a mismatch");
  }
}
