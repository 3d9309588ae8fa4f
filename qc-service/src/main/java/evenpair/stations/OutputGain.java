package evenpair.stations;

/**
 * Gain of a station's output, from a voltmeter's reading of a tone.
 *
 * @param voltsPerFullScale voltage (instantaneous, V) at the earphone's terminals for a sample of
 *     1.0
 */
record OutputGain(double voltsPerFullScale) {
  /** Least and largest that a headphone output can be, V: common practice, no source. */
  static final double LEAST_VOLTS = 0.01;

  static final double MOST_VOLTS = 100;

  /**
   * √2·V_rms/A, A = 10^(toneDbfs/20).
   *
   * @param toneDbfs peak of the tone that was played re full scale, dB, at most 0
   * @param readingMillivoltsRms what the meter showed, mV r.m.s., above 0
   */
  static OutputGain of(double toneDbfs, double readingMillivoltsRms) {
    return new OutputGain(Math.sqrt(2) * readingMillivoltsRms / 1000 / Math.pow(10, toneDbfs / 20));
  }

  /**
   * @return true if an output of this kind can have that gain
   */
  boolean plausible() {
    return voltsPerFullScale >= LEAST_VOLTS && voltsPerFullScale <= MOST_VOLTS;
  }

  /**
   * @return voltage of a sine whose peak is full scale, V r.m.s.
   */
  double fullScaleVoltsRms() {
    return voltsPerFullScale / Math.sqrt(2);
  }
}
