package evenpair.inspections;

import evenpair.products.Products;
import evenpair.products.Products.Product;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
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
    StoredLimitSet limits = products.limitSet(row.limitSetId());
    return verdicts
        .findByInspectionId(row.id())
        .map(
            verdict ->
                new Judging(
                    limits,
                    verdict.uncertainty(),
                    verdict.comparedLimitSetIds().stream().map(products::limitSet).toList()))
        .orElseGet(() -> new Judging(limits, Optional.empty(), List.of()));
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
    Map<UUID, Map<Channel, StoredChannel>> curves = new LinkedHashMap<>();
    for (AttemptChannelRow row :
        channels.findByKeyAttemptIdIn(valid.stream().map(AttemptRow::id).toList())) {
      curves
          .computeIfAbsent(row.attemptId(), id -> new LinkedHashMap<>())
          .put(row.channel(), row.stored());
    }
    return valid.stream()
        .map(attempt -> curves.get(attempt.id()))
        .map(pair -> new StoredPair(pair.get(Channel.LEFT), pair.get(Channel.RIGHT)))
        .toList();
  }
}
