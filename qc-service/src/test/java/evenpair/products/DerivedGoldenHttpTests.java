package evenpair.products;

import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.startsWith;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.Grid;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.ResultActions;

/**
 * Each test works on a product of its own, since the database is shared. The example's {@code warm}
 * is {@code plain} with a low shelf of 4 dB at 105 Hz, a dip of 3 dB at 8 kHz and −2 dB in all.
 */
class DerivedGoldenHttpTests extends ProductsOverHttp {
  private static String warm(String product) {
    return "/api/products/" + product + "/tunings/warm/golden-responses";
  }

  private ResultActions draftWarm(String product, DoubleUnaryOperator dbAtHz) throws Exception {
    return mvc.perform(
        post(warm(product))
            .param("author", "qe-1")
            .param("name", "warm-golden.csv")
            .contentType("text/csv")
            .content(Examples.golden(dbAtHz)));
  }

  @Test
  void isExpectedToBeWhatItsFiltersMakeOfTheOther() throws Exception {
    given("teal-20");

    // plain is flat at 100 dB. The cookbook gives exactly half the shelf at its corner, 105 Hz,
    // and exactly the dip at its centre; at 1 kHz both are gone but for 0.01 dB. A grid point lies
    // up to 1.4 % from either frequency, and the mean over its band below 0.01 dB from its middle
    mvc.perform(get(warm("teal-20") + "/expected"))
        .andExpect(status().isOk())
        .andExpect(jsonPath("$.from").value("plain"))
        .andExpect(jsonPath("$.fromVersion").value(1))
        .andExpect(jsonPath("$.processing.filters[1].kind").value("peak"))
        .andExpect(jsonPath("$.processing.gainDb").value(-2.0))
        .andExpect(jsonPath("$.levelDb[" + Grid.nearest(1000) + "]").value(closeTo(98, 0.03)))
        .andExpect(jsonPath("$.levelDb[" + Grid.nearest(105) + "]").value(closeTo(100, 0.06)))
        .andExpect(jsonPath("$.levelDb[" + Grid.nearest(8000) + "]").value(closeTo(95, 0.02)))
        .andExpect(jsonPath("$.gainDb[" + Grid.nearest(8000) + "]").value(closeTo(-5, 0.02)))
        .andExpect(jsonPath("$.phaseDeg").isEmpty());
  }

  @Test
  void isExpectedAsCsvThatIsItsOwnExpectation() throws Exception {
    given("teal-21");
    String csv =
        mvc.perform(get(warm("teal-21") + "/expected").accept("text/csv"))
            .andExpect(content().contentTypeCompatibleWith("text/csv"))
            .andReturn()
            .getResponse()
            .getContentAsString();

    mvc.perform(
            post(warm("teal-21"))
                .param("author", "qe-1")
                .param("name", "warm-golden.csv")
                .contentType("text/csv")
                .content(csv))
        .andExpect(status().isCreated())
        // levels near 100 dB as 32-bit floats: steps of 7.6e-6 dB
        .andExpect(jsonPath("$.expectation.deviationDb").value(closeTo(0, 4e-6), Double.class))
        .andExpect(jsonPath("$.notice").isEmpty());
  }

  @Test
  void saysWhereItLiesFarthestFromItAndGivesANotice() throws Exception {
    given("teal-22");

    // the dip left out: 3 dB too much at 8 kHz
    draftWarm("teal-22", hz -> 98 + lowShelf(hz))
        .andExpect(status().isCreated())
        .andExpect(jsonPath("$.expectation.from").value("plain"))
        .andExpect(jsonPath("$.expectation.fromVersion").value(1))
        .andExpect(jsonPath("$.expectation.noticeAboveDb").value(0.5))
        .andExpect(jsonPath("$.expectation.deviationDb").value(closeTo(3, 0.02)))
        .andExpect(jsonPath("$.expectation.atHz").value(closeTo(Grid.hz(Grid.nearest(8000)), 1e-9)))
        .andExpect(
            jsonPath("$.notice")
                .value(startsWith("This golden response is 3.0 dB above what plain and the")))
        .andExpect(jsonPath("$.notice").value(containsString("at 8 kHz")));
    mvc.perform(get(warm("teal-22")))
        .andExpect(jsonPath("$.items[0].notice").isNotEmpty())
        .andExpect(jsonPath("$.items[0].levelDb").doesNotExist());
  }

  /** The shelf alone, as the example states it. */
  private static double lowShelf(double hz) {
    return Biquad.lowShelf(105, 4, 0.71, 48_000).gainDb(hz, 48_000);
  }

  @Test
  void followsTheActiveOneOfTheOther() throws Exception {
    given("teal-23");
    draftGolden("teal-23", hz -> 104);
    mvc.perform(get(warm("teal-23") + "/expected")).andExpect(jsonPath("$.fromVersion").value(1));

    approve(goldens("teal-23") + "/2", "qe-2").andExpect(status().isOk());

    mvc.perform(get(warm("teal-23") + "/expected"))
        .andExpect(jsonPath("$.fromVersion").value(2))
        .andExpect(jsonPath("$.levelDb[" + Grid.nearest(1000) + "]").value(closeTo(102, 0.03)));
  }

  @Test
  void doesNotExistForATuningOfItsOwn() throws Exception {
    given("teal-24");

    mvc.perform(get(goldens("teal-24") + "/expected"))
        .andExpect(status().isNotFound())
        .andExpect(jsonPath("$.type").value("/problems/no-expectation"))
        .andExpect(jsonPath("$.detail").value(containsString("derived from no other tuning")));
    mvc.perform(get(goldens("teal-24") + "/1"))
        .andExpect(jsonPath("$.expectation").isEmpty())
        .andExpect(jsonPath("$.notice").isEmpty())
        .andExpect(jsonPath("$.built").isEmpty());
  }

  @Test
  void isShownWithItsFiltersAmongTheProductsTunings() throws Exception {
    given("teal-25");
    String warm = "$.items[?(@.product=='teal-25')].tunings[1]";

    mvc.perform(get("/api/products"))
        .andExpect(jsonPath(warm + ".from").value("plain"))
        .andExpect(jsonPath(warm + ".processing.filters[0].hz").value(105.0))
        .andExpect(jsonPath(warm + ".processing.sampleRateHz").value(48000.0));
  }
}
