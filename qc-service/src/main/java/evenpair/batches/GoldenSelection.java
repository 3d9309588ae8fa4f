package evenpair.batches;

import evenpair.batches.GoldenJson.BuildRequest;
import evenpair.inspections.MeasuredCurves;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.products.Products;
import evenpair.tolerance.LimitSet;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * Finds the units that a golden response is to be built from, and refuses what cannot be pooled.
 */
@Component
class GoldenSelection {
  /** Two thousand numbers a unit are held and decomposed at once. */
  static final int MOST_UNITS = 500;

  /** A median of fewer is moved by each single one. Common practice, no source. */
  static final int FEWEST_UNITS = 3;

  private final MeasuredCurves curves;
  private final Products products;

  GoldenSelection(MeasuredCurves curves, Products products) {
    this.curves = curves;
    this.products = products;
  }

  /**
   * @return the units chosen, those to leave out among them, oldest first
   * @throws Refusal 400 unless either inspections or a batch are named, 404 for an unknown batch,
   *     422 for what cannot be pooled
   */
  List<MeasuredUnit> of(String product, String tuning, BuildRequest request) {
    boolean named = request.inspections() != null && !request.inspections().isEmpty();
    boolean batch = request.batch() != null && !request.batch().isBlank();
    if (named == batch) {
      throw new Refusal(
              400, "invalid-field", "Name either \"inspections\" or a \"batch\", one of the two.")
          .with("field", named ? "batch" : "inspections")
          .with("expected", "a list of inspections, or a batch");
    }
    List<MeasuredUnit> units =
        named
            ? named(product, tuning, request.inspections())
            : passed(product, tuning, request.batch());
    requireNumber(units.size());
    requireAlike(units);
    requireAmong(units, request.leaveOut());
    requireKept(units.size() - new HashSet<>(leftOut(request)).size());
    return units;
  }

  static List<UUID> leftOut(BuildRequest request) {
    return request.leaveOut() == null ? List.of() : request.leaveOut();
  }

  private List<MeasuredUnit> passed(String product, String tuning, String batch) {
    List<MeasuredUnit> closed = curves.ofBatch(batch, product, tuning);
    if (closed.isEmpty()) {
      throw new Refusal(
          404,
          "unknown-batch",
          "No unit of a batch \""
              + batch
              + "\" has been judged as "
              + product
              + " "
              + tuning
              + ".");
    }
    Map<String, MeasuredUnit> first = new LinkedHashMap<>();
    closed.stream()
        .filter(unit -> "PASS".equals(unit.verdict()))
        .forEach(unit -> first.putIfAbsent(unit.serial(), unit));
    return List.copyOf(first.values());
  }

  private List<MeasuredUnit> named(String product, String tuning, List<UUID> inspections) {
    Set<UUID> wanted = new LinkedHashSet<>(inspections);
    requireNumberAtMost(wanted.size());
    List<MeasuredUnit> units = curves.of(wanted);
    List<UUID> fit =
        units.stream()
            .filter(unit -> unit.product().equals(product) && unit.tuning().equals(tuning))
            .filter(unit -> "closed".equals(unit.state()))
            .map(MeasuredUnit::inspection)
            .toList();
    List<UUID> unfit = wanted.stream().filter(id -> !fit.contains(id)).toList();
    if (!unfit.isEmpty()) {
      throw refusal(
          "unfit-inspections",
          "Only closed inspections of "
              + product
              + " "
              + tuning
              + " with curves can be pooled; these are none: "
              + joined(unfit)
              + ".",
          "inspections");
    }
    requireOnceEach(units);
    return units;
  }

  private static void requireOnceEach(List<MeasuredUnit> units) {
    Set<String> serials = new HashSet<>();
    for (MeasuredUnit unit : units) {
      if (!serials.add(unit.serial())) {
        throw refusal(
            "same-unit-twice",
            "Unit " + unit.serial() + " is there twice: it would count double.",
            "inspections");
      }
    }
  }

  private static void requireNumberAtMost(int units) {
    if (units > MOST_UNITS) {
      throw refusal(
          "too-many-units",
          "A golden response is built from at most " + MOST_UNITS + " units, not " + units + ".",
          "inspections");
    }
  }

  private static void requireNumber(int units) {
    requireNumberAtMost(units);
    requireKept(units);
  }

  private static void requireKept(int units) {
    if (units < FEWEST_UNITS) {
      throw refusal(
          "too-few-units",
          "A golden response needs " + FEWEST_UNITS + " units at least; there are " + units + ".",
          "inspections");
    }
  }

  /** Levels hold at a drive and on a type of ear simulator: others cannot be pooled with them. */
  private void requireAlike(List<MeasuredUnit> units) {
    Map<String, UUID> ways = new LinkedHashMap<>();
    for (MeasuredUnit unit : units) {
      LimitSet set = products.limitSet(unit.limitSetId()).set();
      ways.putIfAbsent(set.drive() + " on " + set.earSimulator().label(), unit.inspection());
    }
    if (ways.size() > 1) {
      throw refusal(
          "not-comparable",
          "These units were measured in different ways: " + String.join("; ", ways.keySet()) + ".",
          "inspections");
    }
  }

  private static void requireAmong(List<MeasuredUnit> units, List<UUID> leaveOut) {
    if (leaveOut == null) {
      return;
    }
    List<UUID> chosen = units.stream().map(MeasuredUnit::inspection).toList();
    List<UUID> strange = new ArrayList<>(leaveOut);
    strange.removeAll(chosen);
    if (!strange.isEmpty()) {
      throw refusal(
          "not-among-them",
          "These are not among the chosen inspections: " + joined(strange) + ".",
          "leaveOut");
    }
  }

  private static String joined(List<UUID> ids) {
    return String.join(", ", ids.stream().limit(5).map(UUID::toString).toList())
        + (ids.size() > 5 ? " and " + (ids.size() - 5) + " more" : "");
  }

  private static Refusal refusal(String type, String detail, String field) {
    return new Refusal(422, type, detail).with("field", field);
  }
}
