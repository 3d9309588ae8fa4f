package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TextTableTests {
  @TempDir Path root;

  private void write(String file, String json) throws IOException {
    Path path = root.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, json);
  }

  private TextTable table() {
    return new TextTable(root.toUri().toString());
  }

  @Nested
  class AnotherLanguage {
    @Test
    void saysInEnglishWhatItLacks() throws IOException {
      write("en/a.json", "{\"t\":\"Unit {x|word}\",\"word.left\":\"left\",\"u\":\"Only here\"}");
      write("zh/a.json", "{\"t\":\"产品 {x|word}\"}");
      TextTable table = table();
      assertThat(table.render(Locale.SIMPLIFIED_CHINESE, "t", Map.of("x", "left")))
          .isEqualTo("产品 left");
      assertThat(table.table(Locale.SIMPLIFIED_CHINESE)).containsEntry("u", "Only here");
    }
  }

  @Nested
  class Rendering {
    enum Side {
      LEFT_SIDE
    }

    private String render(String template, Object value) throws IOException {
      write(
          "en/a.json",
          "{\"t\":\"" + template + "\",\"word.left\":\"left\",\"word.left-side\":\"left side\"}");
      return table().render(Locale.ENGLISH, "t", Map.of("x", value));
    }

    @Test
    void fillsAPlaceholderAsItIs() throws IOException {
      assertThat(render("Unit {x}.", "SG2-004217")).isEqualTo("Unit SG2-004217.");
    }

    /** Halves go away from zero; a value that rounds to zero has no sign. */
    @ParameterizedTest
    @CsvSource({
      "3.25, 3.3",
      "-3.25, −3.3",
      "3, 3.0",
      "0.04, 0.0",
      "-0.04, 0.0",
      "-12.345, −12.3",
      "1e3, 1000.0"
    })
    void roundsDecibelsToOnePlace(double value, String text) throws IOException {
      assertThat(render("{x|dB} dB", value)).isEqualTo(text + " dB");
    }

    @ParameterizedTest
    @CsvSource({"3.25, +3.3", "-3.25, −3.3", "0, 0.0", "-0.04, 0.0"})
    void signsDecibels(double value, String text) throws IOException {
      assertThat(render("{x|+dB} dB", value)).isEqualTo(text + " dB");
    }

    @ParameterizedTest
    @CsvSource({
      "85, 85 Hz",
      "84.6, 85 Hz",
      "999.4, 999 Hz",
      "999.6, 1 kHz",
      "1000, 1 kHz",
      "8500, 8.5 kHz",
      "1059.25, 1.06 kHz",
      "12589.25, 12.6 kHz",
      "20000, 20 kHz"
    })
    void showsFrequenciesAsHertzOrKilohertz(double value, String text) throws IOException {
      assertThat(render("{x|Hz}", value)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"0.354, 0.35", "0.355, 0.36", "12, 12.00", "0, 0.00"})
    void roundsPercentToTwoPlaces(double value, String text) throws IOException {
      assertThat(render("{x|%} %", value)).isEqualTo(text + " %");
    }

    @Test
    void looksUpAWord() throws IOException {
      assertThat(render("The {x|word} earpiece", "left")).isEqualTo("The left earpiece");
      assertThat(render("The {x|word}", Side.LEFT_SIDE)).isEqualTo("The left side");
    }

    @Test
    void isNeverSilentlyIncomplete() throws IOException {
      write("en/a.json", "{\"t\":\"{x}\",\"w\":\"{x|word}\",\"d\":\"{x|dB}\"}");
      TextTable table = table();
      assertThatIllegalArgumentException()
          .isThrownBy(() -> table.render(Locale.ENGLISH, "t", Map.of("y", 1)))
          .withMessage("text t: no value for {x}");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> table.render(Locale.ENGLISH, "missing", Map.of()))
          .withMessageContaining("there is no text missing");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> table.render(Locale.ENGLISH, "w", Map.of("x", "up")))
          .withMessageContaining("word.up");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> table.render(Locale.ENGLISH, "d", Map.of("x", Double.NaN)))
          .withMessageContaining("finite");
    }
  }

  @Nested
  class Loading {
    @Test
    void joinsTheFilesOfALanguage() throws IOException {
      write("en/a.json", "{\"a\":\"1\"}");
      write("en/b.json", "{\"b\":\"2\"}");
      assertThat(table().table(Locale.ENGLISH))
          .containsExactly(Map.entry("a", "1"), Map.entry("b", "2"));
    }

    @Test
    void choosesTheReadersLanguageAndEnglishWhereThereIsNone() throws IOException {
      write("en/a.json", "{\"a\":\"hello\"}");
      write("de/a.json", "{\"a\":\"hallo\"}");
      assertThat(table().render(Locale.GERMANY, "a", Map.of())).isEqualTo("hallo");
      assertThat(table().render(Locale.FRENCH, "a", Map.of())).isEqualTo("hello");
    }

    @Test
    void stopsAtAKeyThatStandsInTwoFiles() throws IOException {
      write("en/a.json", "{\"a\":\"1\"}");
      write("en/b.json", "{\"a\":\"2\"}");
      assertThatThrownBy(TextTableTests.this::table)
          .isInstanceOf(StartRefused.class)
          .hasMessageContaining("\"a\"")
          .hasMessageContaining("twice");
    }

    @Test
    void stopsAtAKeyThatStandsTwiceInOneFile() throws IOException {
      write("en/a.json", "{\"a\":\"1\",\"a\":\"2\"}");
      assertThatThrownBy(TextTableTests.this::table).isInstanceOf(StartRefused.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"{x", "x}", "{}", "{x|decibels}", "{a b}", "}{"})
    void stopsAtATemplateThatCannotBeParsed(String template) throws IOException {
      write("en/a.json", "{\"a\":\"" + template + "\"}");
      assertThatThrownBy(TextTableTests.this::table)
          .isInstanceOf(StartRefused.class)
          .hasMessageContaining("\"a\"");
    }

    @Test
    void findsTheTextsThatAreShipped() {
      assertThat(new TextTable().table(Locale.ENGLISH))
          .containsKeys("problem.upload-too-large", "word.left");
    }
  }
}
