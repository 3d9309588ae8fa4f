package evenpair.acoustics;

/**
 * The electrical drive of one recording, checked and analysed once for all microphones that were
 * recorded beside it. Made by {@link ResponseAnalyser#drive}.
 */
public final class Drive {
  private final ResponseSpectrum.Measured response;
  private final Curve signalToNoise;
  private final double arrivalSeconds;

  Drive(ResponseSpectrum.Measured response, Curve signalToNoise, double arrivalSeconds) {
    this.response = response;
    this.signalToNoise = signalToNoise;
    this.arrivalSeconds = arrivalSeconds;
  }

  ResponseSpectrum.Measured response() {
    return response;
  }

  /**
   * @return 20·lg of drive over stimulus, dB re FS/FS; absent outside the sweep's range
   */
  public Curve level() {
    return response.level();
  }

  /**
   * @return as for a response, dB
   */
  public Curve signalToNoise() {
    return signalToNoise;
  }

  /**
   * @return when the sweep begins in the drive's channel, seconds from the recording's start
   */
  public double arrivalSeconds() {
    return arrivalSeconds;
  }
}
