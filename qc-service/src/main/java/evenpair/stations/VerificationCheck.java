package evenpair.stations;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.stations.VerificationRow.RegionCheck;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import java.util.ArrayList;
import java.util.List;

/**
 * Compares a reference unit with its certified curves. Pure.
 *
 * <p>Both curves are smoothed as the set says. A region repeats if the mean of measured less
 * certified over its grid points is at most {@code verification-db} away from 0: a mean tells a
 * moved gain, simulator or microphone from the seating's own ripple at single frequencies. The
 * largest single difference is given too, for information.
 */
final class VerificationCheck {
  private VerificationCheck() {}

  /**
   * @return each region of the left channel, then of the right one; a region where either curve has
   *     no data is not judged
   */
  static List<RegionCheck> compare(MeasuredSides measured, MeasuredSides certified, LimitSet set) {
    List<RegionCheck> checks = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      Curve deviation =
          set.smoothing()
              .apply(measured.level(channel))
              .minus(set.smoothing().apply(certified.level(channel)));
      for (Region region : set.regions()) {
        checks.add(check(channel, region, deviation, set.verificationDb()));
      }
    }
    return checks;
  }

  private static RegionCheck check(
      Channel channel, Region region, Curve deviation, double limitDb) {
    Band band = region.band();
    if (band.points() == 0 || !deviation.covers(band)) {
      // a required region without data has been refused before: nothing is passed unseen
      return new RegionCheck(channel, region.name(), null, null, null, !region.required());
    }
    int farthest = band.firstIndex();
    for (int i = farthest; i <= band.lastIndex(); i++) {
      if (Math.abs(deviation.at(i)) > Math.abs(deviation.at(farthest))) {
        farthest = i;
      }
    }
    double mean = deviation.mean(band);
    return new RegionCheck(
        channel,
        region.name(),
        mean,
        deviation.at(farthest),
        Grid.hz(farthest),
        Math.abs(mean) <= limitDb);
  }
}
