package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import evenpair.acoustics.TuningFilters.Filter;
import evenpair.acoustics.TuningFilters.Kind;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProductReaderTests {

  static List<LimitsProblem> problems(String yaml) {
    UnreadableLimits refusal =
        catchThrowableOfType(
            UnreadableLimits.class, () -> ProductReader.read("product.yaml", Examples.bytes(yaml)));
    assertThat(refusal).as("the text should have been refused").isNotNull();
    return refusal.problems();
  }

  @Test
  void readsTuningsWithTheirFilters() throws UnreadableLimits {
    ProductDefinition product =
        ProductReader.read("product.yaml", Examples.bytes(Examples.PRODUCT));

    assertThat(product.maker()).isEqualTo("Saltmarsh Works");
    assertThat(product.serialPattern()).isEqualTo("SG2-\\d{6}");
    assertThat(product.tunings().get(1).from()).contains("plain");
    assertThat(product.tunings().get(1).filters().get(0))
        .isEqualTo(new Filter(Kind.LOW_SHELF, 105, 4, 0.71));
    assertThat(product.product().tunings())
        .extracting(Products.Tuning::key)
        .containsExactly("plain", "warm");
  }

  @Test
  void writesWhatItReadsBack() throws UnreadableLimits {
    ProductDefinition product =
        ProductReader.read("product.yaml", Examples.bytes(Examples.PRODUCT));
    String text = Canonical.text(product);

    assertThat(ProductReader.read("again", Examples.bytes(text))).isEqualTo(product);
    assertThat(Canonical.text(ProductReader.read("again", Examples.bytes(text)))).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          maker: Saltmarsh Works     | maker: ''                   | maker
          name: Sedge 2              | name: ' Sedge'              | name
          {name: plain, required: true} | {name: plain}            | tunings[0].required
          name: warm                 | name: plain                 | tunings[1].name
          from: plain                | from: lively                | tunings[1].from
          from: plain                | from: warm                  | tunings[1].from
          kind: peak                 | kind: notch                 | tunings[1].filters[1].kind
          q: 0.71                    | q: 0                        | tunings[1].filters[0].q
          q: 0.71                    | q: -1                       | tunings[1].filters[0].q
          q: 0.71                    | q: 1e-3                     | tunings[1].filters[0].q
          q: 0.71                    | q: 101                      | tunings[1].filters[0].q
          gain-db: 4                 | gain-db: 41                 | tunings[1].filters[0].gain-db
          gain-db: -3                | gain-db: -3000              | tunings[1].filters[1].gain-db
          gain-db: 4                 | gain-db: .inf               | tunings[1].filters[0].gain-db
          gain-db: -2                | gain-db: 41                 | tunings[1].gain-db
          hz: 105                    | hz: 0                       | tunings[1].filters[0].hz
          hz: 105                    | hz: -105                    | tunings[1].filters[0].hz
          sample-rate-hz: 48000      | sample-rate-hz: 32000       | tunings[1].sample-rate-hz
          hz: 8000                   | hz: 24000                   | tunings[1].filters[1].hz
          hz: 8000                   | hz: 25000                   | tunings[1].filters[1].hz
          sample-rate-hz: 48000      | sample-rate-hz: 0           | tunings[1].sample-rate-hz
          sample-rate-hz: 48000      | ''                          | tunings[1].filters
          from: plain                | ''                          | tunings[1].gain-db
          """)
  void refusesWhatCannotBeRight(String from, String to, String path) {
    assertThat(Examples.PRODUCT).contains(from);
    assertThat(problems(Examples.PRODUCT.replace(from, to)))
        .extracting(LimitsProblem::path)
        .contains(path);
  }

  @Nested
  class AFilterListThatCannotBe {
    @Test
    void isRefusedWithItsLineAndWhatWouldBeRight() {
      LimitsProblem problem = problems(Examples.PRODUCT.replace("hz: 8000", "hz: 24000")).get(0);

      assertThat(problem.line()).isEqualTo(13);
      assertThat(problem.found()).isEqualTo("24000");
      assertThat(problem.expected()).isEqualTo("a frequency below half of sample-rate-hz");
      assertThat(problems(Examples.PRODUCT.replace("kind: peak", "kind: notch")).get(0).expected())
          .isEqualTo("one of high-shelf, low-shelf, peak");
    }

    @Test
    void isOneWhoseGainsAddUpToWhatNobodySells() {
      LimitsProblem problem =
          problems(
                  Examples.PRODUCT
                      .replace("gain-db: 4", "gain-db: 35")
                      .replace("gain-db: -2", "gain-db: 12"))
              .get(0);

      assertThat(problem.path()).isEqualTo("tunings[1].filters");
      assertThat(problem.line()).isEqualTo(12);
      // a low shelf of 35 dB at 105 Hz has most of it at 20 Hz, and 12 dB on top
      assertThat(problem.found()).matches("\\+4[5-7]\\.\\d dB at 20 Hz, all filters and .*");
    }

    @Test
    void isOneThatStartsFromItselfFromALaterTuningOrFromNone() {
      for (String from : List.of("warm", "lively", "loud")) {
        String yaml =
            Examples.PRODUCT.replace("from: plain", "from: " + from)
                + "  - {name: lively, required: false, from: warm, gain-db: -1}\n";

        LimitsProblem problem = problems(yaml).get(0);

        assertThat(problem.path()).isEqualTo("tunings[1].from");
        assertThat(problem.line()).isEqualTo(10);
        assertThat(problem.expected()).isEqualTo("a tuning that is listed before this one (plain)");
      }
    }
  }

  @Test
  void takesAGainAloneAtAnyRate() throws UnreadableLimits {
    String yaml = Examples.PRODUCT + "  - {name: soft, required: false, from: warm, gain-db: -6}\n";

    ProductDefinition product = ProductReader.read("product.yaml", Examples.bytes(yaml));

    assertThat(product.product().tuning("soft").orElseThrow().filters().orElseThrow().gainDb())
        .isEqualTo(-6);
    assertThat(product.product().tuning("plain").orElseThrow().filters()).isEmpty();
  }

  @Nested
  class SerialPattern {
    private String with(String pattern) {
      return Examples.PRODUCT.replace("'SG2-\\d{6}'", "'" + pattern + "'");
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "SG2-\\d{6}",
          "[A-Z]{2}\\d+(-R)?",
          "(?:SG|SH)2-\\d{4,8}",
          "\\p{L}{1,3}-\\d+",
          "[(+*]+\\d",
          "\\(\\d+\\)",
          "A\\\\1"
        })
    void maySayAnythingThatIsQuickToMatch(String pattern) throws UnreadableLimits {
      assertThat(ProductReader.read("product.yaml", Examples.bytes(with(pattern))).serialPattern())
          .isEqualTo(pattern);
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "(a+)+b",
          "(a|a)*b",
          "(?:a*){3,}",
          "((a)+b?)*",
          "a*a*a*a*a*b",
          "(\\w)\\1",
          "\\Qa\\E",
          "(?i)abc",
          "(?=a)b",
          "[a-",
          "(ab"
        })
    void mayNotKeepTheLineWaitingOrBeInvalid(String pattern) {
      assertThat(problems(with(pattern)))
          .extracting(LimitsProblem::path)
          .containsExactly("serial-pattern");
    }

    @Test
    void isShort() {
      assertThat(problems(with("a".repeat(201))).get(0).expected()).contains("1 to 200 characters");
    }
  }
}
