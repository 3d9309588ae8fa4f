package evenpair.traceability;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.captures.CaptureStore;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.MeasuredCurves;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.products.Products;
import evenpair.stations.Stations;
import evenpair.stations.UncertaintyBudget;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.traceability.OutsideReportTable.Kept;
import evenpair.traceability.OutsideReportTable.Row;
import evenpair.traceability.outside.Comparer;
import evenpair.traceability.outside.Ours;
import evenpair.traceability.outside.Theirs;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import evenpair.web.Software;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/** Holds what somebody else measured of a unit against its record, and keeps the answer. */
@Service
class OutsideReports {
  static final String OTHER = "other";

  private final Inspections inspections;
  private final MeasuredCurves measured;
  private final Products products;
  private final Stations stations;
  private final CaptureStore store;
  private final OutsideReportTable table;
  private final Ledger ledger;
  private final TransactionTemplate transaction;
  private final Ids ids;
  private final Clock clock;
  private final Software software;

  OutsideReports(
      Inspections inspections,
      MeasuredCurves measured,
      Products products,
      Stations stations,
      CaptureStore store,
      OutsideReportTable table,
      Ledger ledger,
      TransactionTemplate transaction,
      Ids ids,
      Clock clock,
      Software software) {
    this.inspections = inspections;
    this.measured = measured;
    this.products = products;
    this.stations = stations;
    this.store = store;
    this.table = table;
    this.ledger = ledger;
    this.transaction = transaction;
    this.ids = ids;
    this.clock = clock;
    this.software = software;
  }

  /**
   * @return the answer, kept nowhere
   * @throws Refusal 404 for an unknown serial, 422 if it must be said which inspection is meant
   */
  OutsideReport tried(String serial, OutsideRequest request, SentCurves sent) {
    Inspection inspection = inspection(serial, request);
    Ours ours = ours(inspection);
    Theirs theirs = theirs(request.rig(), sent.left(), sent.right(), sent.average());
    return report(null, clock.instant(), inspection, ours, theirs, request.source());
  }

  /** As {@link #tried}, kept and sealed. */
  OutsideReport kept(String serial, OutsideRequest request, SentCurves sent, UUID person) {
    OutsideReport tried = tried(serial, request, sent);
    List<Kept> files =
        sent.files().stream().map(file -> new Kept(file.part(), store.keep(file.bytes()))).toList();
    Row row =
        new Row(
            ids.next(),
            serial,
            tried.inspection().id(),
            tried.inspection().product(),
            tried.inspection().tuning(),
            clock.instant().truncatedTo(ChronoUnit.MICROS),
            person,
            rig(request),
            files,
            sent.left().isEmpty() ? null : Curve.mean(sent.left()),
            sent.right().isEmpty() ? null : Curve.mean(sent.right()),
            sent.average().orElse(null),
            sent.left().size(),
            tried.comparison(),
            request.source());
    transaction.executeWithoutResult(
        status -> {
          table.add(row, software.version());
          ledger.append("outside-report", row.id(), entry(row), evidence(row));
        });
    return new OutsideReport(
        row.id(),
        row.receivedAt(),
        tried.inspection(),
        tried.ours(),
        tried.theirs(),
        tried.comparison(),
        request.source(),
        tried.percentiles(),
        tried.batchUnits());
  }

  private static Map<String, Object> entry(Row row) {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("serial", row.serial());
    entry.put("inspection", row.inspection().toString());
    entry.put("outcome", row.comparison().outcome().name());
    entry.put("receivedAt", row.receivedAt());
    return entry;
  }

  private static Evidence evidence(Row row) {
    return Evidence.ofRows("outside_report", "id", row.id())
        .andFiles(row.files().stream().map(Kept::sha256).toArray(String[]::new));
  }

  /**
   * @throws Refusal 404 if the unit has no such report
   */
  OutsideReport find(String serial, UUID id) {
    return table
        .find(id)
        .filter(row -> row.serial().equals(serial))
        .map(this::again)
        .orElseThrow(
            () ->
                new Refusal(
                    404,
                    "unknown-report",
                    "Unit " + serial + " has no outside report " + id + "."));
  }

  /**
   * @return newest first
   */
  List<OutsideReport> ofUnit(String serial) {
    return table.ofUnit(serial).stream().map(this::again).toList();
  }

  void eraseSource(String serial, UUID id) {
    find(serial, id);
    transaction.executeWithoutResult(status -> table.eraseSource(id));
  }

  /** As it was answered: the comparison is the stored one. */
  private OutsideReport again(Row row) {
    Inspection inspection = inspections.find(row.inspection()).orElseThrow();
    Ours ours = ours(inspection);
    Theirs theirs =
        theirs(
            row.rig(),
            row.left() == null ? List.of() : List.of(row.left()),
            row.right() == null ? List.of() : List.of(row.right()),
            Optional.ofNullable(row.average()));
    Percentiles percentiles = percentiles(inspection, ours);
    return new OutsideReport(
        row.id(),
        row.receivedAt(),
        inspection,
        ours,
        theirs,
        row.comparison(),
        row.source(),
        percentiles.byRegion(),
        percentiles.units());
  }

  private OutsideReport report(
      UUID id,
      java.time.Instant at,
      Inspection inspection,
      Ours ours,
      Theirs theirs,
      OutsideRequest.Source source) {
    Percentiles percentiles = percentiles(inspection, ours);
    return new OutsideReport(
        id,
        at,
        inspection,
        ours,
        theirs,
        Comparer.compare(ours, theirs),
        source,
        percentiles.byRegion(),
        percentiles.units());
  }

