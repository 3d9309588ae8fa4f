package evenpair.demo.player;

import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.line.Bench;
import evenpair.demo.line.Cable;
import evenpair.demo.line.LineRecorder;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/**
 * Takes one unit through its tunings on one bench, as an operator would: mount, measure, mount
 * again while the service asks for it, next tuning. What an earlier run has finished is read
 * instead of measured.
 */
final class UnitPlayer {
  /** No limit set of the demo allows more mountings. */
  private static final int MOST_TRIES = 3;

  private final Crew crew;
  private final LineRecorder recorder;
  private final TruthFiles truth;
  private final Clock clock;

  UnitPlayer(Crew crew, LineRecorder recorder, TruthFiles truth, Clock clock) {
    this.crew = crew;
    this.recorder = recorder;
    this.truth = truth;
    this.clock = clock;
  }

  UnitOutcome play(DemoUnit unit, Bench bench, List<Cable> cables) {
    LineClient service = crew.bench(bench.name());
    truth.writeUnit(unit);
    Optional<JsonNode> before = service.find("/api/units/" + unit.serial());
    List<TuningOutcome> outcomes = new ArrayList<>();
    for (Cable cable : cables) {
      Optional<String> known = before.flatMap(node -> inspection(node, cable.tuning()));
      outcomes.add(inspect(unit, bench, cable, known));
    }
    String verdict = service.get("/api/units/" + unit.serial()).path("verdict").asString();
    return new UnitOutcome(unit, bench.name(), verdict, outcomes);
  }

  /**
   * @return the id of the production inspection of that tuning, finished or open, if there is one
   */
  private static Optional<String> inspection(JsonNode unit, String tuning) {
    for (JsonNode inspection : unit.path("inspections")) {
      boolean production = inspection.path("occasion").asString().equals("production");
      if (production
          && inspection.path("tuning").asString().equals(tuning)
          && !abandoned(inspection)) {
        return Optional.of(inspection.path("id").asString());
      }
    }
    return Optional.empty();
  }

  private TuningOutcome inspect(DemoUnit unit, Bench bench, Cable cable, Optional<String> known) {
    LineClient service = crew.bench(bench.name());
    JsonNode record = known.map(id -> service.get("/api/inspections/" + id)).orElse(null);
    int before = record == null ? 0 : record.path("attempts").size();
    int seating = record == null ? 1 : record.path("seatings").path("valid").asInt() + 1;
    int tries = before;
    while (tries < MOST_TRIES && (record == null || goesOn(record))) {
      tries++;
      record = send(unit, bench, cable, tries, seating);
      seating += record.path("next").asString().equals("another-seating") ? 1 : 0;
    }
    return outcome(cable, record, tries - before);
  }

  private JsonNode send(DemoUnit unit, Bench bench, Cable cable, int attempt, int seating) {
    LineClient service = crew.bench(bench.name());
    LineRecorder.PairCapture capture = recorder.inspect(unit, bench, cable, attempt);
    String measuredAt = clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
    Map<String, Object> inspection = new LinkedHashMap<>();
    inspection.put("serial", unit.serial());
    inspection.put("batch", unit.batch());
    inspection.put("product", unit.design().product());
    inspection.put("tuning", cable.tuning());
    inspection.put("station", bench.name());
    inspection.put("operator", Operators.of(bench));
    inspection.put("seating", seating);
    inspection.put("occasion", "production");
    inspection.put("measuredAt", measuredAt);
    inspection.put("stimulus", Player.STIMULUS);
    Multipart body =
        new Multipart()
            .json("inspection", service.text(inspection))
            .wav("left", capture.left())
            .wav("right", capture.right());
    capture
        .idle()
        .ifPresent(idle -> body.wav("idleLeft", idle.left()).wav("idleRight", idle.right()));
    String key =
        String.join("/", unit.serial(), cable.tuning(), String.valueOf(attempt), measuredAt);
    truth.noteCapture(unit, bench, cable, attempt, capture);
    return service.post("/api/inspections", body, key);
  }

  private static TuningOutcome outcome(Cable cable, JsonNode record, int sent) {
    List<String> attempts = new ArrayList<>();
    for (JsonNode attempt : record.path("attempts")) {
      attempts.add(attempt.path("outcome").asString());
    }
    String verdict = record.path("verdict").isString() ? record.path("verdict").asString() : "OPEN";
    return new TuningOutcome(
        cable.tuning(),
        record.path("id").asString(),
        verdict,
        attempts,
        sent,
        firstSentence(record));
  }

  private static boolean goesOn(JsonNode record) {
    return !record.path("next").asString().equals("done");
  }

  private static boolean abandoned(JsonNode inspection) {
    return inspection.path("state").asString().equals("abandoned");
  }

  /** Of the verdict; where that has no reason, of the first try that could not be judged. */
  private static Optional<String> firstSentence(JsonNode record) {
    List<JsonNode> places = new ArrayList<>();
    places.add(record);
    record.path("attempts").forEach(places::add);
    return places.stream()
        .map(place -> place.path("reasons"))
        .filter(reasons -> !reasons.isEmpty())
        .map(reasons -> reasons.get(0).path("text").asString())
        .findFirst();
  }
}
