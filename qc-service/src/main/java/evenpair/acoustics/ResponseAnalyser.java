package evenpair.acoustics;

import evenpair.acoustics.UnusableCapture.Flaw;

/**
 * Turns captures of one stimulus into responses: checks, regularised deconvolution, a window around
 * the arrival, power means over the grid's bands. One transform length is planned once for the
 * stimulus: a capture that may be judged begins its sweep within a second, so what comes later than
 * its end and 350 ms is never needed, and a long recording costs no more.
 *
 * <p>Safe for any number of threads at once.
 */
public final class ResponseAnalyser {
  /**
   * The sweep must begin this long after the capture's start at least: that much noise is needed.
   */
  static final double EARLIEST_SECONDS = 0.250;

  /** The sweep must begin this soon. */
  static final double LATEST_SECONDS = 1.0;

  /**
   * Added to {@link #LATEST_SECONDS} for the path itself (7 m of air, or the buffers of a
   * converter). Common practice.
   */
  static final double PATH_SECONDS = 0.020;

  /** This much must be left after the sweep's end. */
  static final double AFTER_SECONDS = 0.250;

  /** The peak's place is known to a sample or two; a capture cut exactly to the rule must pass. */
  private static final double SLACK_SECONDS = 0.0005;

  /** What a judged capture may hold after the sweep: the window's end, and a little. */
  private static final double TAIL_SECONDS = 0.350;

  /**
   * Noise is measured up to this long before the arrival: a response behind a linear-phase filter
   * begins early.
   */
  private static final double GUARD_SECONDS = 0.005;

  private final Sweep sweep;
  private final SweepFinder finder;
  private final ResponseSpectrum spectrum;
  private final double[] noiseGain;
  private final LeadInNoise noise;
  private final DropOuts dropOuts;
  private final HarmonicAnalyser harmonics;

  /**
   * @param sweep the stimulus as it is played; the captures must have its sample rate
   */
  public ResponseAnalyser(Sweep sweep) {
    this.sweep = sweep;
    float[] played = SweepSignal.render(sweep);
    int head =
        SweepSignal.count(LATEST_SECONDS + PATH_SECONDS + sweep.seconds() + TAIL_SECONDS, sweep);
    Fourier fourier = new Fourier(Math.max(head, played.length));
    InverseFilter inverse = new InverseFilter(sweep, played, fourier);
    BandPower inversePower = inverse.power();
    ArrivalWindow window = new ArrivalWindow(sweep);
    noiseGain = noiseGain(inversePower, window);
    spectrum = new ResponseSpectrum(sweep, inverse, window);
    finder = new SweepFinder(sweep, inverse, spectrum, head, fourier.length());
    noise = new LeadInNoise(sweep.rateHz());
    dropOuts = new DropOuts(sweep);
    harmonics = new HarmonicAnalyser(sweep, inverse, inversePower);
  }

  /**
   * @param capture one channel's recording at the stimulus' sample rate
   * @return level, phase, signal-to-noise, arrival
   * @throws UnusableCapture if it is clipped, silent, holds no sweep, begins or ends at the wrong
   *     time, or has a drop-out
   * @throws IllegalArgumentException if the capture has another sample rate
   */
  public Response analyse(Samples capture) throws UnusableCapture {
    SweepFinder.Found found = accepted(capture);
    return respond(capture, found, noiseDensity(capture, found));
  }

  /** A response and the harmonics beside it. */
  public record WithDistortion(Response response, Distortion distortion) {}

  /** As {@link #analyse}, with the harmonics of the same capture; takes somewhat longer. */
  public WithDistortion analyseWithDistortion(Samples capture) throws UnusableCapture {
    SweepFinder.Found found = accepted(capture);
    double[] density = noiseDensity(capture, found);
    Response response = respond(capture, found, density);
    return new WithDistortion(response, distortion(found, density));
  }

  /**
   * Checks and analyses the electrical drive that was recorded beside one microphone or two.
   *
   * @param drive the channel that carries this analyser's stimulus as the unit received it
   * @throws UnusableCapture as {@link #analyse}; the flaw is the drive's
   */
  public Drive drive(Samples drive) throws UnusableCapture {
    SweepFinder.Found found = accepted(drive);
    Curve signalToNoise = signalToNoise(noiseDensity(drive, found), found.response().power());
    return new Drive(found.response(), signalToNoise, arrivalSeconds(found));
  }

  /**
   * The response as microphone over drive: what amplifier, cable and source impedance do to the
   * stimulus goes out of it. As {@code analyseAgainst(microphone, drive(drive))}.
   *
   * @throws UnusableCapture as {@link #analyse}, for either channel
   */
  public Response analyseAgainst(Samples microphone, Samples drive) throws UnusableCapture {
    return analyseAgainst(microphone, drive(drive));
  }

