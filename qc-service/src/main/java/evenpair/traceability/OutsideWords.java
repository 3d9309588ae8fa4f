package evenpair.traceability;

import evenpair.traceability.outside.Comparison;
import evenpair.traceability.outside.Outcome;
import evenpair.traceability.outside.RegionComparison;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The answer to an outside report in sentences that hold for a lay reader. */
final class OutsideWords {
  /** A share of fewer pairs says nothing. */
  private static final int FEWEST_PAIRS = 10;

  private final Texts texts;
  private final Locale locale;
  private final OutsideReport report;
  private final Comparison comparison;

  OutsideWords(Texts texts, Locale locale, OutsideReport report) {
    this.texts = texts;
    this.locale = locale;
    this.report = report;
    this.comparison = report.comparison();
  }

  /**
   * @return whether both agree, one sentence
   */
  String headline() {
    if (comparison.averageOnly()) {
      return text("outside.headline.average");
    }
    if (comparison.swapped()) {
      return text("outside.headline.swapped");
    }
    return text(
        "outside.headline." + comparison.outcome(), Map.of("regions", names(Outcome.DISAGREES)));
  }

  /**
   * @return what follows from it, one sentence or two
   */
  List<String> conclusion() {
    List<String> sentences = new ArrayList<>();
    if (comparison.averageOnly()) {
      sentences.add(text("outside.follows.average"));
      sentences.add(ownRecord());
      return sentences;
    }
    switch (comparison.outcome()) {
      case AGREES ->
          sentences.add(
              report.oursOutside()
                  ? text("outside.follows.agrees-outside", Map.of("regions", outside()))
                  : text("outside.follows.agrees-inside"));
      case DISAGREES -> {
        sentences.add(text("outside.follows.disagrees"));
        sentences.add(ownRecord());
      }
      default -> {
        sentences.add(text("outside.follows.cannot-tell"));
        sentences.add(ownRecord());
      }
    }
    claim().ifPresent(sentences::add);
    return sentences;
  }

  private String ownRecord() {
    return report.oursOutside()
        ? text("outside.own.outside", Map.of("regions", outside()))
        : text("outside.own.inside");
  }

  /** What they found most, against the limit. */
  private Optional<String> claim() {
    return comparison.regions().stream()
        .filter(region -> region.theirsDb() != null && region.limitDb() != null)
        .max(Comparator.comparingDouble(region -> Math.abs(region.theirsDb()) / region.limitDb()))
        .map(
            region ->
                text(
                    Math.abs(region.theirsDb()) > region.limitDb()
                        ? "outside.claim.above"
                        : "outside.claim.inside",
                    Map.of(
                        "theirs", Math.abs(region.theirsDb()),
                        "region", region.region(),
                        "limit", region.limitDb())));
  }

  /**
   * @return how the pair stands in its batch, for the region with the highest share
   */
  Optional<String> inTheBatch() {
    if (report.batchUnits() < FEWEST_PAIRS) {
      return Optional.empty();
    }
    return report.percentiles().entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(
            region ->
                text(
                    "outside.batch",
                    Map.of(
                        "percent", 100 * region.getValue(),
                        "count", report.batchUnits(),
                        "region", region.getKey())));
  }

  String region(RegionComparison region) {
    if (region.outcome() == Outcome.NOT_COMPARED) {
      return text("outside.region.NOT_COMPARED", Map.of("region", region.region()));
    }
    return text(
        "outside.region." + region.outcome(),
        Map.of(
            "region", region.region(),
            "theirs", region.theirsDb(),
            "ours", region.oursDb(),
            "theirU", region.theirExpandedDb(),
            "ourU", region.ourExpandedDb()));
  }

  List<String> assumptions() {
    return comparison.assumptions().stream().map(one -> text("outside.assumed." + one)).toList();
  }

  List<String> questions() {
    return comparison.questions().stream().map(one -> text("outside.asked." + one)).toList();
  }

  private String names(Outcome outcome) {
    return comparison.regions().stream()
        .filter(region -> region.outcome() == outcome)
        .map(RegionComparison::region)
        .collect(Collectors.joining(", "));
  }

  private String outside() {
    return report.inspection().regions().stream()
        .filter(row -> row.check().equals("match") && row.marginDb() != null && row.marginDb() < 0)
        .map(row -> row.name())
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private String text(String key) {
    return texts.render(locale, key, Map.of());
  }

  private String text(String key, Map<String, ?> values) {
    return texts.render(locale, key, values);
  }
}
