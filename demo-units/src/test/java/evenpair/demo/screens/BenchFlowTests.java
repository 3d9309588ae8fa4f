package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A shift at the bench without a mouse. Units, batches and stations of its own. */
@BrowserTest
class BenchFlowTests {
  private static final String WORD = "[data-testid=verdict]";
  private static final String BATCH = "SW-2690";

  private Screen screen;
  private RunningService service;

  private void at(String station, String tuning, Screen given, RunningService running) {
    screen = given;
    service = running;
    screen.open("#/bench/" + station);
    BenchScreenTests.fillInTheShift(screen, BATCH, tuning);
  }

  private void scan(String serial) {
    screen.type(serial);
    screen.press("Enter");
  }

  private void choose(int place) {
    screen.at("#left-file").setInputFiles(service.capture(place, "left"));
    screen.at("#right-file").setInputFiles(service.capture(place, "right"));
  }

  /** Of a new unit, from the scan to the answer. */
  private void measure(String serial, int place) {
    scan(serial);
    screen.shows(WORD, "Mount");
    screen.shows(".verdict-about", serial);
    choose(place);
    screen.hasFocus("button[type=submit]");
    screen.press("Enter");
  }

  @Nested
  class OnePairAfterTheOther {
    @Test
    void leadsTheFocusThroughEveryStepAndBackToTheSerial(Screen given, RunningService running) {
      at("bench-2", "in turn", given, running);
      scan("SG2-007001");
      screen.shows(WORD, "Mount");
      screen.hasFocus(".capture.left");
      choose(1);
      screen.hasFocus("button[type=submit]");
      screen.press("Enter");
      screen.shows(WORD, "PASS");
      screen.shows(".verdict-next", "Now warm");
      screen.hasFocus(".capture.left");
      screen.press("Escape");
      screen.shows(WORD, "Scan a pair");
      screen.hasFocus("#serial");
      scan("SG2-007001");
      screen.shows(".verdict-reasons", "Passed before: plain");
      screen.hasFocus(".capture.left");
      screen.press("Escape");
      screen.at(".bench-plot").click();
      screen.hasFocus("#serial");
    }

    @Test
    void aScannerBurstWhileAVerdictIsShownStartsTheNextUnit(Screen given, RunningService running) {
      at("bench-2", "plain", given, running);
      measure("SG2-007002", 1);
      screen.shows(WORD, "PASS");
      screen.hasFocus("#serial");
      scan("SG2-007003");
      screen.shows(".verdict-about", "SG2-007003");
      screen.shows(WORD, "Mount");
    }

    @Test
    void aUnitThatWasJudgedIsMeasuredAgainOnlyForAReason(Screen given, RunningService running) {
      at("bench-2", "plain", given, running);
      measure("SG2-007004", 1);
      screen.shows(WORD, "PASS");
      scan("SG2-007004");
      screen.shows(WORD, "Again?");
      screen.shows(".verdict-reasons", "Judged PASS with plain");
      screen.hasFocus("#serial");
      screen.press("ArrowRight");
      screen.shows(".occasion[aria-current=true]", "Audit");
      screen.press("Enter");
      screen.shows(WORD, "Mount");
      screen.shows(".verdict-about", "audit");
      choose(3);
      screen.press("Enter");
      screen.shows(WORD, "FAIL");
      screen.shows(".verdict-about", "audit");
    }

    @Test
    void theFootSwitchIsAnEnterThatCanBeAnotherKey(Screen given, RunningService running) {
      at("bench-2", "plain", given, running);
      screen.type("SG2-007005");
      screen.press("Space");
      screen.shows(WORD, "Mount");
      screen.press("Escape");
      screen.at(".bench-tools button").last().click();
      screen.at("[data-testid=foot-switch]").click();
      screen.press("x");
      screen.shows(".foot-switch", "function key");
      screen.press("F10");
      screen.shows(".foot-switch", "F10");
      screen.press("Escape");
      screen.hasFocus("#serial");
      screen.type("SG2-007005");
      screen.press("F10");
      screen.shows(WORD, "Mount");
    }

    @Test
    void theCueIsMutedByAKeyAndStaysSo(Screen given, RunningService running) {
      at("bench-2", "plain", given, running);
      screen.evaluate(
          "() => { window.cues = []; document.addEventListener('evenpair-cue', e => window.cues.push(e.detail)) }");
      measure("SG2-007006", 1);
      screen.shows(WORD, "PASS");
      assertThat(screen.evaluate("() => window.cues.join(' ')")).isEqualTo("PASS");
      screen.press("Alt+m");
      screen.shows(".cue", "off");
      measure("SG2-007007", 2);
      screen.shows(WORD, "FAIL");
      assertThat(screen.evaluate("() => window.cues.join(' ')")).isEqualTo("PASS");
      screen.open("#/batch").open("#/bench/bench-2").shows(".cue", "off");
      screen.press("?");
      screen.shows("dialog.keys", "Alt + M");
    }