  /**
   * H = microphone/drive, bin by bin, both through the same window around their own arrivals; then
   * power means as ever. Levels are dB re (microphone's full scale)/(drive's full scale); the delay
   * is from the drive's arrival; the noise of both channels counts.
   *
   * @param microphone recorded in the same run as the drive, from the same first sample on
   * @throws UnusableCapture as {@link #analyse}; the flaw is the microphone's
   */
  public Response analyseAgainst(Samples microphone, Drive drive) throws UnusableCapture {
    SweepFinder.Found found = accepted(microphone);
    return respond(microphone, found, noiseDensity(microphone, found), drive);
  }

  /**
   * As {@link #analyseAgainst(Samples, Drive)}, with the harmonics of the microphone's channel re
   * its own fundamental.
   */
  public WithDistortion analyseAgainstWithDistortion(Samples microphone, Drive drive)
      throws UnusableCapture {
    SweepFinder.Found found = accepted(microphone);
    double[] density = noiseDensity(microphone, found);
    Response response = respond(microphone, found, density, drive);
    return new WithDistortion(response, distortion(found, density));
  }

  private SweepFinder.Found accepted(Samples capture) throws UnusableCapture {
    if (capture.rateHz() != sweep.rateHz()) {
      throw new IllegalArgumentException(
          "the stimulus has " + sweep.rateHz() + " Hz, the capture " + capture.rateHz() + " Hz");
    }
    double peak = CaptureChecks.level(capture);
    SweepFinder.Found found = finder.find(capture.values());
    checkSpan(found.arrival() / sweep.rateHz(), capture.seconds());
    dropOuts.check(capture.values(), found.arrival(), peak);
    return found;
  }

  private Response respond(Samples capture, SweepFinder.Found found, double[] density) {
    ResponseSpectrum.Measured measured = found.response();
    double arrival = arrivalSeconds(found);
    return new Response(
        measured.level(),
        measured.phaseDeg(),
        signalToNoise(density, measured.power()),
        arrival,
        arrival - sweep.leadSeconds(),
        CaptureChecks.peak(capture.values()));
  }

  private Response respond(
      Samples capture, SweepFinder.Found found, double[] density, Drive drive) {
    ResponseSpectrum.Measured ratio = spectrum.ratio(found.response(), drive.response());
    Curve own = signalToNoise(density, found.response().power());
    double arrival = arrivalSeconds(found);
    return new Response(
        ratio.level(),
        ratio.phaseDeg(),
        together(own, drive.signalToNoise()),
        arrival,
        arrival - drive.arrivalSeconds(),
        CaptureChecks.peak(capture.values()));
  }

  private Distortion distortion(SweepFinder.Found found, double[] density) {
    return harmonics.measure(found.impulse(), found.peak(), found.response().level(), density);
  }

  private double arrivalSeconds(SweepFinder.Found found) {
    return (found.arrival() + found.response().peakOffset()) / sweep.rateHz();
  }

  /** Relative noise powers of a quotient's two parts add. */
  private static Curve together(Curve a, Curve b) {
    double[] first = a.toArray();
    double[] second = b.toArray();
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      db[i] = -10 * Math.log10(Math.pow(10, -first[i] / 10) + Math.pow(10, -second[i] / 10));
    }
    return Curve.of(db);
  }

  private double[] noiseDensity(Samples capture, SweepFinder.Found found) {
    int end = found.arrival() - SweepSignal.count(GUARD_SECONDS, sweep);
    return noise.density(capture.values(), end);
  }

  private void checkSpan(double arrival, double length) throws UnusableCapture {
    if (arrival < EARLIEST_SECONDS - SLACK_SECONDS) {
      throw new UnusableCapture(
          Flaw.BEGUN_TOO_LATE, Math.max(0, arrival), arrival, EARLIEST_SECONDS);
    }
    if (arrival > LATEST_SECONDS + PATH_SECONDS) {
      throw new UnusableCapture(
          Flaw.BEGUN_TOO_EARLY, arrival, arrival, LATEST_SECONDS + PATH_SECONDS);
    }
    double after = length - arrival - sweep.seconds();
    if (after < AFTER_SECONDS - SLACK_SECONDS) {
      throw new UnusableCapture(Flaw.ENDED_TOO_EARLY, length, after, AFTER_SECONDS);
    }
  }

  /** |G|²·Σw² at the grid points: what filter and window make of white noise' density. */
  private static double[] noiseGain(BandPower inversePower, ArrivalWindow window) {
    double[] gain = new double[Grid.POINTS];
    for (int i = 0; i < gain.length; i++) {
      boolean inside = Grid.upperEdge(i) < inversePower.toHz();
      gain[i] =
          inside
              ? inversePower.mean(Grid.lowerEdge(i), Grid.upperEdge(i)) * window.energy()
              : Double.NaN;
    }
    return gain;
  }

  /**
   * |H|² over (noise density · |G|² · Σw²): what the lead-in's noise becomes behind the same
   * inverse filter and window.
   */
  private Curve signalToNoise(double[] density, double[] power) {
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      if (Double.isNaN(power[i])) {
        db[i] = Double.NaN;
      } else {
        db[i] = 10 * Math.log10(power[i] / (density[i] * noiseGain[i]));
      }
    }
    return Curve.of(db);
  }
}
