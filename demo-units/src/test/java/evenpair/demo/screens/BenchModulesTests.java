package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pure modules of the Bench and its outbox, run in the browser from the files that are served. */
@BrowserTest
@OnePage
class BenchModulesTests {
  private static final String PLAN =
      "{product: 'sedge-2', name: 'Sedge 2', pattern: 'SG2-\\\\d{6}', tunings: ['plain', 'warm']}";
  private static final String SCAN = "{type: 'scan', serial: 'SG2-000001'}";
  private static final String NEW = history("[]");
  private static final String ENTER = "{type: 'enter'}";
  private static final String ESCAPE = "{type: 'escape'}";
  private static final String CAPTURED = "{type: 'captured', key: 'k'}";
  private static final String HELD =
      "{type: 'waiting', key: 'k', notice: {key: 'away'}, flawed: false}";

  private Screen screen;

  @BeforeEach
  void open(Screen given) {
    screen = given;
    screen.openOnce("#/batch");
  }

  private Object call(String module, String call) {
    return screen.evaluate(
        "async () => { const m = await import('/js/" + module + "'); return " + call + " }");
  }

  private static String history(String inspections) {
    return "{type: 'history', serial: 'SG2-000001', away: false, heldAt: null, inspections: "
        + inspections
        + "}";
  }

  private static String inspection(String tuning, String state, String verdict, String more) {
    return "{product: 'sedge-2', tuning: '%s', state: '%s', verdict: %s, occasion: 'production', batch: 'B', startedAt: '2026-01-01T00:00:00Z', closedAt: '2026-01-01T00:00:00Z', seatings: {valid: 1, wanted: 1, tries: 1, allowed: 3}%s}"
        .formatted(tuning, state, verdict == null ? "null" : "'" + verdict + "'", more);
  }

  private static String answer(String inspection) {
    return "{type: 'answered', key: 'k', inspection: " + inspection + "}";
  }

  /**
   * @return step, outcome, what comes then, the tuning that Enter measures, and the notice's key
   */
  private String after(String... events) {
    return (String)
        call(
            "bench/flow.js",
            "(s => [s.step, s.outcome, s.then, s.serial && m.attemptOf(s).tuning, s.notice?.key].join(' '))"
                + "(["
                + String.join(", ", events)
                + "].reduce((s, e) => m.next(s, e, "
                + PLAN
                + "), m.begin()))");
  }

  @Nested
  class TheFlow {
    @Test
    void goesFromTheScanToTheSweepAndTheVerdict() {
      assertThat(after(SCAN)).isEqualTo("looking  next-unit plain ");
      assertThat(after(SCAN, NEW)).isEqualTo("mount  next-unit plain ");
      assertThat(after(SCAN, NEW, ENTER)).isEqualTo("sweeping  next-unit plain ");
      assertThat(after(SCAN, NEW, ENTER, CAPTURED)).isEqualTo("sending  next-unit plain ");
      assertThat(
              after(SCAN, NEW, ENTER, CAPTURED, answer(inspection("plain", "closed", "FAIL", ""))))
          .isEqualTo("verdict FAIL next-unit plain ");
    }

    @Test
    void asksForTheNextTuningAfterAPassAndForTheNextUnitAfterTheLast() {
      String plain = answer(inspection("plain", "closed", "PASS", ""));
      String warm = answer(inspection("warm", "closed", "PASS", ""));
      assertThat(after(SCAN, NEW, ENTER, CAPTURED, plain)).isEqualTo("verdict PASS tuning warm ");
      assertThat(after(SCAN, NEW, ENTER, CAPTURED, plain, ENTER, CAPTURED, warm))
          .isEqualTo("verdict PASS next-unit warm ");
    }

    @ParameterizedTest
    @CsvSource({
      "RESEAT, reseat, reseat",
      "INVALID, reseat, mend",
      "VALID, another-seating, seating"
    })
    void measuresTheSamePairAgainWhileItsInspectionIsOpen(String last, String next, String then) {
      String open =
          inspection("plain", "open", null, ", lastAttempt: '" + last + "', next: '" + next + "'");
      assertThat(after(SCAN, NEW, ENTER, CAPTURED, answer(open)))
          .isEqualTo("verdict " + last + " " + then + " plain ");
      assertThat(after(SCAN, NEW, ENTER, CAPTURED, answer(open), ENTER))
          .isEqualTo("sweeping  " + then + " plain ");
    }

