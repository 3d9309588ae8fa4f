package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@BrowserTest
class StationScreenTests {
  @Test
  void saysAtAGlanceThatAPreparedStationIsReady(Screen screen) {
    screen.open("#/station/bench-1").shows(".state-word", "Ready");
    screen.until("document.querySelectorAll('.glance .card').length === 7");
    screen.shows(".card[data-part=left]", "until");
    screen.shows(".station-facts", "SC-7");
    screen.shows(".control", "full scale of the microphone");
  }

  @Test
  void walksThroughItsPartsByArrowsAndKeepsTheOneChosen(Screen screen) {
    screen.open("#/station/bench-1").at(".card[data-part=left]").focus();
    screen.press("ArrowRight");
    screen.press("ArrowRight");
    screen.hasFocus(".card[data-part=output]");
    screen.shows(".steps h2", "output");
    assertThat(screen.page().url()).contains("part=output");
  }

  @Test
  void leadsThroughACalibrationByTheKeyboardAndSaysWhatCameOfIt(
      Screen screen, RunningService service, @TempDir Path folder)
      throws IOException, InterruptedException {
    service.send("PUT", "/api/stations/steps-1", "{}");
    screen.open("#/station/steps-1?part=left").shows(".state-word", "Needs calibration");
    screen.at("#field-calibratorSerial").fill("SC-7");
    screen.press("Enter");
    screen.hasFocus("#field-earSimulatorSerial");
    screen.type("ES-7");
    screen.press("Enter");
    screen.hasFocus(".steps .capture");
    screen
        .page()
        .waitForFileChooser(() -> screen.press("Enter"))
        .setFiles(Tone.write(folder, 1000, 3, 0.07));
    screen.hasFocus("#field-operator");
    screen.type("op-17");
    screen.press("Enter");
    screen.shows(".steps-result", "Full scale is");
    screen.shows(".card[data-part=left]", "until");
  }

  @Test
  void saysWhyARecordingIsRefused(Screen screen, RunningService service, @TempDir Path folder)
      throws IOException, InterruptedException {
    service.send("PUT", "/api/stations/steps-2", "{}");
    screen.expectComplaint("status of 422").open("#/station/steps-2?part=right");
    screen.at("#field-calibratorSerial").fill("SC-7");
    screen.at("#field-earSimulatorSerial").fill("ES-8");
    screen.at("#field-operator").fill("op-17");
    screen.at("#field-tone").setInputFiles(Tone.write(folder, 250, 3, 0.07));
    screen.at(".steps button[type=submit]").click();
    screen.shows(".steps-result", "another frequency");
  }

  @Test
  void showsWhyAStationIsBlockedAndLetsAnEngineerClearIt(Screen screen, RunningService service)
      throws IOException, InterruptedException {
    service.send("PUT", "/api/stations/steps-3", "{}");
    service.send("POST", "/api/stations/steps-3/output-calibrations", reading(180));
    // 20·lg(300/180) = 4.4 dB, far beyond what a gain may move
    service.send("POST", "/api/stations/steps-3/output-calibrations", reading(300));
    screen.open("#/bench/steps-3").shows(".station-needs", "Output reads");
    screen.open("#/station/steps-3").shows(".state-word", "Blocked");
    screen.shows(".blocked", "Output reads");
    screen.at(".blocked .steps button[type=submit]").click();
    screen.shows(".state-word", "Needs calibration");
    assertThat(screen.at(".blocked").count()).isZero();
  }

  @Test
  void plansAGaugeStudyAndAsksForItsFirstMeasurement(Screen screen) {
    screen.open("#/station/bench-1?part=gauge").shows(".station-work .chips", "Sedge 2");
    screen.at(".station-work .chip").filter(Screen.text("warm")).click();
    screen.shows(".steps h2", "Plan");
    screen.at("#field-parts").fill("SG2-1, SG2-2");
    screen.at("#field-names").fill("op-17 op-18");
    screen.at("#field-operator").fill("eng-3");
    screen.press("Enter");
    screen.shows(".steps h2", "Measurement 1 of 12");
    screen.shows(".step-text", "op-17 mounts SG2-1, seating 1");
    screen.shows(".card[data-part=gauge]", "0 of 12");
  }

  private static String reading(int millivolts) {
    return """
        {"toneDbfs": -12, "frequencyHz": 1000, "readingMvRms": %d, "meterSerial": "VM-3", "operator": "op-17"}"""
        .formatted(millivolts);
  }
}