  private static OutsideRequest.Rig rig(OutsideRequest request) {
    return request.rig() == null ? new OutsideRequest.Rig(null, null, null) : request.rig();
  }

  private static Theirs theirs(
      OutsideRequest.Rig rig, List<Curve> left, List<Curve> right, Optional<Curve> average) {
    OutsideRequest.Rig known = rig == null ? new OutsideRequest.Rig(null, null, null) : rig;
    return new Theirs(
        left,
        right,
        average,
        simulator(known.earSimulator()),
        OTHER.equals(known.earSimulator()),
        known.uncertaintyDb() == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(known.uncertaintyDb()),
        Optional.ofNullable(known.levelled()));
  }

  private static Optional<EarSimulator> simulator(String label) {
    if (label == null || label.equals(OTHER)) {
      return Optional.empty();
    }
    List<String> known = new ArrayList<>();
    for (EarSimulator type : EarSimulator.values()) {
      known.add(type.label());
    }
    known.add(OTHER);
    return Optional.of(
        EarSimulator.named(label)
            .orElseThrow(
                () ->
                    new Refusal(
                            422,
                            "unknown-ear-simulator",
                            "There is no ear simulator '%s' here; known: %s."
                                .formatted(label, String.join(", ", known)))
                        .with("part", "report")
                        .with("field", "rig.earSimulator")
                        .with("choices", known)));
  }

  private Inspection inspection(String serial, OutsideRequest request) {
    List<Inspection> ofUnit = inspections.ofUnit(serial);
    if (ofUnit.isEmpty()) {
      throw new Refusal(404, "unknown-serial", "No unit " + serial + " was ever measured here.")
          .with("field", "serial");
    }
    List<Inspection> closed =
        ofUnit.stream()
            .filter(one -> one.state().equals("closed"))
            .filter(one -> request.inspection() == null || one.id().equals(request.inspection()))
            .filter(one -> request.tuning() == null || one.tuning().equals(request.tuning()))
            .filter(one -> one.attempts().stream().anyMatch(OutsideReports::valid))
            .toList();
    List<String> tunings = closed.stream().map(Inspection::tuning).distinct().toList();
    if (tunings.size() != 1) {
      throw which(serial, ofUnit, tunings);
    }
    return closed.get(closed.size() - 1);
  }

  private static boolean valid(Inspections.AttemptSummary attempt) {
    return List.of("PASS", "FAIL", "VALID").contains(attempt.outcome());
  }

  private static Refusal which(String serial, List<Inspection> ofUnit, List<String> tunings) {
    List<String> all = ofUnit.stream().map(Inspection::tuning).distinct().toList();
    String detail =
        tunings.isEmpty()
            ? "Unit %s has no closed inspection with curves that fits; it was measured in: %s."
                .formatted(serial, String.join(", ", all))
            : "Unit %s was measured in several tunings: say which one was measured outside."
                .formatted(serial);
    return new Refusal(422, "which-tuning", detail)
        .with("part", "report")
        .with("field", "tuning")
        .with("choices", tunings.isEmpty() ? all : tunings);
  }

  private Ours ours(Inspection inspection) {
    MeasuredUnit unit = measured.of(List.of(inspection.id())).get(0);
    LimitSet set = products.limitSet(inspection.limitSetId()).set();
    int seatings = (int) inspection.attempts().stream().filter(OutsideReports::valid).count();
    Map<String, Double> expanded = new LinkedHashMap<>();
    Map<String, UncertaintyBudget.Scalar> studied =
        stations.differenceOfRegions(
            inspection.station(),
            inspection.product(),
            inspection.tuning(),
            inspection.startedAt());
    studied.forEach((region, u) -> expanded.put(region, 2 * u.combined(seatings)));
    return new Ours(unit.pair().left().level(), unit.pair().right().level(), set, expanded);
  }

  private record Percentiles(Map<String, Double> byRegion, int units) {}

  /** Where the pair stands among the pairs of its batch, by the magnitude of its region means. */
  private Percentiles percentiles(Inspection inspection, Ours ours) {
    BatchCurves batch =
        inspections.batchCurves(
            inspection.batch(), inspection.product(), inspection.tuning(), null);
    List<BatchUnit> units = batch.units().stream().filter(unit -> unit.row() >= 0).toList();
    Map<String, Double> shares = new LinkedHashMap<>();
    Optional<BatchUnit> self =
        units.stream().filter(unit -> unit.inspection().equals(inspection.id())).findFirst();
    if (self.isEmpty()) {
      return new Percentiles(shares, units.size());
    }
    for (Region region : ours.set().regions()) {
      double own = magnitude(batch, self.get().row(), region.band());
      if (Double.isFinite(own)) {
        long smaller =
            units.stream().filter(u -> magnitude(batch, u.row(), region.band()) < own).count();
        shares.put(region.name(), (double) smaller / units.size());
      }
    }
    return new Percentiles(shares, units.size());
  }

  private static double magnitude(BatchCurves batch, int row, Band band) {
    double sum = 0;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      int at = row * Grid.POINTS + i;
      sum += (double) batch.left()[at] - batch.right()[at];
    }
    return Math.abs(sum / band.points());
  }
}