    @Test
    void goesOnWithoutAVerdictAndTakesItWhenItComesWhileThePairIsStillThere() {
      assertThat(after(SCAN, NEW, ENTER, CAPTURED, HELD))
          .isEqualTo("verdict HELD tuning warm away");
      assertThat(
              after(
                  SCAN,
                  NEW,
                  ENTER,
                  CAPTURED,
                  HELD,
                  answer(inspection("plain", "closed", "PASS", ""))))
          .isEqualTo("verdict PASS tuning warm ");
      assertThat(
              after(
                  SCAN,
                  NEW,
                  ENTER,
                  CAPTURED,
                  HELD,
                  ENTER,
                  answer(inspection("plain", "closed", "FAIL", ""))))
          .isEqualTo("sweeping  tuning warm ");
    }

    @Test
    void aCaptureThatTheBrowserFoundUnusableIsMeasuredAgain() {
      assertThat(after(SCAN, NEW, ENTER, CAPTURED, HELD.replace("false", "true"), ENTER))
          .isEqualTo("sweeping  mend plain ");
    }

    @Test
    void aScannerBurstWhileAVerdictIsShownStartsTheNextUnit() {
      assertThat(
              after(
                  SCAN,
                  NEW,
                  ENTER,
                  CAPTURED,
                  answer(inspection("plain", "closed", "FAIL", "")),
                  "{type: 'scan', serial: 'SG2-000002'}"))
          .isEqualTo("looking  next-unit plain ");
    }

    @Test
    void nothingIsScannedIntoASweep() {
      assertThat(after(SCAN, NEW, ENTER, "{type: 'scan', serial: 'SG2-000002'}"))
          .startsWith("sweeping");
    }

    @Test
    void escapeStopsTheSweepFirstAndPutsTheUnitAsideThen() {
      assertThat(after(SCAN, NEW, ENTER, ESCAPE))
          .isEqualTo("mount  next-unit plain screen.bench.aborted");
      assertThat(after(SCAN, NEW, ENTER, ESCAPE, ESCAPE)).startsWith("serial");
    }

    @Test
    void anAnswerForAUnitThatHasLeftChangesNothing() {
      String late = answer(inspection("plain", "closed", "FAIL", "")).replace("'k'", "'other'");
      assertThat(after(SCAN, NEW, ENTER, CAPTURED, late)).startsWith("sending");
    }
  }

  @Nested
  class WhatIsKnownBefore {
    @Test
    void aWrongSerialIsSaidBeforeAnythingIsMeasured() {
      assertThat(after("{type: 'scan', serial: 'RD1-000001'}"))
          .startsWith("serial")
          .endsWith("screen.bench.wrongSerial");
    }

    @Test
    void aUnitThatWasJudgedIsOfferedTheOtherOccasions() {
      String failed = history("[" + inspection("plain", "closed", "FAIL", "") + "]");
      assertThat(after(SCAN, failed)).startsWith("repeated");
      Object occasion =
          call(
              "bench/flow.js",
              "["
                  + SCAN
                  + ", "
                  + failed
                  + ", {type: 'arrow', by: 1}, "
                  + ENTER
                  + "].reduce((s, e) => m.next(s, e, "
                  + PLAN
                  + "), m.begin()).occasion");
      assertThat(occasion).isEqualTo("audit");
    }

    @Test
    void aUnitThatPassedOneOfTwoTuningsGoesOnWithTheOther() {
      assertThat(after(SCAN, history("[" + inspection("plain", "closed", "PASS", "") + "]")))
          .isEqualTo("mount  next-unit warm screen.bench.partly");
    }

    @Test
    void anOpenInspectionGoesOnAtItsNextSeating() {
      Object seating =
          call(
              "bench/flow.js",
              "m.attemptOf(["
                  + SCAN
                  + ", "
                  + history("[" + inspection("plain", "open", null, "") + "]")
                  + "].reduce((s, e) => m.next(s, e, "
                  + PLAN
                  + "), m.begin())).seating");
      assertThat(seating).isEqualTo(2);
    }

    @Test
    void aUnitOfAnotherProductIsNotMeasured() {
      String other = inspection("plain", "closed", "PASS", "").replace("sedge-2", "reed-1");
      assertThat(after(SCAN, history("[" + other + "]"))).endsWith("screen.bench.otherProduct");
    }

