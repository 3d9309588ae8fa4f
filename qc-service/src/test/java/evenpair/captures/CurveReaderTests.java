package evenpair.captures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Grid;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CurveReaderTests {
  private static CurveFile read(String text) {
    return CurveReader.read(text.getBytes(StandardCharsets.UTF_8));
  }

  private static UnreadableCapture refusal(String text) {
    UnreadableCapture refusal = catchThrowableOfType(UnreadableCapture.class, () -> read(text));
    assertThat(refusal).as("must be refused").isNotNull();
    return refusal;
  }

  @Nested
  class Reads {
    @ParameterizedTest
    @ValueSource(
        strings = {
          "100,80.5\n1000,90.5\n",
          "100, 80.5\n1000, 90.5",
          "100;80,5\n1000;90,5\n",
          "100;80.5\r\n1000;90.5\r\n",
          "100\t80.5\n1000\t90.5\n",
          "100\t80,5\n1000\t90,5\n",
          "100 80.5\n1000 90.5\n",
          "  100   80,5\n 1000   90,5\n",
          "1e2 8.05e1\n1E3 +90.5\n",
          "# made elsewhere\n* second note\nfrequency_hz,level_db\n100,80.5\n\n# between\n1000,90.5\n",
          "Frequency (Hz);Level (dB)\n100;80,5\n1000;90,5\n",
          "\uFEFF100,80.5,\n1000,90.5,\n",
          "100,80.5\r1000,90.5\r"
        })
    void everyDialect(String text) {
      CurveFile file = read(text);
      assertThat(file.points()).isEqualTo(2);
      assertThat(file.fromHz()).isEqualTo(100);
      assertThat(file.toHz()).isEqualTo(1000);
      // linear in log f: half way up the decade is half the rise
      assertThat(file.level().at(Grid.nearest(316.2))).isCloseTo(85.5, within(1e-9));
      assertThat(file.level().at(Grid.nearest(1000))).isCloseTo(90.5, within(1e-9));
      assertThat(file.level().has(Grid.nearest(90))).isFalse();
      assertThat(file.phaseDeg()).isEmpty();
    }

    @Test
    void aThirdColumnAsPhase() {
      CurveFile file = read("hz,db,deg\n100,80,170\n1000,80,-170\n");
      // 20 degrees in all, through 180: linear in frequency, so half way at 550 Hz
      double[] phase = file.phaseDeg().orElseThrow();
      assertThat(phase[Grid.nearest(100)]).isCloseTo(170, within(1e-9));
      int at = Grid.nearest(550);
      double expected = Math.IEEEremainder(170 + 20 * (Grid.hz(at) - 100) / 900, 360);
      assertThat(phase[at]).isCloseTo(expected, within(1e-9));
      assertThat(phase[0]).isNaN();
    }

    @Test
    void aFullGridBackUnchanged() {
      StringBuilder text = new StringBuilder("frequency_hz,level_db\n");
      for (int i = 0; i < 241; i++) {
        text.append(String.format(Locale.ROOT, "%.4f,%.3f%n", Grid.hz(i), 90 + i * 0.01));
      }
      CurveFile file = read(text.toString());
      for (int i = 0; i < 241; i++) {
        // frequencies with four decimals are off by 2.5e-6 at most, a thousandth of a step of 0.01
        // dB
        assertThat(file.level().at(i)).isCloseTo(90 + i * 0.01, within(1e-5));
      }
    }

    @Test
    void aFineCurveWithinTheRowLimit() {
      StringBuilder text = new StringBuilder();
      for (int k = 0; k < 200_000; k++) {
        text.append(10 + k * 0.1).append(' ').append(80).append('\n');
      }
      assertThat(read(text.toString()).level().at(100)).isCloseTo(80, within(1e-9));
    }
  }

  @Nested
  class RefusesNamingLineAndColumn {
    @Test
    void fallingFrequencies() {
      UnreadableCapture refusal = refusal("# c\n100,80\n200,81\n150,82\n300,83\n");
      assertThat(refusal.place()).isEqualTo("line 4, column 1");
      assertThat(refusal).hasMessageContaining("above the one before (200.0 Hz), found \"150\"");
    }

    @Test
    void lettersWhereANumberBelongs() {
      UnreadableCapture refusal = refusal("hz,db\n100,80\n200,abc\n");
      assertThat(refusal.place()).isEqualTo("line 3, column 2");
      assertThat(refusal)
          .hasMessageContaining("level in dB as a number with decimal point, found \"abc\"");
    }

    @Test
    void aSecondHeaderLine() {
      assertThat(refusal("hz,db\nHz,dB\n100,80\n200,81\n").place()).isEqualTo("line 2, column 1");
    }

    @Test
    void aSingleColumn() {
      UnreadableCapture refusal = refusal("100\n200\n300\n");
      assertThat(refusal.place()).startsWith("line 1");
      assertThat(refusal).hasMessageContaining("2 columns");
    }

    @Test
    void aRowThatIsShorterOrLonger() {
      UnreadableCapture refusal = refusal("100,80\n200\n300,81,5\n400,82\n");
      assertThat(refusal)
          .hasMessageContaining("line 2")
          .hasMessageContaining("line 3, column 3")
          .hasMessageContaining("2 columns as before");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "inf", "1e999", "--3", "0x10", "12dB", "1.000,5", "80,5"})
    void whatIsNoFiniteNumber(String cell) {
      UnreadableCapture refusal = refusal("100;80.5\n200;" + cell + "\n300;80.5\n");
      assertThat(refusal.place()).isEqualTo("line 2, column 2");
      assertThat(refusal).hasMessageContaining("\"" + cell + "\"");
    }

    @Test
    void frequenciesAndLevelsOutOfAllRange() {
      assertThat(refusal("0,80\n100,80\n200,80\n").place()).isEqualTo("line 1, column 1");
      assertThat(refusal("-5,80\n100,80\n200,80\n").place()).isEqualTo("line 1, column 1");
      assertThat(refusal("1e-9,80\n100,80\n200,80\n").place()).isEqualTo("line 1, column 1");
      assertThat(refusal("100,80\n1e300,80\n").place()).isEqualTo("line 2, column 1");
      assertThat(refusal("100,80\n200,4000\n").place()).isEqualTo("line 2, column 2");
    }

    @Test
    void manyProblemsTogetherButNotWithoutEnd() {
      StringBuilder text = new StringBuilder("100,80\n");
      for (int k = 0; k < 1000; k++) {
        text.append("x,y\n");
      }
      UnreadableCapture refusal = refusal(text.toString());
      assertThat(refusal)
          .hasMessageContaining("line 21, column 1")
          .hasMessageContaining("not read further");
      assertThat(refusal.getMessage()).doesNotContain("line 22");
    }
  }

  @Nested
  class RefusesAsAWhole {
    @Test
    void whatIsNoCurve() {
      assertThat(refusal("")).hasMessage("The file is empty.");
      assertThat(refusal("# nothing\n")).hasMessageContaining("no row");
      assertThat(refusal("100,80\n")).hasMessageContaining("one row");
      assertThat(refusal("RIFF\0\0\0\0WAVE")).hasMessageContaining("not text");
      UnreadableCapture utf16 =
          catchThrowableOfType(
              UnreadableCapture.class,
              () -> CurveReader.read("100,80\n200,80\n".getBytes(StandardCharsets.UTF_16)));
      assertThat(utf16).hasMessageContaining("UTF-16");
    }

    @Test
    void aCurveOutsideEverythingJudged() {
      assertThat(refusal("30000,80\n40000,80\n")).hasMessageContaining("30000.0 … 40000.0 Hz");
    }

    @Test
    void moreRowsThanAnyCurveHasWithoutReadingThemAll() {
      StringBuilder text = new StringBuilder();
      for (int k = 0; k < 200_001; k++) {
        text.append(10 + k).append(",80\n");
      }
      // what follows the limit is not looked at: neither letters nor the rest of ten million rows
      UnreadableCapture refusal = refusal(text + "x,y\n".repeat(100_000));
      assertThat(refusal).hasMessageContaining("more than 200000 rows");
      assertThat(refusal.place()).isEqualTo("line 200001");
    }

    @Test
    void anEndlessLine() {
      assertThat(refusal("100,80\n" + "1".repeat(5000)))
          .hasMessageContaining("Line 2")
          .hasMessageContaining("5000 bytes");
    }
  }
}
