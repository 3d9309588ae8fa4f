package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.GoldenResponse;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GoldenCsvTests {
  static final String FLAT = Examples.golden(hz -> 100);

  static List<LimitsProblem> problems(String csv) {
    UnreadableLimits refusal =
        catchThrowableOfType(
            UnreadableLimits.class, () -> GoldenCsv.read("plain-golden.csv", Examples.bytes(csv)));
    assertThat(refusal).as("the text should have been refused").isNotNull();
    return refusal.problems();
  }

  @Test
  void comesBackAsTheSameFloatsAndTheSameBytes() throws UnreadableLimits {
    Random random = new Random(3);
    double[] phase = random.doubles(Grid.POINTS, -180, 180).map(p -> (float) p).toArray();
    double[] level = random.doubles(Grid.POINTS, 60, 120).map(l -> (float) l).toArray();
    GoldenResponse golden = new GoldenResponse(Curve.of(level), Optional.of(phase));

    String text = GoldenCsv.write(golden);
    GoldenResponse again = GoldenCsv.read("a", Examples.bytes(text));

    assertThat(again.level()).isEqualTo(golden.level());
    assertThat(again.phaseDeg().orElseThrow()).isEqualTo(phase);
    assertThat(GoldenCsv.write(again)).isEqualTo(text);
  }

  @Test
  void takesRoundedFrequenciesCommentsAndWindowsLineEnds() throws UnreadableLimits {
    String csv =
        IntStream.range(0, Grid.POINTS)
            .mapToObj(i -> Decimal.text(Grid.label(i)) + ", 94.5")
            .collect(
                Collectors.joining(
                    "\r\n", "# from the pilot run\r\nfrequency_hz,level_db\r\n", "\r\n"));

    GoldenResponse golden = GoldenCsv.read("a", Examples.bytes(csv));

    assertThat(golden.level()).isEqualTo(Curve.from(hz -> 94.5));
    assertThat(golden.phaseDeg()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "'1000,100', '1000,loud',      'level_db'",
    "'1000,100', '1000,NaN',       'level_db'",
    "'1000,100', '1000,1e999',     'level_db'",
    "'1000,100', '1000,900',       'level_db'",
    "'1000,100', '1010.5,100,3',   ''",
    "'1000,100', '1100,100',       'frequency_hz'",
    "'1000,100', '-1000,100',      'frequency_hz'",
    "'1000,100', '1000',           ''"
  })
  void refusesABadLineAndNamesIt(String from, String to, String column) {
    assertThat(FLAT).contains("\n" + from + "\n");

    List<LimitsProblem> problems = problems(FLAT.replace("\n" + from + "\n", "\n" + to + "\n"));

    // 1000 Hz has index 136: line 138 with the header
    assertThat(problems.get(0).line()).isEqualTo(138);
    assertThat(problems.get(0).path()).isEqualTo(column);
  }

  @Test
  void refusesASwappedOrderAMissingAndAFurtherPoint() {
    assertThat(problems(FLAT.replace("\n1000,100\n1029.2,100\n", "\n1029.2,100\n1000,100\n")))
        .hasSize(2);
    assertThat(problems(FLAT.replace("\n19952.62,100", "")).get(0).found()).isEqualTo("240 points");
    assertThat(problems(FLAT + "20535,100\n").get(0).found()).isEqualTo("more than 241 points");
  }

  @Test
  void refusesAnotherHeaderAndAnEmptyFile() {
    assertThat(problems(FLAT.replace("level_db", "level")).get(0).expected())
        .startsWith("the header");
    assertThat(problems("").get(0).expected()).startsWith("the header");
    assertThat(problems("x".repeat(300_000)).get(0).expected()).startsWith("at most");
  }
}