    @Test
    void withoutTheServiceTheSeatingIsLeftToTheService() {
      Object seating =
          call(
              "bench/flow.js",
              "m.attemptOf(["
                  + SCAN
                  + ", "
                  + NEW.replace("away: false", "away: true")
                  + "].reduce((s, e) => m.next(s, e, "
                  + PLAN
                  + "), m.begin())).seating");
      assertThat(seating).isEqualTo(0);
    }

    @ParameterizedTest
    @CsvSource({
      "SG2-004217, SG2-\\\\d{6}, true",
      "SG2-004217X, SG2-\\\\d{6}, false",
      "anything, '', true",
      "anything, '(', true"
    })
    void aPatternIsForTheWholeSerial(String serial, String pattern, boolean fits) {
      assertThat(call("bench/history.js", "m.fitsPattern('" + serial + "', '" + pattern + "')"))
          .isEqualTo(fits);
    }

    @ParameterizedTest
    @CsvSource({"SG2-\\\\d{6}, SG2-000000", "(A|B)\\\\d, (A|B)\\d"})
    void aPatternIsShownAsAnExampleWhereItIsSimple(String pattern, String example) {
      String shown = (String) call("bench/history.js", "m.patternExample('" + pattern + "')");
      assertThat(shown).isEqualTo(example);
    }
  }

  @Nested
  class TheOutbox {
    @ParameterizedTest
    @CsvSource({
      "201, '', 0, taken",
      "0, '', 0, later",
      "401, '', 0, sign-in",
      "408, '', 0, later",
      "409, /problems/changed-meanwhile, 0, later",
      "409, /problems/already-judged, 0, refused",
      "422, /problems/serial-pattern, 0, refused",
      "429, '', 0, later",
      "500, '', 4, later",
      "500, '', 5, refused",
      "503, '', 9, later",
      "507, '', 9, later"
    })
    void knowsWhatBecomesOfACapture(int status, String type, int failures, String fate) {
      assertThat(
              call(
                  "outbox/policy.js", "m.fateOf(" + status + ", '" + type + "', " + failures + ")"))
          .isEqualTo(fate);
    }

    @Test
    void waitsTwiceAsLongAfterEachTryAndHalfAMinuteAtMost() {
      // A quarter more or less by chance: 0.5 is the middle.
      assertThat(call("outbox/policy.js", "[1, 2, 3, 20].map(n => m.waitAfter(n, 0.5))"))
          .isEqualTo(List.of(500, 1000, 2000, 30000));
      assertThat(call("outbox/policy.js", "[m.waitAfter(1, 0), m.waitAfter(1, 1)]"))
          .isEqualTo(List.of(375, 625));
    }

    @Test
    void stopsBeforeTheBrowserIsFull() {
      String room = "m.roomFor({quota: 100e6, usage: %s}, %s)";
      assertThat(call("outbox/policy.js", room.formatted("83e6", "1e6"))).isEqualTo(true);
      assertThat(call("outbox/policy.js", room.formatted("85e6", "1e6"))).isEqualTo(false);
      assertThat(call("outbox/policy.js", room.formatted("83e6", "5e6"))).isEqualTo(false);
      assertThat(call("outbox/policy.js", "m.roomFor(null, 1e6)")).isEqualTo(true);
    }

    @Test
    void aUnitMustComeBackWhileItsInspectionIsOpenAndNothingOfItWaits() {
      String open = inspection("plain", "open", null, ", serial: 'A'");
      String waiting = "[{attempt: {product: 'sedge-2', serial: '%s', tuning: 'plain'}}]";
      assertThat(call("outbox/policy.js", "m.mustComeBack(" + open + ", [])")).isEqualTo(true);
      assertThat(
              call(
                  "outbox/policy.js",
                  "m.mustComeBack(" + open + ", " + waiting.formatted("A") + ")"))
          .isEqualTo(false);
      assertThat(
              call(
                  "outbox/policy.js",
                  "m.mustComeBack(" + open + ", " + waiting.formatted("B") + ")"))
          .isEqualTo(true);
      assertThat(
              call(
                  "outbox/policy.js",
                  "m.mustComeBack(" + inspection("plain", "closed", "PASS", "") + ", [])"))
          .isEqualTo(false);
    }
  }

