package evenpair.batches;

import evenpair.batches.BatchJson.Yield;
import evenpair.batches.StatisticsJson.CapabilityRow;
import evenpair.batches.StatisticsJson.Charts;
import evenpair.batches.StatisticsJson.Components;
import evenpair.batches.StatisticsJson.ScoredUnit;
import evenpair.batches.StatisticsJson.Signal;
import evenpair.web.Texts;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Sentences and numbers of a batch report. */
final class ReportWords {
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuu-MM-dd, HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);
  private static final char MINUS = '\u2212';
  private static final int MOST_NAMED = 5;

  private final Texts texts;
  private final Locale locale;

  ReportWords(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  Locale locale() {
    return locale;
  }

  String text(String key, Map<String, ?> values) {
    return texts.render(locale, "paper.report." + key, values);
  }

  String text(String key) {
    return text(key, Map.of());
  }

  String yield(String key, Yield yield) {
    return text(
        key,
        Map.of(
            "passed",
            yield.passed(),
            "of",
            yield.of(),
            "share",
            percent(yield.share()),
            "from",
            percent(yield.wilson()[0]),
            "to",
            percent(yield.wilson()[1])));
  }

  Map<String, String> ofSpread() {
    return Stream.of("deviation", "difference", "left", "right", "window", "span")
        .collect(Collectors.toMap(word -> word, word -> text("curves." + word)));
  }

  /** Which number of the row may be quoted, and the number. */
  String quoted(CapabilityRow row) {
    if (row.missing() != null) {
      return row.missing().text();
    }
    if (row.quoted() == null) {
      return "";
    }
    return switch (row.quoted()) {
      case "percentiles" ->
          text("quote.percentiles", Map.of("ppk", plain(row.alternative().ppk())));
      case "counting" ->
          row.alternative().atLeast() == null
              ? text("quote.none")
              : text("quote.counting", Map.of("least", plain(row.alternative().atLeast())));
      default -> text("quote.normal", Map.of("least", plain(row.ppk().atLeast())));
    };
  }

  String signals(Charts chart) {
    if (chart.signals().isEmpty()) {
      return text("signals.none");
    }
    return chart.signals().stream()
        .map(
            signal ->
                text(
                    "signal",
                    Map.of(
                        "panel",
                        chart.panels().get(signal.panel()).title(),
                        "rule",
                        signal.text(),
                        "units",
                        units(chart, signal))))
        .collect(Collectors.joining(" "));
  }

  private String units(Charts chart, Signal signal) {
    List<String> serials =
        Arrays.stream(signal.points())
            .mapToObj(point -> chart.points().get(point).units().get(0).serial())
            .toList();
    return named(serials);
  }

  /** Units beyond the limit of T². */
  String beyond(Components components) {
    List<String> serials =
        components.units().stream().filter(ScoredUnit::signals).map(ScoredUnit::serial).toList();
    return serials.isEmpty()
        ? text("t-squared.none")
        : text("t-squared.some", Map.of("count", serials.size(), "units", named(serials)));
  }

  private String named(List<String> serials) {
    String named = String.join(", ", serials.subList(0, Math.min(MOST_NAMED, serials.size())));
    int more = serials.size() - MOST_NAMED;
    return more > 0 ? text("and-more", Map.of("named", named, "more", more)) : named;
  }

  static String date(Instant at) {
    return UTC.format(at);
  }

  static String percent(double share) {
    return String.format(Locale.ROOT, "%.1f %%", share * 100);
  }

  static String limits(Double lower, Double upper) {
    if (lower == null) {
      return upper == null ? "" : "≤ " + db1(upper);
    }
    return upper == null ? "≥ " + db1(lower) : db1(lower) + " … " + db1(upper);
  }

  /**
   * @return two decimals with a sign
   */
  static String db(Double value) {
    return value == null ? "" : StatisticsWords.signed(value);
  }

  /**
   * @return two decimals
   */
  static String plain(Double value) {
    return value == null ? "" : minus(String.format(Locale.ROOT, "%.2f", value));
  }

  /**
   * @return a capability index: two decimals, fewer where they say nothing
   */
  static String index(double value) {
    return minus(String.format(Locale.ROOT, Math.abs(value) < 10 ? "%.2f" : "%.1f", value));
  }

  static String plain1(double value) {
    return minus(String.format(Locale.ROOT, "%.1f", value));
  }

  static String db1(double value) {
    String text = String.format(Locale.ROOT, "%.1f", Math.abs(value));
    return text.equals("0.0") ? text : (value < 0 ? MINUS : '+') + text;
  }

  private static String minus(String number) {
    return number.replace('-', MINUS);
  }
}
