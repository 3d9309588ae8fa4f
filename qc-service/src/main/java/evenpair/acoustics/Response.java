package evenpair.acoustics;

/**
 * What one capture says about the path from stimulus to microphone.
 *
 * @param level 20·lg|H|, dB re FS/FS: power mean over each grid point's band; absent outside the
 *     sweep's range
 * @param phaseDeg 241 phases at the grid frequencies relative to the arrival, degrees in −180 …
 *     180, NaN where absent
 * @param signalToNoise |H|² against the lead-in's noise through the same inverse filter and window,
 *     dB; absent as level
 * @param arrivalSeconds when the sweep begins in the capture, seconds from the capture's start
 * @param delaySeconds arrival less the stimulus' own lead-in: how much later than played, below 0
 *     if the capture began later
 * @param peak the largest |sample| of the capture, re full scale
 */
public record Response(
    Curve level,
    double[] phaseDeg,
    Curve signalToNoise,
    double arrivalSeconds,
    double delaySeconds,
    double peak) {
  public Response {
    phaseDeg = phaseDeg.clone();
  }

  /**
   * @return a copy
   */
  @Override
  public double[] phaseDeg() {
    return phaseDeg.clone();
  }
}