  @Nested
  class FilesOfOtherRigs {
    /** Two frames of two channels: +1/2, −1/2, then −1, 0; by hand in 16 and 24 bit. */
    @ParameterizedTest
    @CsvSource({"16, '0,64, 0,192, 0,128, 0,0'", "24, '0,0,64, 0,0,192, 0,0,128, 0,0,0'"})
    void areReadInTheirUsualFormats(int bits, String bytes) {
      String file =
          """
          (() => {
            const data = [%2$s], bits = %1$d, file = new ArrayBuffer(44 + data.length), v = new DataView(file)
            const put = (at, text) => [...text].forEach((c, i) => v.setUint8(at + i, c.charCodeAt(0)))
            put(0, 'RIFF'); v.setUint32(4, 36 + data.length, true); put(8, 'WAVEfmt '); v.setUint32(16, 16, true)
            v.setUint16(20, 1, true); v.setUint16(22, 2, true); v.setUint32(24, 48000, true); v.setUint32(28, 48000 * bits / 4, true)
            v.setUint16(32, bits / 4, true); v.setUint16(34, bits, true); put(36, 'data'); v.setUint32(40, data.length, true)
            data.forEach((b, i) => v.setUint8(44 + i, b))
            return file
          })()"""
              .formatted(bits, bytes);
      assertThat(
              call(
                  "bench/wav-file.js",
                  "(w => [w.rateHz, ...w.channels.map(c => [...c])])(m.readWav(" + file + "))"))
          .isEqualTo(List.of(48000, List.of(0.5, -1), List.of(-0.5, 0)));
    }

    @Test
    void thatAreNoWavSayNothing() {
      assertThat(call("bench/wav-file.js", "m.readWav(new ArrayBuffer(60))")).isNull();
    }
  }

  @Nested
  class Cues {
    @Test
    void tellVerdictsApartByRhythmAlone() {
      Object rhythms =
          call(
              "bench/cues.js",
              "['PASS', 'FAIL', 'RESEAT', 'INVALID', 'HELD', 'REFUSED'].map(v => m.CUES[v].map(b => b.lasts > 0.15 ? '-' : '.').join(''))");
      assertThat((List<?>) rhythms).doesNotHaveDuplicates().hasSize(6);
    }
  }

  @Nested
  class FootSwitch {
    @ParameterizedTest
    @ValueSource(strings = {" ", "F13", "PageDown", "MediaPlayPause"})
    void mayBeAKeyThatTypesNothing(String key) {
      assertThat(call("bench/foot-switch.js", "m.mayBeFootSwitch('" + key + "')")).isEqualTo(true);
    }

    @ParameterizedTest
    @ValueSource(strings = {"a", "7", "Enter", "Escape", "ArrowUp", "Tab", "Shift"})
    void isNoKeyThatTypesOrMeansSomethingElse(String key) {
      assertThat(call("bench/foot-switch.js", "m.mayBeFootSwitch('" + key + "')")).isEqualTo(false);
    }
  }

  @Nested
  class Language {
    @ParameterizedTest
    @CsvSource({"'', zh-CN, zh", "'', de-DE zh-Hans, zh", "'', de-DE, en", "en, zh-CN, en"})
    void isTheChosenOneElseTheBrowsersElseEnglish(String chosen, String wanted, String language) {
      assertThat(call("language.js", "m.pick('" + chosen + "', '" + wanted + "'.split(' '))"))
          .isEqualTo(language);
    }
  }

  @Nested
  class TheServicesClock {
    @Test
    void isFollowedWhereTheBenchsOwnIsWrong() {
      // The header has whole seconds, hence one of them in doubt, and one for the call itself.
      Object ahead =
          call(
              "service-clock.js",
              "(m.noteClock(new Response('', {headers: {Date: new Date(Date.now() + 600000).toUTCString()}})), (m.serviceNow() - Date.now()) / 1000)");
      assertThat(((Number) ahead).doubleValue()).isCloseTo(600, within(2.0));
      call(
          "service-clock.js",
          "m.noteClock(new Response('', {headers: {Date: new Date().toUTCString()}}))");
      Object off = call("service-clock.js", "(m.serviceNow() - Date.now()) / 1000");
      assertThat(((Number) off).doubleValue()).isCloseTo(0, within(2.0));
    }
  }
}
