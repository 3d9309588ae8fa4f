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
      return text("report.headline.average");
    }
    if (comparison.swapped()) {
      return text("report.headline.swapped");
    }
    return text(
        "report.headline." + comparison.outcome(), Map.of("regions", names(Outcome.DISAGREES)));
  }

  /**
   * @return what follows from it, one sentence or two
   */
  List<String> conclusion() {
    List<String> sentences = new ArrayList<>();
    if (comparison.averageOnly()) {
      sentences.add(text("report.follows.average"));
      sentences.add(ownRecord());
      return sentences;
    }
    switch (comparison.outcome()) {
      case AGREES ->
          sentences.add(
              report.oursOutside()
                  ? text("report.follows.agrees-outside", Map.of("regions", outside()))
                  : text("report.follows.agrees-inside"));
      case DISAGREES -> {
        sentences.add(text("report.follows.disagrees"));
        sentences.add(ownRecord());
      }
      default -> {
        sentences.add(text("report.follows.cannot-tell"));
        sentences.add(ownRecord());
      }
    }
    claim().ifPresent(sentences::add);
    return sentences;
  }

  private String ownRecord() {
    return report.oursOutside()
        ? text("report.own.outside", Map.of("regions", outside()))
        : text("report.own.inside");
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
                        ? "report.claim.above"
                        : "report.claim.inside",
                    Map.of(
                        "theirs", Math.abs(region.theirsDb()),
                        "region", region.region(),
                        "limit", region.limitDb())));
  }

  /**
   * @return how the pair stands in its batch, for the region with the highest share
   */
  Optional<String> inTheBatch() {
    return report.percentiles().entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(
            region ->
                text(
                    "report.batch",
                    Map.of(
                        "percent", 100 * region.getValue(),
                        "count", report.batchUnits(),
                        "region", region.getKey())));
  }

  String region(RegionComparison region) {
    if (region.outcome() == Outcome.NOT_COMPARED) {
      return text("report.region.NOT_COMPARED", Map.of("region", region.region()));
    }
    return text(
        "report.region." + region.outcome(),
        Map.of(
            "region", region.region(),
            "theirs", region.theirsDb(),
            "ours", region.oursDb(),
            "theirU", region.theirExpandedDb(),
            "ourU", region.ourExpandedDb()));
  }

  List<String> assumptions() {
    return comparison.assumptions().stream().map(one -> text("report.assumed." + one)).toList();
  }

  List<String> questions() {
    return comparison.questions().stream().map(one -> text("report.asked." + one)).toList();
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
