package evenpair.batches;

import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.springframework.stereotype.Component;

/** Finds what of a batch can be compared: one product in one tuning under one limit set. */
@Component
class Selection {
  private final Inspections inspections;

  Selection(Inspections inspections) {
    this.inspections = inspections;
  }

  /**
   * As {@link #of(String, String, String, Integer)}, narrowed by station and time too.
   *
   * @throws Refusal also 422 {@code no-such-part} if no unit is left
   */
  BatchCurves of(String batch, Part part) {
    BatchCurves all = of(batch, part.ofProduct(), part.inTuning(), part.version());
    Instant begin = part.begin();
    Instant end = part.end();
    List<BatchUnit> units =
        all.units().stream()
            .filter(unit -> part.bench() == null || unit.station().equals(part.bench()))
            .filter(unit -> begin == null || !unit.at().isBefore(begin))
            .filter(unit -> end == null || unit.at().isBefore(end))
            .toList();
    if (units.isEmpty()) {
      throw new Refusal(
              422,
              "no-such-part",
              "No unit of batch "
                  + batch
                  + " was measured there and then. Widen station, from, to.")
          .with(
              "stations", all.units().stream().map(BatchUnit::station).distinct().sorted().toList())
          .with("firstAt", all.units().get(0).at())
          .with("lastAt", all.units().get(all.units().size() - 1).at());
    }
    return units.size() == all.units().size() ? all : holding(all, units);
  }

  /** Rows of the flat arrays stay where they are; only the units that point at them are fewer. */
  private static BatchCurves holding(BatchCurves all, List<BatchUnit> units) {
    return new BatchCurves(
        all.product(),
        all.tuning(),
        all.limitSets(),
        units,
        all.left(),
        all.right(),
        all.leftAlignment(),
        all.rightAlignment(),
        all.golden(),
        all.lower(),
        all.upper(),
        all.matchLimit(),
        all.regions(),
        all.smoothing());
  }

  /**
   * @param product null: the batch's only one
   * @param tuning null: the batch's only one
   * @param limitSet null: the only one that judged
   * @throws Refusal 404 for an unknown batch, 422 with {@code choices} where more than one or none
   *     answers to what was asked
   */
  BatchCurves of(String batch, String product, String tuning, Integer limitSet) {
    List<BatchSummary> known =
        inspections.batches().stream().filter(summary -> summary.batch().equals(batch)).toList();
    if (known.isEmpty()) {
      throw new Refusal(
          404, "unknown-batch", "No unit of a batch \"" + batch + "\" has been judged.");
    }
    List<Choice> parts = parts(known);
    List<Choice> meant = parts.stream().filter(part -> part.answers(product, tuning)).toList();
    if (meant.size() != 1) {
      throw refusal(batch, meant.isEmpty() ? parts : meant, meant.isEmpty());
    }
    return narrowed(batch, meant.get(0), limitSet);
  }

  private BatchCurves narrowed(String batch, Choice part, Integer limitSet) {
    BatchCurves curves = inspections.batchCurves(batch, part.product(), part.tuning(), limitSet);
    if (curves.units().isEmpty()) {
      throw refusal(
          batch,
          versions(part, inspections.batchCurves(batch, part.product(), part.tuning(), null)),
          true);
    }
    if (curves.limitSets().size() > 1) {
      throw refusal(batch, versions(part, curves), false);
    }
    return curves;
  }

  private static List<Choice> parts(List<BatchSummary> known) {
    return known.stream()
        .flatMap(
            summary ->
                summary.tunings().stream()
                    .map(tuning -> new Choice(summary.product(), tuning, null)))
        .toList();
  }

  private static List<Choice> versions(Choice part, BatchCurves curves) {
    return curves.limitSets().stream()
        .map(version -> new Choice(part.product(), part.tuning(), version))
        .toList();
  }

  private static Refusal refusal(String batch, List<Choice> choices, boolean nothing) {
    String detail =
        nothing
            ? "Batch " + batch + " has no such part."
            : "Batch "
                + batch
                + " holds "
                + choices.size()
                + " parts that cannot be compared with each other.";
    return new Refusal(
            422,
            nothing ? "no-such-part" : "mixed-batch",
            detail + " Choose one with product, tuning and limitSet.")
        .with("choices", choices.stream().map(Choice::asQuery).toList());
  }

  /**
   * @param limitSet null where the version is not in question
   */
  private record Choice(String product, String tuning, Integer limitSet) {
    boolean answers(String wantedProduct, String wantedTuning) {
      return (wantedProduct == null || Objects.equals(product, wantedProduct))
          && (wantedTuning == null || Objects.equals(tuning, wantedTuning));
    }

    Map<String, Object> asQuery() {
      Map<String, Object> query = new LinkedHashMap<>();
      query.put("product", product);
      query.put("tuning", tuning);
      if (limitSet != null) {
        query.put("limitSet", limitSet);
      }
      return query;
    }
  }
}
