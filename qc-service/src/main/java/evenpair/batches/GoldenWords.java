package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.CurveComparison.Largest;
import evenpair.batches.OddCurves.Distance;
import evenpair.batches.OddCurves.Finding;
import evenpair.batches.OddCurves.Shape;
import evenpair.tolerance.Channel;
import evenpair.web.Texts;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The golden response builder's sentences in one language. */
final class GoldenWords {
  private static final double EQUAL_DB = 0.05;

  private final Texts texts;
  private final Locale locale;

  GoldenWords(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  String text(String key, Map<String, ?> values) {
    return texts.render(locale, "golden." + key, values);
  }

  /**
   * @return why an earpiece is odd; empty if it is not
   */
  List<String> why(Channel channel, Finding finding) {
    String earpiece = channel.word() + "-earpiece";
    Distance distance = finding.distance();
    List<String> why = new ArrayList<>();
    if (distance.oddAsAWhole()) {
      why.add(
          distance(
              "odd.whole",
              earpiece,
              distance.shiftDb(),
              Map.of("times", one(distance.typical()), "limit", one(distance.typicalLimit()))));
    }
    if (distance.oddAtItsFarthest()) {
      why.add(
          distance(
              "odd.point",
              earpiece,
              distance.db(),
              Map.of(
                  "frequency",
                  Grid.label(distance.at()),
                  "times",
                  one(Math.abs(distance.times())),
                  "limit",
                  one(distance.limit()))));
    }
    if (finding.shape().odd()) {
      why.add(shape(earpiece, finding.shape()));
    }
    return why;
  }

  private String distance(String key, String earpiece, double db, Map<String, Object> more) {
    Map<String, Object> values = new LinkedHashMap<>(more);
    values.put("earpiece", earpiece);
    values.put("difference", Math.abs(db));
    return text(key + (db < 0 ? ".below" : ".above"), values);
  }

  private String shape(String earpiece, Shape shape) {
    return text(
        "odd.shape",
        Map.of(
            "earpiece",
            earpiece,
            "frequency",
            Grid.label(shape.at()),
            "difference",
            shape.db(),
            "found",
            one(shape.tSquared()),
            "limit",
            one(shape.limit())));
  }

  String version(int version) {
    return text("which.version", Map.of("version", version));
  }

  String largest(Largest largest, String which, String with) {
    String key =
        Math.abs(largest.db()) <= EQUAL_DB
            ? "largest.equal"
            : largest.db() < 0 ? "largest.below" : "largest.above";
    return text(
        key,
        Map.of(
            "region",
            largest.region().name(),
            "which",
            which,
            "with",
            with,
            "difference",
            Math.abs(largest.db()),
            "frequency",
            Grid.label(largest.at())));
  }

  private static String one(double value) {
    return BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP).toPlainString();
  }
}
