package evenpair.tolerance;

import java.util.List;

/**
 * What one earpiece gives when nothing plays, as stored.
 *
 * @param dba A-weighted level, dB(A) re 20 µPa
 * @param floorDba the station's own A-weighted level with no earpiece on, dB(A); NaN where the
 *     station has none stored: then the level cannot be told from the station's and is not judged
 * @param tones narrow tones found in it, by frequency
 */
public record MeasuredIdleNoise(double dba, double floorDba, List<Tone> tones) {
  /**
   * @throws IllegalArgumentException if the level is not finite, or the floor infinite
   */
  public MeasuredIdleNoise {
    if (!Double.isFinite(dba) || Double.isInfinite(floorDba)) {
      throw new IllegalArgumentException(
          "idle noise must be finite, was " + dba + " over a floor of " + floorDba + " dB(A)");
    }
    tones = List.copyOf(tones);
  }

  /**
   * @param hz its frequency
   * @param levelDb dB above the median of its ± 1/3 octave
   * @param usbFrame true: it lies on a multiple of 1 kHz, where USB frames and micro-frames sound
   */
  public record Tone(double hz, double levelDb, boolean usbFrame) {}

  /**
   * @return the frequencies in hertz of the tones that point to USB frames
   */
  public List<Double> usbFrameLines() {
    return tones.stream().filter(Tone::usbFrame).map(Tone::hz).toList();
  }
}
