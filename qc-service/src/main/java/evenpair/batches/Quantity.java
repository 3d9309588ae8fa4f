package evenpair.batches;

import java.util.Locale;

/** One number of a unit that is followed over a batch, in dB. */
enum Quantity {
  /** Mean over a region's points of a channel's deviation d. */
  REGION_MEAN(true, true),
  /** Least distance of d to the upper edge of a region's window, over its points. */
  BELOW_UPPER(true, true),
  /** Least distance of d to the lower edge of a region's window, over its points. */
  ABOVE_LOWER(true, true),
  /** The lesser of the two: the window's margin, at its worst point. */
  MARGIN(true, true),
  /** Mean over a region's points of left − right. */
  DIFFERENCE_MEAN(true, false),
  /** Least distance of |left − right| to a region's match limit. */
  MATCH_MARGIN(true, false),
  /** A channel's level against golden, a. */
  LEVEL(false, true),
  /** Left level less right level. */
  BALANCE(false, false);

  private final boolean ofRegion;
  private final boolean ofChannel;

  Quantity(boolean ofRegion, boolean ofChannel) {
    this.ofRegion = ofRegion;
    this.ofChannel = ofChannel;
  }

  boolean ofRegion() {
    return ofRegion;
  }

  boolean ofChannel() {
    return ofChannel;
  }

  /**
   * @return as addresses and JSON write it: {@code region-mean}
   */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
