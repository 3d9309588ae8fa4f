package evenpair.tolerance;

/**
 * How strongly the earphone is driven during the sweep: at its terminals, or in the digital stream
 * of a USB cable.
 */
public sealed interface Drive {
  /**
   * @param millivoltsRms voltage at the earphone's terminals for a sine as large as the sweep, mV
   *     r.m.s., above 0
   */
  record Voltage(double millivoltsRms) implements Drive {}

  /**
   * @param dbfs peak of the sweep re digital full scale, dB, at most 0
   */
  record Digital(double dbfs) implements Drive {}
}
