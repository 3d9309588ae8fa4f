package evenpair.certificates;

import evenpair.inspections.Inspections.RegionSpan;
import evenpair.inspections.Inspections.RegionView;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** The table of a certificate: level first, then each region, then whatever else was checked. */
final class RegionTable {
  private static final String LEFT = "left";
  private static final String RIGHT = "right";
  private static final String PAIR = "pair";

  private final Wording wording;
  private final List<RegionView> results;

  RegionTable(Wording wording, List<RegionView> results) {
    this.wording = wording;
    this.results = results;
  }

  List<Map<String, String>> rows(List<RegionSpan> regions) {
    List<Map<String, String>> rows = new ArrayList<>();
    rows.add(row(wording.text("row.level"), "", "level", "balance", result -> true));
    for (RegionSpan region : regions) {
      String span = wording.text("span", Map.of("from", region.fromHz(), "to", region.toHz()));
      rows.add(
          row(
              region.name(),
              span,
              "window",
              "match",
              result -> region.name().equals(result.name())));
    }
    polarity().ifPresent(rows::add);
    return rows;
  }

  /**
   * @return true if a check that the limit set asks for had no data
   */
  boolean hasUnjudged() {
    return results.stream().anyMatch(result -> !result.judged());
  }

  private Map<String, String> row(
      String name,
      String span,
      String channelCheck,
      String pairCheck,
      Predicate<RegionView> region) {
    Map<String, String> row = named(name, span);
    cell(row, LEFT, find(channelCheck, LEFT, region), true);
    cell(row, RIGHT, find(channelCheck, RIGHT, region), true);
    cell(row, PAIR, find(pairCheck, null, region), false);
    return row;
  }

  private static Map<String, String> named(String name, String span) {
    Map<String, String> row = new LinkedHashMap<>();
    row.put("name", name);
    row.put("span", span);
    return row;
  }

  private Optional<RegionView> find(String check, String channel, Predicate<RegionView> region) {
    return results.stream()
        .filter(result -> check.equals(result.check()) && region.test(result))
        .filter(result -> channel == null || channel.equals(result.channel()))
        .findFirst();
  }

  private void cell(
      Map<String, String> row, String group, Optional<RegionView> found, boolean signed) {
    if (found.isEmpty()) {
      row.put(group + "Note", wording.text("no-limit"));
      return;
    }
    RegionView result = found.get();
    if (!result.judged()) {
      row.put(group + "Note", wording.text("not-judged"));
      return;
    }
    put(row, group + "Value", result.measuredDb(), signed);
    put(row, group + "Limit", result.limitDb(), signed);
    put(row, group + "Margin", result.marginDb(), false);
    if (result.atHz() != null) {
      row.put(group + "At", wording.at(result.atHz()));
    }
  }

  private void put(Map<String, String> row, String field, Double db, boolean signed) {
    if (db != null) {
      row.put(field, signed ? wording.signed(db) : wording.plain(Math.abs(db)));
    }
  }

  private Optional<Map<String, String>> polarity() {
    List<RegionView> found =
        results.stream().filter(result -> "polarity".equals(result.check())).toList();
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Map<String, String> row = named(wording.text("row.polarity"), "");
    for (RegionView result : found) {
      String group = result.channel() == null ? PAIR : result.channel();
      String right = result.channel() == null ? "same-way-round" : "right-way-round";
      row.put(group + "Note", wording.text(result.judged() ? right : "not-judged"));
    }
    return Optional.of(row);
  }
}
