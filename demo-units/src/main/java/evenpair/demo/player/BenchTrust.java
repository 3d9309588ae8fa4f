package evenpair.demo.player;

import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Design;
import evenpair.demo.line.Bench;
import evenpair.demo.line.CertifiedCurve;
import evenpair.demo.line.DemoBatch;
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
 * Shows that a calibrated bench can be trusted: its own noise, a reference pair that repeats its
 * certified curves, and a small gauge study; each only where the service has none that is valid
 * long enough.
 */
final class BenchTrust {
  private static final String TUNING = "plain";

  /** A mounting of the reference pair that the swap study did not use. */
  private static final int VERIFYING = 9;

  private static final int OPERATORS = 2;
  private static final int SEATINGS = 2;

  private final LineClient service;
  private final LineRecorder recorder;
  private final Clock clock;

  BenchTrust(LineClient service, LineRecorder recorder, Clock clock) {
    this.service = service;
    this.recorder = recorder;
    this.clock = clock;
  }

  /**
   * @param station what the service says of the bench
   * @return what was done, in words; empty if nothing had to be
   */
  List<String> earn(Bench bench, Design design, JsonNode station) {
    String path = "/api/stations/" + bench.name();
    List<String> done = new ArrayList<>();
    if (!BenchSetUp.valid(station.path("idleFloor"), clock)) {
      listen(path, bench);
      done.add("own noise measured");
    }
    if (!anyValid(station.path("verifications"), design)) {
      verify(path, bench, design);
      done.add("verified by " + DemoBatch.reference(design).serial());
    }
    Optional<JsonNode> study = study(path, design);
    if (study.filter(known -> BenchSetUp.valid(known, clock)).isEmpty()) {
      done.add(gauge(path, bench, design, study.filter(BenchTrust::unfinished)));
    }
    return done;
  }

  private boolean anyValid(JsonNode versions, Design design) {
    for (JsonNode version : versions) {
      if (isOf(version, design) && BenchSetUp.valid(version, clock)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isOf(JsonNode node, Design design) {
    return node.path("product").asString().equals(design.product())
        && node.path("tuning").asString().equals(TUNING);
  }

  private void listen(String path, Bench bench) {
    Map<String, Object> floor = new LinkedHashMap<>();
    floor.put("operator", Operators.of(bench));
    floor.put("measuredAt", now());
    LineRecorder.Idle idle = recorder.idle(bench);
    Multipart body = new Multipart().json("idleFloor", service.text(floor));
    service.post(path + "/idle-floors", body.wav("left", idle.left()).wav("right", idle.right()));
  }

  private void verify(String path, Bench bench, Design design) {
    DemoUnit reference = DemoBatch.reference(design);
    if (!anyValid(service.get(path + "/reference-units").path("items"), design)) {
      Map<String, Object> unit = about(bench, design);
      unit.put("serial", reference.serial());
      Multipart body = new Multipart().json("unit", service.text(unit));
      body.curve("left", CertifiedCurve.csv(reference.sides().left(), design));
      body.curve("right", CertifiedCurve.csv(reference.sides().right(), design));
      service.post(path + "/reference-units", body);
    }
    Map<String, Object> verification = about(bench, design);
    verification.put("referenceUnit", reference.serial());
    verification.put("stimulus", Player.STIMULUS);
    LineRecorder.PairCapture capture = recorder.reference(reference, bench, false, VERIFYING);
    Multipart body = new Multipart().json("verification", service.text(verification));
    JsonNode answer =
        service.post(
            path + "/verifications",
            body.wav("left", capture.left()).wav("right", capture.right()));
    if (!answer.path("passed").asBoolean()) {
      throw new LineStopped(bench.name() + " was not verified: " + answer);
    }
  }

  /**
   * @return the newest study of the design's plain tuning, if there is one
   */
  private Optional<JsonNode> study(String path, Design design) {
    for (JsonNode study : service.get(path + "/gauge-studies").path("items")) {
      if (isOf(study, design)) {
        return Optional.of(study);
      }
    }
    return Optional.empty();
  }

  private static boolean unfinished(JsonNode study) {
    return study.path("state").asString().equals("collecting");
  }

  private String gauge(String path, Bench bench, Design design, Optional<JsonNode> begun) {
    List<DemoUnit> parts = DemoBatch.gaugeParts(design);
    JsonNode study = begun.orElseGet(() -> plan(path, bench, design, parts));
    String captures = path + "/gauge-studies/" + study.path("id").asString() + "/captures";
    for (JsonNode place : study.path("missing")) {
      String serial = place.path("part").asString();
      DemoUnit part =
          parts.stream().filter(unit -> unit.serial().equals(serial)).findFirst().orElseThrow();
      measure(captures, bench, part, place);
    }
    return "gauge study of "
        + parts.size()
        + " pairs × "
        + OPERATORS
        + " operators × "
        + SEATINGS
        + " seatings";
  }

  private JsonNode plan(String path, Bench bench, Design design, List<DemoUnit> parts) {
    Map<String, Object> plan = new LinkedHashMap<>();
    plan.put("product", design.product());
    plan.put("tuning", TUNING);
    plan.put("parts", parts.stream().map(DemoUnit::serial).toList());
    plan.put("operators", List.of(Operators.of(bench, 1), Operators.of(bench, 2)));
    plan.put("seatings", SEATINGS);
    plan.put("operator", Operators.of(bench));
    return service.post(path + "/gauge-studies", plan);
  }

  private void measure(String captures, Bench bench, DemoUnit part, JsonNode place) {
    String operator = place.path("appraiser").asString();
    int seating = place.path("seating").asInt();
    Map<String, Object> about = new LinkedHashMap<>();
    about.put("part", part.serial());
    about.put("operator", operator);
    about.put("seating", seating);
    about.put("stimulus", Player.STIMULUS);
    about.put("measuredAt", now());
    LineRecorder.PairCapture capture = recorder.gauge(part, bench, operator, seating);
    Multipart body = new Multipart().json("capture", service.text(about));
    service.post(captures, body.wav("left", capture.left()).wav("right", capture.right()));
  }

  private Map<String, Object> about(Bench bench, Design design) {
    Map<String, Object> about = new LinkedHashMap<>();
    about.put("product", design.product());
    about.put("tuning", TUNING);
    about.put("operator", Operators.of(bench));
    about.put("measuredAt", now());
    return about;
  }

  private String now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
