package evenpair.inspections;

import evenpair.products.Products;
import evenpair.products.Products.Product;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;

/**
 * Gathers the rows of inspections, a few queries for any number of them. To be called in a
 * transaction.
 */
@Component
class InspectionFiles {
  private final InspectionRows inspections;
  private final AttemptRows attempts;
  private final AttemptChannelRows channels;
  private final VerdictRows verdicts;
  private final Products products;

  InspectionFiles(
      InspectionRows inspections,
      AttemptRows attempts,
      AttemptChannelRows channels,
      VerdictRows verdicts,
      Products products) {
    this.inspections = inspections;
    this.attempts = attempts;
    this.channels = channels;
    this.verdicts = verdicts;
    this.products = products;
  }

  Optional<InspectionFile> find(UUID id) {
    return inspections.findById(id).map(row -> of(List.of(row)).get(0));
  }

  /**
   * @return oldest first; empty for an unknown serial
   */
  List<InspectionFile> ofUnit(String serial) {
    return of(inspections.findBySerialOrderById(serial));
  }

  /**
   * @return in the order of the rows
   */
  List<InspectionFile> of(List<InspectionRow> rows) {
    if (rows.isEmpty()) {
      return List.of();
    }
    List<UUID> ids = rows.stream().map(InspectionRow::id).toList();
    Map<UUID, List<AttemptRow>> attemptsOf =
        attempts.findByInspectionIdInOrderByNumber(ids).stream()
            .collect(Collectors.groupingBy(AttemptRow::inspectionId));
    Map<UUID, VerdictRow> verdictOf =
        verdicts.findByInspectionIdIn(ids).stream()
            .collect(Collectors.toMap(VerdictRow::inspectionId, v -> v));
    Map<String, UnitVerdict> unitOf = units(rows);
    return rows.stream()
        .map(
            row ->
                new InspectionFile(
                    row,
                    attemptsOf.getOrDefault(row.id(), List.of()),
                    Optional.ofNullable(verdictOf.get(row.id())),
                    product(row.product()),
                    unitOf.get(row.serial())))
        .toList();
  }

  private Map<String, UnitVerdict> units(List<InspectionRow> rows) {
    List<String> serials = rows.stream().map(InspectionRow::serial).distinct().toList();
    return inspections.findBySerialIn(serials).stream()
        .collect(Collectors.groupingBy(InspectionRow::serial))
        .entrySet()
        .stream()
        .collect(Collectors.toMap(Map.Entry::getKey, entry -> unit(entry.getValue())));
  }

  private UnitVerdict unit(List<InspectionRow> ofUnit) {
    return UnitVerdict.of(product(ofUnit.get(0).product()).tunings(), ofUnit);
  }

  private Product product(String key) {
    return products
        .find(key)
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "records name the product '" + key + "', which is not known any more"));
  }

  /**
   * @return the stored curves of the valid attempts, in order of their numbers
   */
  List<StoredPair> validSeatings(UUID inspection) {
    return seatings(attempts.findByInspectionIdOrderByNumber(inspection));
  }

  /**
   * @return what the inspection was judged by, exactly; while it is open, its limit set alone
   */
  Judging judging(InspectionRow row) {
    return judging(row, verdicts.findByInspectionId(row.id()));
  }

  private Judging judging(InspectionRow row, Optional<VerdictRow> closed) {
    StoredLimitSet limits = products.limitSet(row.limitSetId());
    return closed
        .map(
            verdict ->
                new Judging(
                    limits,
                    verdict.uncertainty(),
                    verdict.comparedLimitSetIds().stream().map(products::limitSet).toList()))
        .orElseGet(() -> new Judging(limits, Optional.empty(), List.of()));
  }

  /** As {@link #judging(InspectionRow)}, of many at once. */
  Map<UUID, Judging> judgings(Collection<UUID> ids) {
    Map<UUID, VerdictRow> closed =
        verdicts.findByInspectionIdIn(ids).stream()
            .collect(Collectors.toMap(VerdictRow::inspectionId, v -> v));
    return inspections.findByIdIn(ids).stream()
        .collect(
            Collectors.toMap(
                InspectionRow::id, row -> judging(row, Optional.ofNullable(closed.get(row.id())))));
  }

  /** As {@link #validSeatings(UUID)}, of many at once; those without a valid one are left out. */
  Map<UUID, List<StoredPair>> validSeatings(Collection<UUID> ids) {
    Map<UUID, List<AttemptRow>> valid =
        attempts.findByInspectionIdInOrderByNumber(ids).stream()
            .filter(AttemptRow::valid)
            .collect(Collectors.groupingBy(AttemptRow::inspectionId));
    Map<UUID, StoredPair> pairs = pairs(valid.values().stream().flatMap(List::stream).toList());
    Map<UUID, List<StoredPair>> seatings = new LinkedHashMap<>();
    valid.forEach(
        (id, rows) ->
            seatings.put(id, rows.stream().map(attempt -> pairs.get(attempt.id())).toList()));
    return seatings;
  }

  /**
   * @return what an open inspection has seen so far
   */
  Prior prior(UUID inspection) {
    List<AttemptRow> all = attempts.findByInspectionIdOrderByNumber(inspection);
    List<List<Reason>> unseated =
        all.stream()
            .filter(attempt -> attempt.outcome() == Outcome.RESEAT)
            .map(attempt -> RecordJson.read(attempt.reasons()))
            .toList();
    return new Prior(seatings(all), unseated);
  }

  private List<StoredPair> seatings(List<AttemptRow> ofInspection) {
    List<AttemptRow> valid = ofInspection.stream().filter(AttemptRow::valid).toList();
    Map<UUID, StoredPair> pairs = pairs(valid);
    return valid.stream().map(attempt -> pairs.get(attempt.id())).toList();
  }

  private Map<UUID, StoredPair> pairs(List<AttemptRow> valid) {
    Map<UUID, Map<Channel, StoredChannel>> curves = new LinkedHashMap<>();
    for (AttemptChannelRow row :
        channels.findByKeyAttemptIdIn(valid.stream().map(AttemptRow::id).toList())) {
      curves
          .computeIfAbsent(row.attemptId(), id -> new LinkedHashMap<>())
          .put(row.channel(), row.stored());
    }
    Map<UUID, StoredPair> pairs = new LinkedHashMap<>();
    curves.forEach(
        (attempt, pair) ->
            pairs.put(attempt, new StoredPair(pair.get(Channel.LEFT), pair.get(Channel.RIGHT))));
    return pairs;
  }
}
