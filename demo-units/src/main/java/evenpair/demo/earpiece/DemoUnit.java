package evenpair.demo.earpiece;

import evenpair.tolerance.Channel;
import java.util.SplittableRandom;

/**
 * One simulated pair and the truth about it.
 *
 * @param serial its serial number
 * @param batch the batch it was made in
 * @param design the product it was meant to be
 * @param fault what is wrong with it
 * @param side on which side (for a good unit without meaning)
 * @param sides its two earpieces
 */
public record DemoUnit(
    String serial, String batch, Design design, Fault fault, Channel side, Sides sides) {
  /**
   * Builds the pair: nominal design, the unit's own spread, each side's spread, then the fault.
   *
   * @param seed the same seed and serial give the same pair
   */
  public static DemoUnit build(
      String serial, String batch, Design design, Fault fault, Channel side, long seed) {
    Earpiece unit =
        Spread.unit(design.nominal(), new SplittableRandom(Seeds.of(seed, serial, "unit")));
    Sides good =
        new Sides(
            Spread.side(unit, new SplittableRandom(Seeds.of(seed, serial, "left"))),
            Spread.side(unit, new SplittableRandom(Seeds.of(seed, serial, "right"))));
    return new DemoUnit(serial, batch, design, fault, side, fault.in(good, side));
  }

  /**
   * @param db how much louder the tweeters of that lot are, on both sides
   * @return the same pair with tweeters from another lot
   */
  public DemoUnit withTweetersOf(double db) {
    return new DemoUnit(
        serial,
        batch,
        design,
        fault,
        side,
        new Sides(tweeters(sides.left(), db), tweeters(sides.right(), db)));
  }

  private static Earpiece tweeters(Earpiece earpiece, double db) {
    return earpiece
        .with(Design.LOWER_TWEETER, driver -> driver.louder(db))
        .with(Design.UPPER_TWEETER, driver -> driver.louder(db));
  }
}
