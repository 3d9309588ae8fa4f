package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What holds on every screen: room, hit areas, contrast, the policy. */
@BrowserTest
class LooksTests {
  private static final String BATCH =
      "#/batch/" + RunningService.BATCH + "?product=sedge-2&tuning=plain";
  private static final String UNIT = "#/unit/" + RunningService.BAD_UNIT;

  @ParameterizedTest
  @CsvSource({"1280, 800", "1024, 768", "800, 1280"})
  void nothingReachesBeyondTheWindow(int width, int height, Screen screen) {
    screen.as(width, height, ColorScheme.DARK);
    for (Map.Entry<String, String> place : places().entrySet()) {
      screen.open(place.getKey()).at(place.getValue()).first().waitFor();
      assertThat(screen.evaluate("document.documentElement.scrollWidth <= innerWidth"))
          .as(place.getKey())
          .isEqualTo(true);
    }
  }

  @Test
  void everyControlIsLargeEnoughForGloves(Screen screen) {
    for (Map.Entry<String, String> place : places().entrySet()) {
      screen.open(place.getKey()).at(place.getValue()).first().waitFor();
      // 44 CSS px (WCAG 2.2, 2.5.5); half a pixel for rounding. The words of a sentence may be
      // links of its own height.
      Object small =
          screen.evaluate(
              """
          () => [...document.querySelectorAll('button, select, summary, input:not([type=file]), nav a, a.choice, a.row-link, a.download, a.paper')]
            .filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 43.5)
            .map(e => e.outerHTML.slice(0, 80))""");
      assertThat((List<?>) small).as(place.getKey()).isEmpty();
    }
  }

  /** WCAG 2.2, 1.4.3: 4.5 to 1 for text, by its formula of relative luminance. */
  @ParameterizedTest
  @EnumSource(
      value = ColorScheme.class,
      names = {"LIGHT", "DARK"})
  void textKeepsItsContrast(ColorScheme scheme, Screen screen) {
    screen.as(1280, 800, scheme).open("#/bench/bench-1").at(".verdict").waitFor();
    Object faint =
        screen.evaluate(
            """
        () => {
          const probe = document.createElement('i')
          document.body.append(probe)
          const luminance = (name) => {
            probe.className = ''
            probe.style.color = `var(--${name})`
            const rgb = getComputedStyle(probe).color.match(/[\\d.]+/g).slice(0, 3).map(c => c / 255)
              .map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
            return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]
          }
          const ratio = (a, b) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
          const grounds = ['ground', 'panel', 'plot']
          const inks = ['ink', 'quiet', 'left', 'right', 'difference', 'pass', 'fail', 'reseat', 'invalid', 'held']
          const pairs = grounds.flatMap(g => inks.map(i => [i, g]))
            .concat(['pass', 'fail', 'reseat', 'invalid', 'held'].flatMap(s => [[s, s + '-ground'], ['ink', s + '-ground']]), [['ink', 'button']])
          return pairs.map(([i, g]) => [i, g, ratio(luminance(i), luminance(g))]).filter(p => p[2] < 4.5).map(String)
        }""");
    assertThat((List<?>) faint).isEmpty();
  }

  @Test
  void theSwitchChangesTheGroundAndIsRemembered(Screen screen) {
    screen.open("#/bench/bench-1").at(".theme").click();
    screen.at(".theme").click();
    assertThat(screen.at("html").getAttribute("data-theme")).isEqualTo("dark");
    screen.open("").at(".verdict").waitFor();
    assertThat(screen.at("html").getAttribute("data-theme")).isEqualTo("dark");
  }

  @Test
  void theBrowserRefusesScriptsWrittenIntoThePage(Screen screen) {
    screen.expectComplaint("olicy").open("#/bench/bench-1").at(".verdict").waitFor();
    Object ran =
        screen.evaluate(
            """
        () => {
          const script = document.createElement('script')
          script.textContent = 'window.written = true'
          document.head.append(script)
          const styled = document.createElement('div')
          styled.setAttribute('style', 'width: 7px')
          document.body.append(styled)
          return [window.written === true, styled.style.width]
        }""");
    assertThat(ran).isEqualTo(List.of(false, ""));
  }

  private static Map<String, String> places() {
    return Map.of(
        "#/bench/bench-1",
        ".regions .margin",
        "#/batch",
        ".list",
        BATCH,
        ".cloud canvas",
        UNIT,
        ".facts-list",
        "#/station/bench-1",
        ".facts-list",
        "#/station/bench-1?part=gauge",
        ".steps",
        "#/golden/sedge-2/plain?batch=" + RunningService.BATCH,
        ".golden canvas");
  }
}
