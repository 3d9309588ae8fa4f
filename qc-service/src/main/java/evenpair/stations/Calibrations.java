package evenpair.stations;

import evenpair.acoustics.EarSimulator;
import evenpair.captures.CaptureStore;
import evenpair.stations.MicrophoneCalibrationRow.Simulator;
import evenpair.stations.MicrophoneCalibrationRow.Stated;
import evenpair.stations.MicrophoneCalibrationRow.Tone;
import evenpair.tolerance.Channel;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import org.springframework.stereotype.Service;

/**
 * Calibrates both ends of a station's chain: its microphones by a calibrator's tone, its output by
 * a voltmeter.
 */
@Service
class Calibrations {
  private final StationRegister register;
  private final StationRecords records;
  private final CaptureStore captures;
  private final StationSettings settings;
  private final Clock clock;

  Calibrations(
      StationRegister register,
      StationRecords records,
      CaptureStore captures,
      StationSettings settings,
      Clock clock) {
    this.register = register;
    this.records = records;
    this.captures = captures;
    this.settings = settings;
    this.clock = clock;
  }

  /**
   * @param tone bytes of a mono WAV of the calibrator's tone
   * @throws Refusal 404 for an unknown station, 400 for an unknown ear simulator, 422 for a
   *     recording that cannot be decoded or is not fit to calibrate with
   */
  MicrophoneCalibrationRow microphone(String station, Requests.Calibration request, byte[] tone) {
    StationRow row = register.require(station);
    Instant measuredAt =
        Requests.measuredAt(request.measuredAt(), clock.instant(), settings.clockTolerance());
    EarSimulator type =
        EarSimulator.named(request.earSimulator()).orElseThrow(Calibrations::unknownSimulator);
    ToneReading reading = read(MonoWav.read("tone", tone), request);
    return records.addMicrophone(
        row,
        new Simulator(
            Channel.valueOf(request.channel().toUpperCase(Locale.ROOT)),
            type,
            request.earSimulatorSerial()),
        new Stated(
            request.calibratorSerial(),
            request.levelDb(),
            request.frequencyHz(),
            request.calibratorUncertaintyDb()),
        Tone.of(reading, captures.keep(tone)),
        request.operator(),
        measuredAt);
  }

  /**
   * @throws Refusal 404 for an unknown station, 422 for a reading that no such output gives
   */
  OutputCalibrationRow output(String station, Requests.OutputCalibration request) {
    StationRow row = register.require(station);
    Instant measuredAt =
        Requests.measuredAt(request.measuredAt(), clock.instant(), settings.clockTolerance());
    OutputGain gain = OutputGain.of(request.toneDbfs(), request.readingMvRms());
    if (!gain.plausible()) {
      String allowed = OutputGain.LEAST_VOLTS + " to " + OutputGain.MOST_VOLTS + " V";
      throw new Refusal(
              422,
              "reading-implausible",
              String.format(
                  Locale.ROOT,
                  "%.4g mV at %.1f dB re full scale would make full scale %.4g V, an output gives %s: is the reading in millivolts"
                      + " r.m.s., the tone's level its peak re full scale?",
                  request.readingMvRms(),
                  request.toneDbfs(),
                  gain.voltsPerFullScale(),
                  allowed))
          .with("field", "readingMvRms")
          .with("measured", gain.voltsPerFullScale())
          .with("expected", "a reading that makes full scale " + allowed);
    }
    return records.addOutput(
        row,
        new OutputCalibrationRow.Reading(
            request.toneDbfs(),
            request.frequencyHz(),
            request.readingMvRms(),
            request.meterSerial()),
        gain,
        request.operator(),
        measuredAt);
  }

  private ToneReading read(MonoWav tone, Requests.Calibration request) {
    try {
      return ToneReading.of(tone.samples(), tone.fullScale(), request.frequencyHz(), settings);
    } catch (UnfitTone e) {
      throw new Refusal(
              422, e.flaw().word(), "The part 'tone' cannot be used: " + e.getMessage() + ".")
          .with("part", "tone")
          .with(
              "measured",
              Double.isFinite(e.measured()) ? e.measured() : null) // digital silence has no level
          .with("allowed", e.allowed());
    }
  }

  private static Refusal unknownSimulator() {
    return new Refusal(
            400, "unknown-ear-simulator", "That type of ear simulator is not known here.")
        .with("part", "calibration")
        .with("field", "earSimulator")
        .with("choices", Arrays.stream(EarSimulator.values()).map(EarSimulator::label).toList());
  }
}