    @Test
    void oneFileMayHoldBothChannels(Screen given, RunningService running) {
      at("bench-2", "plain", given, running);
      screen.at("#files-both").click();
      assertThat(screen.at(".capture").count()).isEqualTo(1);
      scan("SG2-007008");
      screen.shows(WORD, "Mount");
      screen.hasFocus(".capture.both");
    }
  }

  @Nested
  class WhatTheServiceDoesNotTake {
    @Test
    void liesOnAShelfWhileTheQueueGoesOnAndCanBeCorrected(Screen given, RunningService running) {
      given.expectComplaint("ERR_INTERNET_DISCONNECTED").expectComplaint("status of 409");
      at("bench-2", "plain", given, running);
      measure("SG2-007010", 1);
      screen.shows(WORD, "PASS");
      // Another bench, which has not seen that unit, and cannot ask.
      screen.open("#/bench/bench-3").shows("#product", "Sedge 2");
      screen.shows(".live", "live");
      screen.hasFocus("#serial");
      screen.page().context().setOffline(true);
      measure("SG2-007010", 3);
      screen.shows(WORD, "Held");
      screen.shows(".verdict-about", "SG2-007010");
      measure("SG2-007011", 1);
      screen.shows("[data-testid=held]", "not judged yet: 2");
      screen.page().context().setOffline(false);
      screen.shows("[data-testid=shelf]", "Refused by the service: 1");
      screen.shows(WORD, "PASS");
      screen.shows(".verdict-about", "SG2-007011");
      screen.at("[data-testid=shelf]").click();
      screen.shows(".shelf-why", "was judged PASS");
      screen.at("#shelf-occasion").selectOption("rework");
      screen.at(".shelf-form button").click();
      screen.until("!document.querySelector('dialog.shelf')");
      screen.until("!document.querySelector('[data-testid=shelf]')");
      screen.shows(".recent", "SG2-007010");
    }

    @Test
    void isDiscardedOnlyAfterAskingOnceMore(Screen given, RunningService running) {
      given.expectComplaint("status of 4");
      at("flow-unknown", "plain", given, running);
      measure("SG2-007012", 1);
      screen.shows(WORD, "Not taken");
      screen.hasFocus("#serial");
      screen.at("[data-testid=shelf]").click();
      screen.shows(".shelf-why", "flow-unknown");
      screen.at(".shelf-tools button").last().click();
      screen.shows(".shelf-tools", "for good");
      screen.at(".shelf-tools button").last().click();
      screen.until("!document.querySelector('dialog.shelf')");
      screen.hasFocus("#serial");
    }
  }

  @Nested
  class ABrowserWithoutRoom {
    @Test
    void measuresNothingMoreAndSaysSo(Screen given, RunningService running) {
      given
          .page()
          .addInitScript(
              "StorageManager.prototype.estimate = () => Promise.resolve({quota: 20e6, usage: 19e6})");
      at("bench-2", "plain", given, running);
      measure("SG2-007013", 1);
      screen.shows(WORD, "Stop");
      screen.shows(".verdict-reasons", "no room left");
      assertThat(screen.at(".capture.chosen").count()).isEqualTo(2);
    }
  }

  @Nested
  class InChinese {
    @Test
    void speaksTheReadersLanguageAndRemembersTheSwitch(Screen given, RunningService running) {
      screen = given.inLanguage("zh-CN");
      service = running;
      screen.open("#/bench/bench-3").shows(".screens", "检测台");
      assertThat(screen.at("html").getAttribute("lang")).isEqualTo("zh-Hans");
      screen.shows("#product", "Sedge 2");
      screen.at("#batch").fill(BATCH);
      screen.at("#operator").fill("op-17");
      screen.at("#product").selectOption("sedge-2");
      screen.at("#tuning").selectOption("plain");
      screen.at("#tuning").press("Enter");
      scan("SG2-007020");
      screen.shows(WORD, "请装夹");
      choose(2);
      screen.press("Enter");
      screen.shows(WORD, "不合格");
      screen.shows(".verdict-reasons", "右耳机");
      screen.at(".language").click();
      screen.shows(".screens", "Bench");
      assertThat(screen.at("html").getAttribute("lang")).isEqualTo("en");
      screen.open("#/batch").shows(".screens", "Batch");
    }

    /** Capital letters or characters at least 12 % of the window's height. */
    @Test
    void theVerdictFitsItsPanel(Screen given, RunningService running) {
      screen = given.inLanguage("zh-CN").as(1024, 768, ColorScheme.DARK);
      screen.open("#/bench/bench-1").shows(".recent", "SG2-");
      Object inside =
          screen.evaluate(
              """
          () => {
            const word = document.querySelector('.verdict-word')
            word.textContent = '重新装夹'
            const range = document.createRange()
            range.selectNodeContents(word)
            const box = range.getBoundingClientRect(), panel = document.querySelector('.verdict').getBoundingClientRect()
            return box.right <= panel.right && parseFloat(getComputedStyle(word).fontSize) >= 0.12 * innerHeight
          }""");
      assertThat(inside).isEqualTo(true);
    }
  }
}
