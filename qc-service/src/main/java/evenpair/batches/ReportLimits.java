package evenpair.batches;

import evenpair.access.People;
import evenpair.products.Products.VersionFacts;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/** The limit set that judged the batch, and where it came from. */
record ReportLimits(LimitSet set, String digest, List<VersionFacts> versions, People people) {
  private static final int DIGEST_SHOWN = 12;

  List<List<String>> regions(ReportWords words) {
    return set.regions().stream()
        .map(
            region ->
                List.of(
                    region.name(),
                    words.text(
                        "span-value",
                        Map.of("from", region.band().fromHz(), "to", region.band().toHz())),
                    window(region),
                    region.match().map(match -> "± " + span(match, false)).orElse("–")))
        .toList();
  }

  private static String window(Region region) {
    return span(region.lower(), true) + " to " + span(region.upper(), true);
  }

  private static String span(Span span, boolean signed) {
    String start = signed ? ReportWords.db1(span.start()) : ReportWords.plain1(span.start());
    String end = signed ? ReportWords.db1(span.end()) : ReportWords.plain1(span.end());
    return start.equals(end) ? start : start + " … " + end;
  }

  String level(ReportWords words) {
    return words.text(
        "limits.level",
        Map.of(
            "from", set.level().band().fromHz(),
            "to", set.level().band().toHz(),
            "lower", set.level().lowest(),
            "upper", set.level().highest(),
            "balance", set.level().balanceDb()));
  }

  List<List<String>> history(ReportWords words) {
    return versions.stream().map(version -> row(version, words)).toList();
  }

  private List<String> row(VersionFacts version, ReportWords words) {
    return List.of(
        version.version()
            + (version.version() == set.version() ? " " + words.text("this-batch") : ""),
        version.approvedAt().map(ReportWords::date).orElse(words.text("draft")),
        version.approvedAt().isEmpty() ? "" : approver(version, words),
        version.reason().orElse(""),
        version.activeFrom().map(from -> activeFrom(from, words)).orElse("–"),
        version.digest().substring(0, Math.min(DIGEST_SHOWN, version.digest().length())) + "…");
  }

  private String approver(VersionFacts version, ReportWords words) {
    return version
        .approver()
        .map(person -> people.nameOf(person).orElse(words.text("name-erased")))
        .orElse(words.text("from-file"));
  }

  private static String activeFrom(Instant from, ReportWords words) {
    return from.equals(Instant.EPOCH) ? words.text("from-the-first") : ReportWords.date(from);
  }
}
