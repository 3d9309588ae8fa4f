package evenpair.acoustics;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;

/** From the deconvolved impulse response to level and phase at the grid points. */
final class ResponseSpectrum {
  /**
   * The window's third of a second is padded to this: bins of 0.8 Hz and less, so that a band of
   * 0.6 Hz at 20 Hz lies on a line between points that follow the response closely.
   */
  private static final double PADDED_SECONDS = 1.2;

  private static final Band TOGETHER = new Band(100, 16_000);

  /**
   * Together means: within 2.5 ms of the peak, or one and a half periods where these are longer.
   */
  private static final double TOGETHER_SECONDS = 0.0025;

  private static final double TOGETHER_PERIODS = 1.5;

  private static final Complex[] NO_CUT = noCut();

  private final Sweep sweep;
  private final Fourier fourier;
  private final ArrivalWindow window;
  private final Complex[] lowCut = new Complex[Grid.POINTS];
  private final boolean[] reached = new boolean[Grid.POINTS];

  ResponseSpectrum(Sweep sweep, InverseFilter inverse, ArrivalWindow window) {
    this.sweep = sweep;
    fourier = new Fourier(SweepSignal.count(PADDED_SECONDS, sweep));
    this.window = window;
    for (int i = 0; i < Grid.POINTS; i++) {
      lowCut[i] = inverse.lowCut(Grid.hz(i));
      reached[i] =
          Grid.lowerEdge(i) >= sweep.usableFromHz() && Grid.upperEdge(i) <= sweep.usableToHz();
    }
  }

  /**
   * What stands in the window.
   *
   * @param level dB, the low cut taken out; absent where the sweep does not reach
   * @param power mean |H|² with the low cut still in it, NaN where absent: what noise is compared
   *     with
   * @param phaseDeg relative to the interpolated peak, −180 … 180 degrees, NaN where absent
   * @param octavesTogether how many octaves between 100 Hz and 16 kHz arrive with the peak
   * @param peakOffset the interpolated peak's place less the peak's index, samples, −0.5 … 0.5
   * @param packed the window's spectrum, the low cut still in it
   */
  record Measured(
      Curve level,
      double[] power,
      double[] phaseDeg,
      double octavesTogether,
      double peakOffset,
      double[] packed) {}

  Measured measure(double[] impulse, int peak) {
    double offset = peakOffset(impulse, peak);
    double[] packed = new double[fourier.length()];
    window.cut(impulse, peak, packed);
    fourier.forward(packed);
    return measured(packed, offset, lowCut);
  }

  /**
   * One response over another, bin by bin: the low cut, which is in both, goes out of itself. The
   * phase is relative to the two arrivals.
   */
  Measured ratio(Measured over, Measured under) {
    double[] packed = quotient(over.packed(), under.packed());
    return measured(packed, over.peakOffset() - under.peakOffset(), NO_CUT);
  }

  private Measured measured(double[] packed, double offset, Complex[] cut) {
    double binHz = sweep.rateHz() / packed.length;
    BandPower bands = new BandPower(Fourier.power(packed), binHz);
    double[] level = new double[Grid.POINTS];
    double[] power = new double[Grid.POINTS];
    double[] phase = new double[Grid.POINTS];
    for (int i = 0; i < Grid.POINTS; i++) {
      power[i] =
          reached[i] ? present(bands.mean(Grid.lowerEdge(i), Grid.upperEdge(i))) : Double.NaN;
      level[i] = 10 * Math.log10(power[i]) - 20 * Math.log10(cut[i].abs());
      phase[i] = reached[i] ? phase(packed, i, offset, cut[i]) : Double.NaN;
    }
    double together = octavesTogether(packed, binHz);
    return new Measured(Curve.of(level), power, phase, together, offset, packed);
  }

  /** Bins where nothing stands below the line carry nothing: only outside the sweep's range. */
  private static double[] quotient(double[] over, double[] under) {
    double[] result = new double[over.length];
    for (int k = 2; k < over.length; k += 2) {
      double power = under[k] * under[k] + under[k + 1] * under[k + 1];
      if (power > 0) {
        result[k] = (over[k] * under[k] + over[k + 1] * under[k + 1]) / power;
        result[k + 1] = (over[k + 1] * under[k] - over[k] * under[k + 1]) / power;
      }
    }
    return result;
  }

  private double phase(double[] packed, int i, double offset, Complex cut) {
    double bin = Grid.hz(i) * packed.length / sweep.rateHz();
    int k = (int) bin;
    double rest = bin - k;
    double re = packed[2 * k] * (1 - rest) + packed[2 * k + 2] * rest;
    double im = packed[2 * k + 1] * (1 - rest) + packed[2 * k + 3] * rest;
    double turn = 2 * Math.PI * Grid.hz(i) / sweep.rateHz() * offset;
    return Math.toDegrees(wrapped(Math.atan2(im, re) + turn - cut.getArgument()));
  }

  /** Power of exactly nothing has no level: absent. */
  private static double present(double power) {
    return power > 0 ? power : Double.NaN;
  }

  private double octavesTogether(double[] packed, double binHz) {
    int together = 0;
    for (int i = TOGETHER.firstIndex(); i <= TOGETHER.lastIndex(); i++) {
      double allowed = Math.max(TOGETHER_SECONDS, TOGETHER_PERIODS / Grid.hz(i));
      if (reached[i] && Math.abs(groupDelay(packed, binHz, i)) <= allowed) {
        together++;
      }
    }
    return together / 24.0;
  }

  /** −(1/2π)·dφ/df over a grid band, from the products of neighbouring bins; seconds. */
  private static double groupDelay(double[] packed, double binHz, int i) {
    double re = 0;
    double im = 0;
    int last = Math.min(packed.length / 2 - 2, (int) (Grid.upperEdge(i) / binHz));
    for (int k = (int) (Grid.lowerEdge(i) / binHz); k <= last; k++) {
      double a = packed[2 * k];
      double b = packed[2 * k + 1];
      double c = packed[2 * k + 2];
      double d = packed[2 * k + 3];
      re += a * c + b * d;
      im += a * d - b * c;
    }
    return -Math.atan2(im, re) / (2 * Math.PI * binHz);
  }

  private static Complex[] noCut() {
    Complex[] ones = new Complex[Grid.POINTS];
    Arrays.fill(ones, Complex.ONE);
    return ones;
  }

  private static double wrapped(double radians) {
    return Math.IEEEremainder(radians, 2 * Math.PI);
  }

  /** Vertex of the parabola through the peak and its neighbours. */
  private static double peakOffset(double[] impulse, int peak) {
    double sign = Math.signum(impulse[peak]);
    double before = sign * impulse[Math.floorMod(peak - 1, impulse.length)];
    double at = sign * impulse[peak];
    double after = sign * impulse[Math.floorMod(peak + 1, impulse.length)];
    double bend = before - 2 * at + after;
    return bend < 0 ? 0.5 * (before - after) / bend : 0;
  }
}
