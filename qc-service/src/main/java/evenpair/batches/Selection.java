package evenpair.batches;

import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.web.Refusal;
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
    List<Part> parts = parts(known);
    List<Part> meant = parts.stream().filter(part -> part.answers(product, tuning)).toList();
    if (meant.size() != 1) {
      throw refusal(batch, meant.isEmpty() ? parts : meant, meant.isEmpty());
    }
    return narrowed(batch, meant.get(0), limitSet);
  }

  private BatchCurves narrowed(String batch, Part part, Integer limitSet) {
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

  private static List<Part> parts(List<BatchSummary> known) {
    return known.stream()
        .flatMap(
            summary ->
                summary.tunings().stream().map(tuning -> new Part(summary.product(), tuning, null)))
        .toList();
  }

  private static List<Part> versions(Part part, BatchCurves curves) {
    return curves.limitSets().stream()
        .map(version -> new Part(part.product(), part.tuning(), version))
        .toList();
  }

  private static Refusal refusal(String batch, List<Part> choices, boolean nothing) {
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
        .with("choices", choices.stream().map(Part::asQuery).toList());
  }

  /**
   * @param limitSet null where the version is not in question
   */
  private record Part(String product, String tuning, Integer limitSet) {
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
