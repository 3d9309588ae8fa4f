package evenpair.stations;

import evenpair.access.People;
import evenpair.ledger.Digests;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.products.Products.StoredLimitSet;
import evenpair.stations.VerificationRow.RegionCheck;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.web.FormParts;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/** Reference units and the shift verifications made with them. */
@Service
class Verifications {
  private final StationRegister register;
  private final Blocks blocks;
  private final PairHearing hearing;
  private final LimitsLookup limits;
  private final ReferenceUnitRows references;
  private final VerificationRows verifications;
  private final People people;
  private final Ledger ledger;
  private final StationSettings settings;
  private final TrustSettings trust;
  private final TransactionTemplate transaction;
  private final Ids ids;
  private final Clock clock;

  Verifications(
      StationRegister register,
      Blocks blocks,
      PairHearing hearing,
      LimitsLookup limits,
      ReferenceUnitRows references,
      VerificationRows verifications,
      People people,
      Ledger ledger,
      StationSettings settings,
      TrustSettings trust,
      TransactionTemplate transaction,
      Ids ids,
      Clock clock) {
    this.register = register;
    this.blocks = blocks;
    this.hearing = hearing;
    this.limits = limits;
    this.references = references;
    this.verifications = verifications;
    this.people = people;
    this.ledger = ledger;
    this.settings = settings;
    this.trust = trust;
    this.transaction = transaction;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * Stores certified curves of a reference unit: finished curves, or captures at a moment at which
   * the station is trusted.
   *
   * @throws Refusal 404 for an unknown station, product or tuning; 409 if the station cannot be
   *     trusted with it; 422 for parts that cannot be used or leave a required region without data
   */
  ReferenceUnitRow certify(
      String station, VerificationRequests.ReferenceUnit request, FormParts parts) {
    StationRow row = register.require(station);
    Instant at = measuredAt(request.measuredAt());
    StoredLimitSet stored = limits.activeAt(request.product(), request.tuning(), at);
    requireUnblocked(row, at);
    MeasuredSides certified =
        hearing.certified(parts, request.stimulus(), register.newest(row, at), stored.set(), at);
    requireRegions(certified, stored.set());
    return transaction.execute(
        status -> {
          Provenance provenance = provenance(request.operator(), at, trust.referenceValid());
          ReferenceUnitRow unit =
              references.save(
                  new ReferenceUnitRow(
                      ids.next(),
                      row.id(),
                      request.serial(),
                      request.product(),
                      request.tuning(),
                      stored.set().earSimulator(),
                      certified,
                      provenance));
          Map<String, Object> entry = StationRecords.entry(unit.getId(), row, provenance);
          entry.put("serial", unit.serial());
          entry.put("product", unit.product());
          entry.put("tuning", unit.tuning());
          entry.put("earSimulator", unit.earSimulator().label());
          addCurves(entry, certified);
          ledger.append(
              "reference-unit",
              unit.getId(),
              entry,
              Evidence.ofRows("reference_unit", "id", unit.getId())
                  .andFiles(certified.leftSha256(), certified.rightSha256()));
          return unit;
        });
  }

  /**
   * Measures a reference unit against its certified curves. A failed one is stored too, and blocks
   * the station.
   *
   * @throws Refusal 404 for an unknown station, product, tuning or reference unit; 409 if certified
   *     curves or a calibration have expired; 422 for parts that cannot be used
   */
  VerificationRow verify(
      String station, VerificationRequests.Verification request, FormParts parts) {
    StationRow row = register.require(station);
    Instant at = measuredAt(request.measuredAt());
    StoredLimitSet stored = limits.activeAt(request.product(), request.tuning(), at);
    ReferenceUnitRow unit = reference(row, request, at);
    requireSameSimulator(unit, stored.set());
    MeasuredSides measured =
        hearing.hear(parts, request.stimulus(), register.newest(row, at), stored.set(), at);
    requireRegions(measured, stored.set());
    requireRegions(unit.certified(), stored.set());
    List<RegionCheck> checks = VerificationCheck.compare(measured, unit.certified(), stored.set());
    return transaction.execute(
        status -> {
          Provenance provenance = provenance(request.operator(), at, trust.verificationValid());
          VerificationRow made =
              verifications.save(
                  new VerificationRow(
                      ids.next(),
                      unit,
                      stored.id(),
                      stored.set().verificationDb(),
                      measured,
                      checks,
                      provenance));
          Map<String, Object> entry = StationRecords.entry(made.getId(), row, provenance);
          entry.put("referenceUnit", unit.getId().toString());
          entry.put("product", made.product());
          entry.put("tuning", made.tuning());
          entry.put("limitSet", stored.digest());
          entry.put("limitDb", made.limitDb());
          entry.put("passed", made.passed());
          addCurves(entry, measured);
          ledger.append(
              "verification",
              made.getId(),
              entry,
              Evidence.ofRows("station_verification", "id", made.getId())
                  .andRows("station_verification_region", "verification_id", made.getId())
                  .andFiles(measured.leftSha256(), measured.rightSha256()));
          return made;
        });
  }

  private ReferenceUnitRow reference(
      StationRow row, VerificationRequests.Verification request, Instant at) {
    List<ReferenceUnitRow> ofTuning =
        references.ofTuning(row.id(), request.product(), request.tuning(), at);
    ReferenceUnitRow unit =
        ofTuning.stream()
            .filter(candidate -> candidate.serial().equals(request.referenceUnit()))
            .findFirst()
            .orElseThrow(
                () ->
                    new Refusal(
                            404,
                            "unknown-reference-unit",
                            "Station '"
                                + row.name()
                                + "' has no reference unit '"
                                + request.referenceUnit()
                                + "' for '"
                                + request.product()
                                + "' in tuning '"
                                + request.tuning()
                                + "'; send its certified curves first.")
                        .with("field", "referenceUnit")
                        .with(
                            "choices",
                            ofTuning.stream().map(ReferenceUnitRow::serial).distinct().toList()));
    if (!unit.validAt(at)) {
      throw new Refusal(
          409,
          "reference-unit-expired",
          "The certified curves of reference unit '"
              + unit.serial()
              + "' held until "
              + unit.provenance().validUntil()
              + "; have it certified again.");
    }
    return unit;
  }

  private static void requireSameSimulator(ReferenceUnitRow unit, LimitSet set) {
    if (unit.earSimulator() != set.earSimulator()) {
      throw new Refusal(
              422,
              "ear-simulator-differs",
              "Reference unit '"
                  + unit.serial()
                  + "' was certified on an ear simulator of type "
                  + unit.earSimulator().label()
                  + ", but the limits of '"
                  + set.product()
                  + "' in tuning '"
                  + set.tuning()
                  + "' are for "
                  + set.earSimulator().label()
                  + ".")
          .with("field", "referenceUnit")
          .with("expected", set.earSimulator().label());
    }
  }

  private void requireUnblocked(StationRow row, Instant at) {
    if (!blocks.at(row, at).isEmpty()) {
      throw blocked(row);
    }
  }

  static Refusal blocked(StationRow row) {
    return new Refusal(
        409,
        "station-blocked",
        "Station '"
            + row.name()
            + "' is blocked; GET /api/stations/"
            + row.name()
            + " says why. An engineer has to clear it first.");
  }

  private static void requireRegions(MeasuredSides sides, LimitSet set) {
    for (Channel channel : Channel.values()) {
      for (Region region : set.regions()) {
        if (region.required() && !sides.level(channel).covers(region.band())) {
          throw new Refusal(
                  422,
                  "region-without-data",
                  "The "
                      + channel.word()
                      + " curve has no data over the whole of region '"
                      + region.name()
                      + "', "
                      + region.band().fromHz()
                      + " to "
                      + region.band().toHz()
                      + " Hz.")
              .with("part", channel.word())
              .with("expected", "a curve that covers every required region");
        }
      }
    }
  }

  private static void addCurves(Map<String, Object> entry, MeasuredSides sides) {
    entry.put("left", Digests.ofCurve(sides.leftDb()));
    entry.put("right", Digests.ofCurve(sides.rightDb()));
    entry.put("leftSha256", sides.leftSha256());
    entry.put("rightSha256", sides.rightSha256());
  }

  private Provenance provenance(String operator, Instant at, java.time.Duration valid) {
    return Provenance.of(people.refer(operator), at, valid, clock.instant());
  }

  private Instant measuredAt(String sent) {
    return Requests.measuredAt(sent, clock.instant(), settings.clockTolerance());
  }
}
