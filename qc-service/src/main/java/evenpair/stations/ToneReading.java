package evenpair.stations;

import evenpair.acoustics.Samples;
import evenpair.acoustics.SineFit;
import evenpair.stations.UnfitTone.Flaw;
import java.util.Arrays;
import java.util.Locale;

/**
 * What a calibrator's tone reads on a channel.
 *
 * @param amplitude fitted peak of the tone re full scale
 * @param frequencyHz fitted frequency
 * @param distortionPercent residual r.m.s. ÷ r.m.s. of the sine, percent
 * @param driftDb largest less smallest level of the quarter seconds, dB
 * @param steadySeconds length of the part that was fitted
 */
record ToneReading(
    double amplitude,
    double frequencyHz,
    double distortionPercent,
    double driftDb,
    double steadySeconds) {
  private static final double P0_PASCAL = 20e-6;
  private static final int CLIPPED_RUN = 3;
  private static final double DRIFT_PIECE_SECONDS = 0.25;

  /**
   * Reads the steady part of a tone by a four-parameter sine fit.
   *
   * @param fullScale the largest sample that the file's format can hold: 1 for float, 1 −
   *     2^(1−bits) for integers
   * @param statedHz frequency that the calibrator states
   * @throws UnfitTone if it is clipped, too weak, too short, of another frequency, unsteady or
   *     distorted
   */
  static ToneReading of(
      Samples recording, double fullScale, double statedHz, StationSettings settings)
      throws UnfitTone {
    refuseClipped(recording, fullScale);
    Samples steady = SteadyPart.of(recording);
    refuseSilent(recording, settings);
    if (steady.seconds() < settings.toneSeconds()) {
      throw unfit(
          Flaw.TOO_SHORT,
          steady.seconds(),
          settings.toneSeconds(),
          "the tone stands still for %.2f s of the recording's %.2f s, at least %.2f s are needed",
          steady.seconds(),
          recording.seconds(),
          settings.toneSeconds());
    }
    SineFit fit =
        SineFit.of(steady)
            .orElseThrow(
                () ->
                    unfit(
                        Flaw.DISTORTED,
                        100,
                        settings.toneDistortionPercent(),
                        "no sine could be fitted to the recording: it does not hold a tone"));
    refuseWeak(fit, settings);
    refuseOtherFrequency(fit, statedHz, settings);
    double drift = drift(steady, fit);
    if (!(drift <= settings.toneDriftDb())) {
      throw unfit(
          Flaw.UNSTEADY,
          drift,
          settings.toneDriftDb(),
          "the tone's level moves by %.2f dB during the recording, at most %.2f dB are allowed: let the calibrator settle",
          drift,
          settings.toneDriftDb());
    }
    double distortion = 100 * fit.distortionAndNoise();
    if (!(distortion <= settings.toneDistortionPercent())) {
      throw unfit(
          Flaw.DISTORTED,
          distortion,
          settings.toneDistortionPercent(),
          "distortion and noise are %.2f %% of the tone, at most %.2f %% are allowed",
          distortion,
          settings.toneDistortionPercent());
    }
    return new ToneReading(fit.amplitude(), fit.frequencyHz(), distortion, drift, steady.seconds());
  }

  /**
   * @return {@link #pascalPerFullScale(double, double)} of this tone
   */
  double pascalPerFullScale(double levelDb) {
    return pascalPerFullScale(levelDb, amplitude);
  }

  /**
   * Sound pressure (instantaneous, Pa) that a sample of 1.0 stands for: √2·p_rms/A, p_rms = 20
   * µPa·10^(L/20) (94 dB is 1.002374467 Pa).
   *
   * @param levelDb L, the calibrator's stated level, dB re 20 µPa
   * @param amplitude A, fitted peak of the tone re full scale, above 0
   */
  static double pascalPerFullScale(double levelDb, double amplitude) {
    return Math.sqrt(2) * P0_PASCAL * Math.pow(10, levelDb / 20) / amplitude;
  }

  /**
   * @return level in dB re 20 µPa of a sine whose peak is full scale:
   *     20·lg(pascalPerFullScale/√2/20 µPa)
   */
  static double fullScaleLevelDb(double pascalPerFullScale) {
    return 20 * Math.log10(pascalPerFullScale / Math.sqrt(2) / P0_PASCAL);
  }

  private static void refuseClipped(Samples recording, double fullScale) throws UnfitTone {
    int run = 0;
    int longest = 0;
    int at = 0;
    for (int n = 0; n < recording.values().length; n++) {
      run = Math.abs(recording.values()[n]) >= fullScale ? run + 1 : 0;
      if (run > longest) {
        longest = run;
        at = n;
      }
    }
    if (longest >= CLIPPED_RUN) {
      throw unfit(
          Flaw.CLIPPED,
          longest,
          CLIPPED_RUN - 1,
          "the recording is clipped: %d neighbouring samples at full scale, %.3f s after its start; lower the input's gain",
          longest,
          at / recording.rateHz());
    }
  }

  private static void refuseSilent(Samples recording, StationSettings settings) throws UnfitTone {
    double peak = 0;
    for (float value : recording.values()) {
      peak = Math.max(peak, Math.abs(value));
    }
    if (recording.values().length > 0 && !(dbfs(peak) >= settings.toneLeastDbfs())) {
      throw tooWeak(dbfs(peak), settings);
    }
  }

  private static void refuseWeak(SineFit fit, StationSettings settings) throws UnfitTone {
    if (!(dbfs(fit.amplitude()) >= settings.toneLeastDbfs())) {
      throw tooWeak(dbfs(fit.amplitude()), settings);
    }
  }

  private static UnfitTone tooWeak(double dbfs, StationSettings settings) {
    return unfit(
        Flaw.TOO_WEAK,
        dbfs,
        settings.toneLeastDbfs(),
        "the tone's peak is at %.1f dB re full scale, at least %.1f dB are needed: is the calibrator on, the right input chosen?",
        dbfs,
        settings.toneLeastDbfs());
  }

  private static void refuseOtherFrequency(SineFit fit, double statedHz, StationSettings settings)
      throws UnfitTone {
    double off = Math.abs(fit.frequencyHz() - statedHz);
    double allowed = statedHz * settings.toneFrequencyPercent() / 100;
    if (!(off <= allowed)) {
      throw unfit(
          Flaw.OFF_FREQUENCY,
          off,
          allowed,
          "the tone is at %.2f Hz, stated is %.2f Hz: %.2f Hz apart, at most %.2f Hz are allowed",
          fit.frequencyHz(),
          statedHz,
          off,
          allowed);
    }
  }

  /**
   * Level of each quarter second by its own fit, so that hum and noise count little; a piece that
   * cannot be fitted is no tone.
   */
  private static double drift(Samples steady, SineFit whole) throws UnfitTone {
    int piece = (int) Math.round(DRIFT_PIECE_SECONDS * steady.rateHz());
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int from = 0; from + piece <= steady.values().length; from += piece) {
      Samples part =
          new Samples(Arrays.copyOfRange(steady.values(), from, from + piece), steady.rateHz());
      double amplitude = SineFit.of(part, whole.frequencyHz()).map(SineFit::amplitude).orElse(0.0);
      least = Math.min(least, amplitude);
      most = Math.max(most, amplitude);
    }
    return dbfs(most) - dbfs(least);
  }

  private static double dbfs(double amplitude) {
    return 20 * Math.log10(amplitude);
  }

  private static UnfitTone unfit(
      Flaw flaw, double measured, double allowed, String message, Object... values) {
    return new UnfitTone(flaw, measured, allowed, String.format(Locale.ROOT, message, values));
  }
}
