package evenpair.stations;

import evenpair.access.People;
import evenpair.acoustics.Grid;
import evenpair.web.Texts;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Says what reference units, verifications and blocks mean. */
@Component
@Transactional(readOnly = true)
class VerificationDescriber {
  private final ReferenceUnitRows references;
  private final VerificationRows verifications;
  private final ClearingRows clearings;
  private final People people;
  private final Texts texts;

  VerificationDescriber(
      ReferenceUnitRows references,
      VerificationRows verifications,
      ClearingRows clearings,
      People people,
      Texts texts) {
    this.references = references;
    this.verifications = verifications;
    this.clearings = clearings;
    this.people = people;
    this.texts = texts;
  }

  TrustViews.Block describe(Block block, Locale locale) {
    Map<String, Object> values = new LinkedHashMap<>();
    block.channel().ifPresent(channel -> values.put("channel", channel.word()));
    block.region().ifPresent(region -> values.put("region", region));
    block.measured().ifPresent(db -> values.put("measured", db));
    block.limit().ifPresent(db -> values.put("limit", db));
    return new TrustViews.Block(
        block.cause().word(),
        block.subject(),
        block.channel().map(channel -> channel.word()).orElse(null),
        block.region().orElse(null),
        block.since(),
        block.measured().isPresent() ? block.measured().getAsDouble() : null,
        block.limit().isPresent() ? block.limit().getAsDouble() : null,
        texts.render(locale, "station.block." + block.cause().word(), values));
  }

  /**
   * @return the newest verification of each tuning
   */
  List<TrustViews.LastVerification> newest(StationRow station, Instant at) {
    return verifications.newestOfEachTuning(station.id(), at).stream()
        .map(
            row ->
                new TrustViews.LastVerification(
                    row.getId(),
                    row.product(),
                    row.tuning(),
                    row.passed(),
                    row.provenance().measuredAt(),
                    row.provenance().validUntil(),
                    row.validAt(at)))
        .toList();
  }

  TrustViews.ReferenceUnit describe(String station, ReferenceUnitRow row, Instant at) {
    return view(station, row, at, true);
  }

  /**
   * @return the station's reference units, only the newest of each serial number and tuning,
   *     without curves
   */
  TrustViews.ReferenceUnits references(StationRow station, Instant at) {
    Map<List<String>, ReferenceUnitRow> newest = new LinkedHashMap<>();
    for (ReferenceUnitRow row : references.all(station.id(), at)) {
      newest.putIfAbsent(List.of(row.serial(), row.product(), row.tuning()), row);
    }
    return new TrustViews.ReferenceUnits(
        newest.values().stream().map(row -> view(station.name(), row, at, false)).toList());
  }

  private static TrustViews.ReferenceUnit view(
      String station, ReferenceUnitRow row, Instant at, boolean curves) {
    return new TrustViews.ReferenceUnit(
        row.getId(),
        station,
        row.serial(),
        row.product(),
        row.tuning(),
        row.earSimulator().label(),
        row.provenance().measuredAt(),
        row.provenance().validUntil(),
        row.validAt(at),
        curves ? Grid.frequencies() : null,
        curves ? row.certified().leftDb() : null,
        curves ? row.certified().rightDb() : null);
  }

  TrustViews.Verification describe(String station, VerificationRow row, Instant at) {
    return describe(
        station,
        row,
        serialOf(row.referenceUnitId()),
        clearings.findBySubjectId(row.getId()).map(this::describe).orElse(null),
        at);
  }

  TrustViews.Clearing describe(ClearingRow row) {
    return new TrustViews.Clearing(
        row.getId(),
        row.cause().word(),
        row.subjectId(),
        row.reason(),
        people.nameOf(row.engineer()).orElse(null),
        row.clearedAt());
  }

  /**
   * @param product only of that product; null for all
   * @param tuning only of that tuning; null for all
   */
  TrustViews.Verifications list(StationRow station, String product, String tuning, Instant at) {
    List<VerificationRow> rows =
        verifications.newestHundred(station.id()).stream()
            .filter(row -> product == null || row.product().equals(product))
            .filter(row -> tuning == null || row.tuning().equals(tuning))
            .toList();
    Map<UUID, String> serials = new HashMap<>();
    rows.forEach(row -> serials.computeIfAbsent(row.referenceUnitId(), this::serialOf));
    Map<UUID, ClearingRow> cleared =
        clearings.findBySubjectIdIn(rows.stream().map(VerificationRow::getId).toList()).stream()
            .collect(Collectors.toMap(ClearingRow::subjectId, row -> row));
    List<TrustViews.Verification> items =
        rows.stream()
            .map(
                row ->
                    describe(
                        station.name(),
                        row,
                        serials.get(row.referenceUnitId()),
                        cleared.containsKey(row.getId())
                            ? describe(cleared.get(row.getId()))
                            : null,
                        at))
            .toList();
    return new TrustViews.Verifications(
        items, VerificationTrends.of(rows, serials), VerificationTrends.METHOD);
  }

  private String serialOf(UUID reference) {
    return references.findById(reference).orElseThrow().serial();
  }

  private static TrustViews.Verification describe(
      String station, VerificationRow row, String serial, TrustViews.Clearing cleared, Instant at) {
    return new TrustViews.Verification(
        row.getId(),
        station,
        row.product(),
        row.tuning(),
        serial,
        row.passed(),
        row.limitDb(),
        row.regions().stream()
            .map(
                check ->
                    new TrustViews.Region(
                        check.channel().word(),
                        check.region(),
                        check.judged(),
                        check.passed(),
                        check.deviationDb(),
                        check.farthestDb(),
                        check.farthestHz()))
            .toList(),
        row.provenance().measuredAt(),
        row.provenance().validUntil(),
        row.validAt(at),
        cleared);
  }
}
