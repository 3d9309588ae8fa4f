package evenpair.demo.player;

import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Design;
import evenpair.demo.line.Bench;
import evenpair.demo.line.Calibrator;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.line.LineRecorder;
import evenpair.tolerance.Channel;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.databind.JsonNode;

/**
 * Makes a bench fit for judging as the morning's routine would: a calibrator's tone on each
 * microphone, a voltmeter's reading of the output, the swap study of the reference pair, then what
 * {@link BenchTrust} does; each only where the service has none that is valid long enough.
 */
final class BenchSetUp {
  private static final double OUTPUT_TONE_DBFS = -12;
  private static final int SEATINGS = 3;

  /** What expires within this time is made anew, so that a run does not end in the middle. */
  private static final Duration STILL_VALID = Duration.ofMinutes(30);

  private final LineClient service;
  private final LineRecorder recorder;
  private final Clock clock;

  BenchSetUp(LineClient service, LineRecorder recorder, Clock clock) {
    this.service = service;
    this.recorder = recorder;
    this.clock = clock;
  }

  /**
   * @return what was done, in words; empty if nothing had to be
   */
  List<String> prepare(Bench bench) {
    String path = "/api/stations/" + bench.name();
    service.put(path, Map.of());
    JsonNode station = service.get(path);
    List<String> done = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      if (!valid(station.path("microphones").path(channel.word()))) {
        calibrate(path, bench, channel);
        done.add(channel.word() + " microphone calibrated");
      }
    }
    if (!valid(station.path("output"))) {
      measureOutput(path, bench);
      done.add("output measured");
    }
    if (!valid(station.path("correction"))) {
      studySwap(path, bench);
      done.add("left and right swapped, " + SEATINGS + " seatings each");
    }
    done.addAll(new BenchTrust(service, recorder, clock).earn(bench, designOn(bench), station));
    return done;
  }

  /**
   * What a shift of an earlier day began with, whatever has been done since: tones and the output,
   * and once the swap study.
   */
  void beginShift(Bench bench, boolean firstDay) {
    String path = "/api/stations/" + bench.name();
    service.put(path, Map.of());
    for (Channel channel : Channel.values()) {
      calibrate(path, bench, channel);
    }
    measureOutput(path, bench);
    if (firstDay) {
      studySwap(path, bench);
    }
  }

  private boolean valid(JsonNode version) {
    return valid(version, clock);
  }

  static boolean valid(JsonNode version, Clock clock) {
    JsonNode until = version.path("validUntil");
    return until.isString()
        && Instant.parse(until.asString()).isAfter(clock.instant().plus(STILL_VALID));
  }

  private void calibrate(String path, Bench bench, Channel channel) {
    Map<String, Object> calibration = new LinkedHashMap<>();
    calibration.put("channel", channel.word());
    calibration.put("earSimulator", bench.earSimulator().label());
    calibration.put("earSimulatorSerial", bench.simulatorSerial(channel));
    calibration.put("calibratorSerial", "SC-7");
    calibration.put("levelDb", Calibrator.LEVEL_DB);
    calibration.put("frequencyHz", Calibrator.FREQUENCY_HZ);
    calibration.put("operator", Operators.of(bench));
    calibration.put("measuredAt", now());
    Multipart body = new Multipart().json("calibration", service.text(calibration));
    service.post(path + "/calibrations", body.wav("tone", recorder.tone(bench, channel)));
  }

  private void measureOutput(String path, Bench bench) {
    Map<String, Object> reading = new LinkedHashMap<>();
    reading.put("toneDbfs", OUTPUT_TONE_DBFS);
    reading.put("frequencyHz", Calibrator.FREQUENCY_HZ);
    // A hand-held meter shows a tenth of a millivolt.
    reading.put("readingMvRms", Math.round(bench.readingMillivolts(OUTPUT_TONE_DBFS) * 10) / 10.0);
    reading.put("meterSerial", "VM-3");
    reading.put("operator", Operators.of(bench));
    reading.put("measuredAt", now());
    service.post(path + "/output-calibrations", reading);
  }

  private void studySwap(String path, Bench bench) {
    DemoUnit reference = DemoBatch.reference(designOn(bench));
    Map<String, Object> correction = new LinkedHashMap<>();
    correction.put("referenceUnit", reference.serial());
    correction.put("operator", Operators.of(bench));
    correction.put("stimulus", Player.STIMULUS);
    correction.put("measuredAt", now());
    Multipart body = new Multipart().json("correction", service.text(correction));
    for (int seating = 1; seating <= SEATINGS; seating++) {
      LineRecorder.PairCapture marked = recorder.reference(reference, bench, false, seating);
      LineRecorder.PairCapture swapped = recorder.reference(reference, bench, true, seating);
      body.wav("markedLeft", marked.left()).wav("markedRight", marked.right());
      body.wav("swappedLeft", swapped.left()).wav("swappedRight", swapped.right());
    }
    service.post(path + "/corrections", body);
  }

  private static Design designOn(Bench bench) {
    for (Design design : Design.values()) {
      if (design.earSimulator() == bench.earSimulator()) {
        return design;
      }
    }
    throw new IllegalStateException("no design is measured on " + bench.earSimulator().label());
  }

  private String now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
