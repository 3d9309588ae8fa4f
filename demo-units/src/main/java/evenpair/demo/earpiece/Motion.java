package evenpair.demo.earpiece;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How the moving part of the dynamic drivers departs from a straight line. Its excursion x follows
 * the voltage through a second-order low-pass (x is given in volts: the constant voltage that would
 * move it as far). What it radiates beside the linear sound is square·x² + cube·x³, and, where
 * something stands in its way, rattle·max(0, x − stop) above {@value #RATTLE_FROM_HZ} Hz: a loose
 * part is small and hardly moves air at low frequencies.
 *
 * @param resonanceHz above it the excursion falls by 12 dB an octave
 * @param square 1/V; the second harmonic is square·x̂/2 re the linear sound
 * @param cube 1/V²; the third harmonic is cube·x̂²/4
 * @param stop excursion at which it touches, V
 * @param rattle how hard it touches; 0: nothing stands in its way
 */
public record Motion(double resonanceHz, double square, double cube, double stop, double rattle) {
  private static final double RATTLE_FROM_HZ = 4000;

  /** A good driver that only bends a little. */
  static Motion soft(double resonanceHz, double square, double cube) {
    return new Motion(resonanceHz, square, cube, Double.POSITIVE_INFINITY, 0);
  }

  /**
   * @return the same moving part, bent that many times as much
   */
  Motion bent(double times) {
    return new Motion(resonanceHz, square * times, cube * times, stop, rattle);
  }

  /**
   * @return the same moving part with something in its way
   */
  Motion touching(double stopVolts, double hardness) {
    return new Motion(resonanceHz, square, cube, stopVolts, hardness);
  }

  /**
   * @return its numbers, for the record
   */
  Map<String, Object> truth() {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("squarePerVolt", square);
    facts.put("cubePerVoltSquared", cube);
    facts.put("stopVolts", rattles() ? stop : null);
    facts.put("rattle", rattle);
    return facts;
  }

  /**
   * @return x over the voltage
   */
  public Phasors excursion(double[] hz) {
    return Section.lowPass(resonanceHz, 0.6).applyTo(Phasors.constant(hz, 1));
  }

  /**
   * @return true if something stands in its way
   */
  public boolean rattles() {
    return rattle != 0;
  }

  /**
   * The soft part: of third order at most, and of an excursion that has next to nothing above a few
   * kilohertz, so that it needs no higher sample rate.
   *
   * @param x excursion in V
   * @return square·x² + cube·x³, V
   */
  public double softly(double x) {
    return (square + cube * x) * x * x;
  }

  /**
   * The hard part: has harmonics without end, to be computed at a higher sample rate.
   *
   * @param x excursion in V
   * @return rattle·max(0, x − stop), V, before {@link #rattling}
   */
  public double hard(double x) {
    return x > stop ? rattle * (x - stop) : 0;
  }

  /**
   * @return what the loose part makes of {@link #hard}: a second-order high-pass
   */
  public Phasors rattling(double[] hz) {
    return Section.highPass(RATTLE_FROM_HZ, 0.7).applyTo(Phasors.constant(hz, 1));
  }
}
