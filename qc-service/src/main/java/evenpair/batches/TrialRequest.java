package evenpair.batches;

import evenpair.inspections.RecordedUnits.Which;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Parameter;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a trial, a proposal or the curves for them ask for: which units, how well they were
 * measured, what goes wrong costs.
 *
 * @param also further batches beside the one in the address
 */
record TrialRequest(
    @Parameter(example = "sedge-2") String product,
    @Parameter(example = "plain") String tuning,
    @Parameter(description = "units judged by this version only") Integer limitSet,
    @Parameter(description = "further batches") List<String> also,
    @Parameter(description = "any of these stations") List<String> station,
    @Parameter(description = "first instant, ISO 8601") Instant from,
    @Parameter(description = "first instant that is too late, ISO 8601") Instant to,
    @Parameter(description = "stated standard uncertainty of one earpiece's level, dB") Double u,
    @Parameter(description = "price of a scrapped unit") Double scrap,
    @Parameter(description = "price of a reworked unit") Double rework,
    @Parameter(description = "price of a unit accepted though out of tolerance") Double escape,
    @Parameter(description = "share of rejected units that is reworked, 0 to 1")
        Double reworkShare) {
  private static final double LARGEST_U = 10;
  private static final double LARGEST_PRICE = 1e9;

  TrialRequest {
    also = also == null ? List.of() : List.copyOf(also);
    station = station == null ? List.of() : List.copyOf(station);
  }

  Set<String> batches(String batch) {
    Set<String> batches = new LinkedHashSet<>(List.of(batch));
    batches.addAll(also);
    return batches;
  }

  Which which(String batch, String oneProduct, String oneTuning) {
    return new Which(
        oneProduct, oneTuning, batches(batch), Set.copyOf(station), from, to, limitSet);
  }

  /**
   * @throws Refusal 400 if it is not above 0 and up to 10 dB
   */
  OptionalDouble statedUncertainty() {
    if (u == null) {
      return OptionalDouble.empty();
    }
    if (!(u > 0 && u <= LARGEST_U)) {
      throw refusal("u", u, "above 0, at most 10 dB");
    }
    return OptionalDouble.of(u);
  }

  /**
   * @return empty without any price; a price that is not given is 0
   * @throws Refusal 400 if one is out of range, or if both scrap and rework cost and nothing says
   *     which of them how often
   */
  Optional<Prices> prices() {
    if (scrap == null && rework == null && escape == null) {
      return Optional.empty();
    }
    if (scrap != null && rework != null && reworkShare == null) {
      throw refusal("reworkShare", null, "the share of rejected units that is reworked, 0 to 1");
    }
    double share = reworkShare == null ? (rework == null ? 0 : 1) : reworkShare;
    if (!(share >= 0 && share <= 1)) {
      throw refusal("reworkShare", share, "0 to 1");
    }
    return Optional.of(
        new Prices(price("scrap", scrap), price("rework", rework), price("escape", escape), share));
  }

  private static double price(String field, Double price) {
    double given = price == null ? 0 : price;
    if (!(given >= 0 && given <= LARGEST_PRICE)) {
      throw refusal(field, given, "a price of 0 or more");
    }
    return given;
  }

  private static Refusal refusal(String field, Double was, String expected) {
    String given = was == null ? " is missing." : " was " + was + ".";
    return new Refusal(400, "invalid-parameter", field + " must be " + expected + ", and" + given)
        .with("field", field)
        .with("expected", expected);
  }
}
