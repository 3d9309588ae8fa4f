package evenpair.captures;

import evenpair.acoustics.Samples;
import java.util.List;

/**
 * A decoded WAV file.
 *
 * @param channels one to eight channels of equal length, full scale ±1
 * @param bitsPerSample as stored: 8, 16, 24, 32
 * @param floatingPoint true for IEEE float samples
 */
public record WavAudio(List<Samples> channels, int bitsPerSample, boolean floatingPoint) {
  public WavAudio {
    channels = List.copyOf(channels);
  }

  /**
   * @return samples a second
   */
  public double rateHz() {
    return channels.get(0).rateHz();
  }
}
