package evenpair.demo;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairApplication;
import evenpair.access.Accounts;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.player.Crew;
import evenpair.demo.player.Player;
import evenpair.demo.player.Summary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * The demo as a user starts it, on a few pairs: the real service with its own database, real
 * captures over HTTP.
 */
class DemoLineTests {
  /**
   * A good pair, then: USB frame noise, buzzing driver, never seals, clipped capture, leaky seat,
   * weak bass.
   */
  private static final DemoBatch SEDGE = DemoBatch.sedge().only(1, 2, 6, 9, 11, 16, 26);

  /** Low sensitivity. */
  private static final DemoBatch REED = DemoBatch.reed().only(3);

  @TempDir static Path data;

  private static ConfigurableApplicationContext service;
  private static Summary first;
  private static String printed;

  @BeforeAll
  static void playOnce() {
    service =
        SpringApplication.run(
            EvenpairApplication.class,
            "--server.port=0",
            "--evenpair.data=" + data.resolve("plant"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    first = player(out).play(List.of(SEDGE, REED));
    printed = out.toString(StandardCharsets.UTF_8);
  }

  @AfterAll
  static void stop() {
    if (service != null) {
      service.close();
    }
  }

  private static URI base() {
    return URI.create(
        "http://localhost:" + service.getEnvironment().getRequiredProperty("local.server.port"));
  }

  private static Crew crew() {
    return Crew.hire(service.getBean(Accounts.class), base(), data.resolve("truth"));
  }

  private static Player player(ByteArrayOutputStream out) {
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    return new Player(crew(), data.resolve("truth"), Clock.systemUTC(), print);
  }

  private static String get(String path) {
    return new String(crew().person(Crew.ENGINEER).bytes(path), StandardCharsets.UTF_8);
  }

  @Nested
  class AFirstRun {
    @Test
    void findsEveryFaultAndRefusesNoGoodUnit() {
      assertThat(first.surprises()).as(printed).isEmpty();
      assertThat(first.faultsFound()).isEqualTo(7);
      assertThat(first.goodUnits()).isEqualTo(1);
      assertThat(first.goodRefused()).isZero();
    }

    @Test
    void namesTheFaultInTheFirstReason() {
      assertThat(printed)
          .containsPattern(
              "SG2-004202 +FAIL +PASS +FAIL +FAIL +FAIL +.*allowed 40.0 dB\\(A\\).*USB frames")
          .containsPattern("SG2-004206 +FAIL +FAIL .*Left earpiece buzzes or rattles .*−50.0 dB")
          .containsPattern("SG2-004226 +FAIL +FAIL .*Left and right differ .* in the bass region")
          .containsPattern("RD1-000303 +FAIL .*Right earpiece is .* too quiet");
    }

    @Test
    void measuresAPairAgainWhoseCaptureCouldNotBeJudged() {
      assertThat(printed).containsPattern("SG2-004211 +PASS +PASS \\*.*clipped");
    }

    @Test
    void writesTheTruthBesideEachUnit() throws IOException {
      Path unit = data.resolve("truth/SW-2647/SG2-004216");

      assertThat(Files.readString(unit.resolve("truth.json")))
          .contains("\"leaky seat\"", "\"right\"");
      assertThat(unit.resolve("plain-1.json")).exists();
      assertThat(Files.readAllLines(data.resolve("truth/SW-2647/truth.csv")))
          .hasSize(1 + SEDGE.units().size());
    }

    @Test
    void mountsAgainWhatLeaksAndFailsWhatNeverSeals() throws Exception {
      assertThat(printed)
          .containsPattern("leaky seat +1 of +1 RESEAT, then passed, as they should")
          .containsPattern("SG2-004216 +PASS +PASS \\*");
      assertThat(get("/api/units/SG2-004209")).contains("\"seal\"");
      assertThat(get("/api/inspections?serial=SG2-004209&tuning=plain")).contains("\"tries\":3");
    }

    @Test
    void provesItsBenchesWithAReferencePairAndAGaugeStudy() {
      assertThat(printed)
          .contains("own noise measured; verified by REF-1; gauge study of 3 pairs")
          .contains("verified by REF-2");
    }
  }

  @Nested
  class ASecondRun {
    @Test
    void goesOnWithWhatIsThereAndComesToTheSame() throws Exception {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      String before = get("/api/units/SG2-004211");

      Summary second = player(out).play(List.of(SEDGE, REED));

      assertThat(second).isEqualTo(first);
      assertThat(out.toString(StandardCharsets.UTF_8))
          .contains("bench-1 (IEC 60318-4): ready, nothing to do")
          .containsPattern("SG2-004211 +PASS +\\(judged before\\)");
      assertThat(get("/api/units/SG2-004211")).isEqualTo(before);
    }
  }

  @Nested
  class ABrokenLine {
    @Test
    void isReportedByTheLaunchersExitCode() {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);

      int code =
          DemoLauncher.play(
              service.getBean(Accounts.class),
              URI.create("http://localhost:1"),
              data.resolve("none"),
              Duration.ofMillis(10),
              print,
              4);

      assertThat(code).isEqualTo(1);
      assertThat(out.toString(StandardCharsets.UTF_8))
          .contains("The demo line stopped", "http://localhost:1");
    }
  }
}
