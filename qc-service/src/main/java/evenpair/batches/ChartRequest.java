package evenpair.batches;

import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Parameter;
import java.util.Arrays;
import java.util.List;

/** Which chart is wanted, as the address says it. */
record ChartRequest(
    @Parameter(
            example = "region-mean",
            description =
                "region-mean (default), margin, difference-mean, match-margin, level or balance")
        String quantity,
    @Parameter(example = "treble", description = "default: the last region") String region,
    @Parameter(example = "left", description = "default: left") String channel,
    @Parameter(
            example = "ewma",
            description = "individuals (default), xbar-s, ewma, cusum, or p: the share that failed")
        String kind,
    @Parameter(
            example = "25",
            description =
                "How many units, from the first, set the limits (of them those that passed)."
                    + " Default: all")
        String baseline,
    @Parameter(
            example = "5",
            description = "Units in a group of xbar-s (default 5) or p (default 10)")
        String subgroup,
    @Parameter(example = "nelson", description = "nelson (default) or western-electric")
        String rules) {
  private static final int MOST = 1_000_000;
  private static final List<String> RULES = List.of("nelson", "western-electric");

  ChartKind wantedKind() {
    return blank(kind)
        ? ChartKind.INDIVIDUALS
        : ChartKind.of(kind)
            .orElseThrow(
                () ->
                    refusal(
                        "kind",
                        kind,
                        "one of "
                            + String.join(
                                ", ",
                                Arrays.stream(ChartKind.values()).map(ChartKind::word).toList())));
  }

  Quantity wantedQuantity() {
    if (blank(quantity)) {
      return Quantity.REGION_MEAN;
    }
    return Arrays.stream(Quantity.values())
        .filter(known -> known.word().equals(quantity))
        .findFirst()
        .orElseThrow(
            () ->
                refusal(
                    "quantity",
                    quantity,
                    "one of "
                        + String.join(
                            ", ", Arrays.stream(Quantity.values()).map(Quantity::word).toList())));
  }

  boolean western() {
    if (!blank(rules) && !RULES.contains(rules)) {
      throw refusal("rules", rules, "one of " + String.join(", ", RULES));
    }
    return "western-electric".equals(rules);
  }

  int units(int all) {
    return blank(baseline) ? all : Math.min(all, number("baseline", baseline, 1));
  }

  int groupOf(int usual) {
    return blank(subgroup) ? usual : number("subgroup", subgroup, 2);
  }

  static int number(String field, String value, int least) {
    try {
      int number = Integer.parseInt(value);
      if (number >= least && number <= MOST) {
        return number;
      }
    } catch (NumberFormatException e) {
      // said below, as for a number out of range
    }
    throw refusal(field, value, "a whole number from " + least);
  }

  static boolean blank(String value) {
    return value == null || value.isBlank();
  }

  static Refusal refusal(String field, String value, String expected) {
    return new Refusal(
            400, "invalid-parameter", field + " must be " + expected + ", was \"" + value + "\".")
        .with("field", field)
        .with("expected", expected);
  }
}
