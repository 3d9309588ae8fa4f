package evenpair.inspections;

import evenpair.tolerance.MeasuredIdleNoise;
import evenpair.tolerance.MeasuredIdleNoise.Tone;
import java.util.List;
import java.util.Objects;

/**
 * Idle noise of one channel as stored.
 *
 * @param dba A-weighted level, dB(A) re 20 µPa
 * @param floorDba the station's own at that time; null if it was never measured
 * @param tones narrow tones, by frequency
 */
record StoredIdle(double dba, Double floorDba, List<Tone> tones) {
  StoredIdle {
    tones = List.copyOf(tones);
  }

  /**
   * Levels combine as the mean in dB, as those of the response do. The floor is the highest of the
   * seatings', so that a station that hummed once is not forgotten; unknown once is unknown. Tones
   * are the newest seating's.
   *
   * @param seatings one at least, in order
   */
  static MeasuredIdleNoise mean(List<StoredIdle> seatings) {
    double dba = seatings.stream().mapToDouble(StoredIdle::dba).average().orElseThrow();
    boolean known = seatings.stream().map(StoredIdle::floorDba).allMatch(Objects::nonNull);
    double floor =
        known
            ? seatings.stream().mapToDouble(StoredIdle::floorDba).max().orElseThrow()
            : Double.NaN;
    return new MeasuredIdleNoise(dba, floor, seatings.get(seatings.size() - 1).tones());
  }
}
