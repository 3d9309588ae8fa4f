package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.captures.CaptureStore;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.stations.CorrectionRow.Source;
import evenpair.stations.CorrectionRow.UsedCapture;
import evenpair.stations.SentStudy.Capture;
import evenpair.stations.StationRegister.Newest;
import evenpair.tolerance.Channel;
import evenpair.web.FormParts;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Service;

/** Makes a station's left/right correction from the captures of a swap study. */
@Service
class Corrections {
  private final StationRegister register;
  private final StationRecords records;
  private final CaptureStore store;
  private final CaptureAnalysis analysis;
  private final StationSettings settings;
  private final Clock clock;

  Corrections(
      StationRegister register,
      StationRecords records,
      CaptureStore store,
      CaptureAnalysis analysis,
      StationSettings settings,
      Clock clock) {
    this.register = register;
    this.records = records;
    this.store = store;
    this.analysis = analysis;
    this.settings = settings;
    this.clock = clock;
  }

  /**
   * @throws Refusal 404 for an unknown station, 409 while a microphone's calibration is missing or
   *     expired, 422 for captures that cannot be analysed or do not agree with each other
   */
  CorrectionRow correct(String station, Requests.Correction request, FormParts parts) {
    StationRow row = register.require(station);
    Instant measuredAt =
        Requests.measuredAt(request.measuredAt(), clock.instant(), settings.clockTolerance());
    Microphones microphones = Microphones.of(register.newest(station, measuredAt), measuredAt);
    SentStudy sent = SentStudy.of(parts, settings);
    Stimulus stimulus = analysis.stimulus(request.stimulus(), sent.rateHz());
    SwapStudy study = study(sent, analysis.analyser(stimulus), microphones);
    Source source =
        new Source(
            request.referenceUnit(),
            stimulus.name(),
            microphones.left().getId(),
            microphones.right().getId(),
            keep(sent));
    return records.addCorrection(row, source, study, request.operator(), measuredAt);
  }

  private SwapStudy study(SentStudy sent, ResponseAnalyser analyser, Microphones microphones) {
    List<Curve> marked = differences(sent.marked(), analyser, microphones);
    List<Curve> swapped = differences(sent.swapped(), analyser, microphones);
    SwapStudy study = SwapStudy.of(marked, swapped);
    if (!(study.scatterDb() <= settings.correctionScatterDb())) {
      throw scattered(study, marked, swapped);
    }
    if (!(Math.abs(study.meanDb()) <= settings.correctionLargestDb())) {
      throw new Refusal(
              422,
              "correction-too-large",
              String.format(
                  Locale.ROOT,
                  "The station's sides would differ by %.1f dB over 300 Hz to 3 kHz, at most %.1f dB are believed: was a channel"
                      + " calibrated with another gain, or an earpiece not seated?",
                  study.meanDb(),
                  settings.correctionLargestDb()))
          .with("measured", study.meanDb())
          .with("allowed", settings.correctionLargestDb());
    }
    return study;
  }

  private Refusal scattered(SwapStudy study, List<Curve> marked, List<Curve> swapped) {
    int worstMarked = SwapStudy.farthest(marked);
    int worstSwapped = SwapStudy.farthest(swapped);
    boolean inMarked =
        SwapStudy.distance(marked.get(worstMarked), Curve.mean(marked))
            >= SwapStudy.distance(swapped.get(worstSwapped), Curve.mean(swapped));
    String orientation = inMarked ? "marked" : "swapped";
    int seating = 1 + (inMarked ? worstMarked : worstSwapped);
    return new Refusal(
            422,
            "seatings-scatter",
            String.format(
                Locale.ROOT,
                "The seatings differ by %.1f dB (standard deviation over 100 Hz to 8 kHz), at most %.1f dB are allowed; seating %d of"
                    + " those %s strays most. Seat the reference unit again.",
                study.scatterDb(),
                settings.correctionScatterDb(),
                seating,
                orientation))
        .with("part", SentStudy.partName(orientation, Channel.LEFT) + "[" + seating + "]")
        .with("measured", study.scatterDb())
        .with("allowed", settings.correctionScatterDb());
  }

  /**
   * @return left − right by simulator channel, one curve a seating, in dB with each channel's
   *     calibration
   */
  private static List<Curve> differences(
      Map<Channel, List<Capture>> captures, ResponseAnalyser analyser, Microphones microphones) {
    List<Curve> differences = new ArrayList<>();
    for (int seating = 0; seating < captures.get(Channel.LEFT).size(); seating++) {
      Curve left = level(captures.get(Channel.LEFT).get(seating), analyser);
      Curve right = level(captures.get(Channel.RIGHT).get(seating), analyser);
      differences.add(left.minus(right).plus(microphones.leftMinusRightDb()));
    }
    return differences;
  }

  private static Curve level(Capture capture, ResponseAnalyser analyser) {
    return CaptureAnalysis.response(capture.part(), capture.wav().samples(), analyser).level();
  }

  private List<UsedCapture> keep(SentStudy sent) {
    List<UsedCapture> kept = new ArrayList<>();
    keep(sent.marked(), false, kept);
    keep(sent.swapped(), true, kept);
    return kept;
  }

  private void keep(Map<Channel, List<Capture>> captures, boolean swapped, List<UsedCapture> kept) {
    captures.forEach(
        (channel, seatings) -> {
          for (int i = 0; i < seatings.size(); i++) {
            kept.add(new UsedCapture(swapped, channel, i + 1, store.keep(seatings.get(i).bytes())));
          }
        });
  }

  /** The calibrations that make the two channels comparable. */
  private record Microphones(MicrophoneCalibrationRow left, MicrophoneCalibrationRow right) {
    static Microphones of(Newest newest, Instant at) {
      Microphones both =
          new Microphones(valid(newest, Channel.LEFT, at), valid(newest, Channel.RIGHT, at));
      String left = both.left.simulator().type().label();
      String right = both.right.simulator().type().label();
      if (!left.equals(right)) {
        throw new Refusal(
            409,
            "ear-simulators-differ",
            "The left channel sits on an ear simulator of type "
                + left
                + ", the right one on "
                + right
                + "; only two of one type can be compared.");
      }
      return both;
    }

    /**
     * What the calibrations add to left − right in dB re full scale: 20·lg of the ratio of pascal
     * per full scale.
     */
    double leftMinusRightDb() {
      return 20 * Math.log10(left.pascalPerFullScale() / right.pascalPerFullScale());
    }

    private static MicrophoneCalibrationRow valid(Newest newest, Channel channel, Instant at) {
      MicrophoneCalibrationRow row = newest.microphones().get(channel);
      if (row == null) {
        throw refusal("calibration-missing", channel, "has never been calibrated");
      }
      if (!row.validAt(at)) {
        throw refusal(
            "calibration-expired",
            channel,
            "was calibrated until " + row.provenance().validUntil() + " only");
      }
      return row;
    }

    private static Refusal refusal(String type, Channel channel, String why) {
      return new Refusal(
              409,
              type,
              "The " + channel.word() + " microphone " + why + "; send a calibration first.")
          .with("channel", channel.word());
    }
  }
}
