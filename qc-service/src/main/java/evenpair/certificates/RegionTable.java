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
  private static final List<String> FURTHER = List.of("thd", "high-order-distortion", "idle-noise");

  /** Stands behind the margin of a conditional pass; the statement says what it means. */
  private static final String CONDITIONAL = " *";

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
    for (String check : FURTHER) {
      further(check).forEach(rows::add);
    }
    polarity().ifPresent(rows::add);
    return rows;
  }

  /**
   * @return true if a result lies inside its limit by less than the guard band
   */
  boolean hasConditional() {
    return results.stream().anyMatch(RegionTable::conditional);
  }

  private static boolean conditional(RegionView result) {
    return "conditional-pass".equals(result.state());
  }

  /** Checks of a channel in a unit of their own, one row for each span. */
  private List<Map<String, String>> further(String check) {
    List<String> spans =
        results.stream()
            .filter(result -> check.equals(result.check()))
            .map(result -> result.name() == null ? "" : result.name())
            .distinct()
            .toList();
    return spans.stream().map(span -> further(check, span)).toList();
  }

  private Map<String, String> further(String check, String span) {
    Map<String, String> row = named(wording.text("row." + check), span);
    Predicate<RegionView> same = result -> span.equals(result.name() == null ? "" : result.name());
    cell(row, LEFT, find(check, LEFT, same), true);
    cell(row, RIGHT, find(check, RIGHT, same), true);
    return row;
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
    put(row, group + "Value", result.measuredDb(), result.unit(), signed);
    put(row, group + "Limit", result.limitDb(), result.unit(), signed);
    put(row, group + "Margin", result.marginDb(), result.unit(), false);
    if (conditional(result)) {
      row.computeIfPresent(group + "Margin", (field, margin) -> margin + CONDITIONAL);
    }
    if (result.atHz() != null) {
      row.put(group + "At", wording.at(result.atHz()));
    }
  }

  private void put(
      Map<String, String> row, String field, Double value, String unit, boolean signed) {
    if (value != null) {
      row.put(field, number(value, unit, signed));
    }
  }

  private String number(double value, String unit, boolean signed) {
    if (unit.equals("%")) {
      return wording.percent(value);
    }
    return signed && unit.equals("dB") ? wording.signed(value) : wording.plain(Math.abs(value));
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
