package evenpair.batches;

import evenpair.batches.BatchJson.RankedReason;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Why units failed, the most frequent reason first; equal ones in the order in which they first
 * came up.
 */
final class ReasonRanking {
  /** As many units as are named below one reason. */
  private static final int MOST_LINKS = 50;

  private final Texts texts;
  private final Locale locale;

  ReasonRanking(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  List<RankedReason> of(List<BatchUnit> units) {
    Map<Reason, List<BatchUnit>> failed = new LinkedHashMap<>();
    for (BatchUnit unit : units) {
      Set<Reason> ofUnit = new HashSet<>();
      unit.reasons()
          .forEach(
              view -> {
                Reason reason = new Reason(view.kind(), view.channel(), view.region());
                if (ofUnit.add(reason)) {
                  failed.computeIfAbsent(reason, r -> new ArrayList<>()).add(unit);
                }
              });
    }
    return failed.entrySet().stream()
        .sorted(Comparator.comparing(entry -> -entry.getValue().size()))
        .map(entry -> ranked(entry.getKey(), entry.getValue(), units.size()))
        .toList();
  }

  private RankedReason ranked(Reason reason, List<BatchUnit> failed, int inspected) {
    return new RankedReason(
        reason.kind(),
        reason.channel(),
        reason.region(),
        failed.size(),
        (double) failed.size() / inspected,
        text(reason),
        failed.stream().limit(MOST_LINKS).map(ChartFigures::link).toList());
  }

  /**
   * @return what the units that failed for it have in common, as a phrase
   */
  String text(String kind, String channel, String region) {
    return text(new Reason(kind, channel, region));
  }

  private String text(Reason reason) {
    String key = "batch.reason." + reason.kind() + (reason.channel() == null ? ".pair" : "");
    if (!texts.table(locale).containsKey(key)) {
      key = "batch.reason." + (reason.region() == null ? "other" : "other.region");
    }
    Map<String, Object> values = new HashMap<>();
    values.put("kind", reason.kind().replace('-', ' '));
    values.put("earpiece", reason.channel() == null ? "the-pair" : reason.channel() + "-earpiece");
    values.put("region", reason.region() == null ? "" : reason.region());
    return texts.render(locale, key, values);
  }

  private record Reason(String kind, String channel, String region) {}
}
