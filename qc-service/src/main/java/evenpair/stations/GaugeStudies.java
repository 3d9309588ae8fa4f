package evenpair.stations;

import evenpair.access.People;
import evenpair.ledger.Digests;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.products.Products.StoredLimitSet;
import evenpair.stations.GaugeStudyRow.AppraiserKind;
import evenpair.web.FormParts;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/** Plans gauge studies and collects their captures, in any order, over any time. */
@Service
class GaugeStudies {
  private final StationRegister register;
  private final StationRows stations;
  private final Blocks blocks;
  private final PairHearing hearing;
  private final LimitsLookup limits;
  private final GaugeStudyRows studies;
  private final GaugeCaptureRows captures;
  private final People people;
  private final Ledger ledger;
  private final StationSettings settings;
  private final TransactionTemplate transaction;
  private final Ids ids;
  private final Clock clock;

  GaugeStudies(
      StationRegister register,
      StationRows stations,
      Blocks blocks,
      PairHearing hearing,
      LimitsLookup limits,
      GaugeStudyRows studies,
      GaugeCaptureRows captures,
      People people,
      Ledger ledger,
      StationSettings settings,
      TransactionTemplate transaction,
      Ids ids,
      Clock clock) {
    this.register = register;
    this.stations = stations;
    this.blocks = blocks;
    this.hearing = hearing;
    this.limits = limits;
    this.studies = studies;
    this.captures = captures;
    this.people = people;
    this.ledger = ledger;
    this.settings = settings;
    this.transaction = transaction;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * @throws Refusal 404 for an unknown station, product or tuning; 422 for a plan that names
   *     neither or both kinds of appraisers, anything twice, or other stations but not this one
   */
  GaugeStudyRow plan(String station, GaugeRequests.Plan plan) {
    StationRow row = register.require(station);
    limits.requireTuning(plan.product(), plan.tuning());
    AppraiserKind kind = kind(plan, station);
    requireOnce("parts", plan.parts());
    requireOnce(kind.word(), kind == AppraiserKind.OPERATOR ? plan.operators() : plan.stations());
    return transaction.execute(
        status -> {
          List<UUID> appraisers =
              kind == AppraiserKind.OPERATOR
                  ? plan.operators().stream().map(people::refer).toList()
                  : plan.stations().stream().map(name -> register.require(name).id()).toList();
          GaugeStudyRow study =
              studies.save(
                  new GaugeStudyRow(
                      ids.next(),
                      row.id(),
                      plan.product(),
                      plan.tuning(),
                      kind,
                      plan.parts(),
                      appraisers,
                      plan.seatings(),
                      people.refer(plan.operator()),
                      now()));
          ledger.append(
              "gauge-study",
              study.getId(),
              entry(row, study),
              Evidence.ofRows("gauge_study", "id", study.getId())
                  .andRows("gauge_study_part", "study_id", study.getId())
                  .andRows("gauge_study_appraiser", "study_id", study.getId()));
          return study;
        });
  }

  /**
   * Stores one measurement of the study.
   *
   * @throws Refusal 404 for an unknown station or study; 409 if the seating has been measured, the
   *     station is blocked or its calibration or correction does not hold; 422 if it is not in the
   *     plan or cannot be used
   */
  GaugeStudyRow collect(String station, UUID id, GaugeRequests.Capture request, FormParts parts) {
    GaugeStudyRow study = require(station, id);
    StationRow at = register.require(request.station() == null ? station : request.station());
    Instant measuredAt =
        Requests.measuredAt(request.measuredAt(), clock.instant(), settings.clockTolerance());
    StoredLimitSet set = limits.activeAt(study.product(), study.tuning(), measuredAt);
    if (!blocks.at(at, measuredAt).isEmpty()) {
      throw Verifications.blocked(at);
    }
    MeasuredSides measured =
        hearing.hear(
            parts, request.stimulus(), register.newest(at, measuredAt), set.set(), measuredAt);
    transaction.executeWithoutResult(
        status -> {
          stations.lock(study.stationId());
          UUID operator = people.refer(request.operator());
          GaugePlace place = place(study, at, operator, request);
          requireFree(study, place, measured);
          GaugeCaptureRow made =
              captures.save(
                  new GaugeCaptureRow(
                      ids.next(),
                      id,
                      place,
                      measured,
                      operator,
                      measuredAt.truncatedTo(ChronoUnit.MICROS),
                      now()));
          ledger.append(
              "gauge-capture",
              made.getId(),
              entry(at, study, made),
              Evidence.ofRows("gauge_study_capture", "id", made.getId())
                  .andFiles(measured.leftSha256(), measured.rightSha256()));
        });
    return study;
  }

  /**
   * @throws Refusal 404 if the station has no part in such a study
   */
  GaugeStudyRow require(String station, UUID id) {
    StationRow row = register.require(station);
    return studies
        .findById(id)
        .filter(
            study -> study.stationId().equals(row.id()) || study.appraisers().contains(row.id()))
        .orElseThrow(
            () ->
                new Refusal(
                    404,
                    "unknown-gauge-study",
                    "Station '" + station + "' has no gauge study " + id + "."));
  }

  private static AppraiserKind kind(GaugeRequests.Plan plan, String station) {
    if ((plan.operators() == null) == (plan.stations() == null)) {
      throw plan("operators", "A gauge study needs either 'operators' or 'stations', not both.");
    }
    if (plan.operators() != null) {
      return AppraiserKind.OPERATOR;
    }
    if (!plan.stations().contains(station)) {
      throw plan("stations", "The stations of this study must include '" + station + "' itself.");
    }
    return AppraiserKind.STATION;
  }

  private static void requireOnce(String field, List<String> names) {
    HashSet<String> seen = new HashSet<>();
    for (String name : names) {
      if (!seen.add(name)) {
        throw plan(field, "The field '" + field + "' names '" + name + "' twice.");
      }
    }
  }

  private static Refusal plan(String field, String detail) {
    return new Refusal(422, "gauge-plan", detail).with("field", field);
  }

  private static GaugePlace place(
      GaugeStudyRow study, StationRow at, UUID operator, GaugeRequests.Capture request) {
    int part = study.parts().indexOf(request.part());
    if (part < 0) {
      throw notPlanned("part", "Part '" + request.part() + "'").with("choices", study.parts());
    }
    boolean byOperator = study.appraiserKind() == AppraiserKind.OPERATOR;
    if (byOperator && !at.id().equals(study.stationId())) {
      throw notPlanned("station", "Station '" + at.name() + "'");
    }
    int appraiser = study.appraisers().indexOf(byOperator ? operator : at.id());
    if (appraiser < 0) {
      throw byOperator
          ? notPlanned("operator", "Operator '" + request.operator() + "'")
          : notPlanned("station", "Station '" + at.name() + "'");
    }
    if (request.seating() > study.seatings()) {
      throw notPlanned("seating", "Seating " + request.seating())
          .with("expected", "1 to " + study.seatings());
    }
    return new GaugePlace(part, appraiser, request.seating());
  }

  private static Refusal notPlanned(String field, String what) {
    return new Refusal(422, "not-in-the-plan", what + " is not in the plan of this gauge study.")
        .with("field", field);
  }

  private void requireFree(GaugeStudyRow study, GaugePlace place, MeasuredSides measured) {
    if (captures.places(study.getId()).contains(place)) {
      throw new Refusal(
              409,
              "seating-taken",
              "Seating "
                  + place.seating()
                  + " of part '"
                  + study.parts().get(place.part())
                  + "' has been measured; a measurement of a study is never replaced.")
          .with("field", "seating");
    }
    if (captures.holds(study.getId(), List.of(measured.leftSha256(), measured.rightSha256()))) {
      throw new Refusal(
          422,
          "same-capture-in-study",
          "One of these files is in the study already; two recordings never are byte for byte the same.");
    }
  }

  private Map<String, Object> entry(StationRow row, GaugeStudyRow study) {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("id", study.getId().toString());
    entry.put("station", row.name());
    entry.put("product", study.product());
    entry.put("tuning", study.tuning());
    entry.put("appraisers", study.appraisers().stream().map(UUID::toString).toList());
    entry.put("parts", study.parts());
    entry.put("seatings", study.seatings());
    entry.put("operator", study.plannedBy().toString());
    entry.put("plannedAt", study.plannedAt().toString());
    return entry;
  }

  private Map<String, Object> entry(StationRow at, GaugeStudyRow study, GaugeCaptureRow made) {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("id", made.getId().toString());
    entry.put("study", study.getId().toString());
    entry.put("station", at.name());
    entry.put("part", study.parts().get(made.place().part()));
    entry.put("appraiser", study.appraisers().get(made.place().appraiser()).toString());
    entry.put("seating", made.place().seating());
    entry.put("operator", made.operator().toString());
    entry.put("measuredAt", made.measuredAt().toString());
    entry.put("left", Digests.ofCurve(made.measured().leftDb()));
    entry.put("right", Digests.ofCurve(made.measured().rightDb()));
    entry.put("leftSha256", made.measured().leftSha256());
    entry.put("rightSha256", made.measured().rightSha256());
    return entry;
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }
}
