package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Smoothing;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything that one tuning of one product is judged by; immutable. The reader (module products)
 * checks each value and collects every problem before it builds one, so that the constructor
 * refuses only what no reader should let through.
 *
 * @param product the product's key, such as {@code sedge-2}
 * @param tuning the tuning's key, such as {@code plain}
 * @param version 1 upwards
 * @param earSimulator the type on which captures must be taken
 * @param golden file name of the golden response beside the set
 * @param drive how strongly the earphone is driven
 * @param smoothing applied alike to unit and golden before judging
 * @param level sensitivity and balance
 * @param regions in rising order, at least one
 * @param distortion limits by frequency span; may be empty
 * @param polarity whether both sides must be the right way round, and where that is looked at
 * @param idleNoiseDba highest A-weighted idle noise, dB(A), if limited
 * @param signalToNoiseDb lowest signal-to-noise ratio of the response in a region, dB
 * @param seating how many seatings are wanted and how bad ones are told
 * @param verificationDb how close the reference unit must come, dB
 * @param decision how a result near the limit is decided
 */
public record LimitSet(
    String product,
    String tuning,
    int version,
    EarSimulator earSimulator,
    String golden,
    Drive drive,
    Smoothing smoothing,
    LevelLimit level,
    List<Region> regions,
    List<DistortionLimit> distortion,
    PolarityRule polarity,
    OptionalDouble idleNoiseDba,
    double signalToNoiseDb,
    SeatingRules seating,
    double verificationDb,
    DecisionRule decision) {

  public LimitSet {
    regions = List.copyOf(regions);
    distortion = List.copyOf(distortion);
    if (regions.isEmpty()) {
      throw new IllegalArgumentException("a limit set needs at least one region");
    }
  }

  /** As the canonical constructor, with the plain polarity rule or none. */
  public LimitSet(
      String product,
      String tuning,
      int version,
      EarSimulator earSimulator,
      String golden,
      Drive drive,
      Smoothing smoothing,
      LevelLimit level,
      List<Region> regions,
      List<DistortionLimit> distortion,
      boolean polaritySame,
      OptionalDouble idleNoiseDba,
      double signalToNoiseDb,
      SeatingRules seating,
      double verificationDb,
      DecisionRule decision) {
    this(
        product,
        tuning,
        version,
        earSimulator,
        golden,
        drive,
        smoothing,
        level,
        regions,
        distortion,
        polaritySame ? PolarityRule.SAME : PolarityRule.NONE,
        idleNoiseDba,
        signalToNoiseDb,
        seating,
        verificationDb,
        decision);
  }

  /**
   * @return the same limits as another version
   */
  public LimitSet as(int otherVersion) {
    return new LimitSet(
        product,
        tuning,
        otherVersion,
        earSimulator,
        golden,
        drive,
        smoothing,
        level,
        regions,
        distortion,
        polarity,
        idleNoiseDba,
        signalToNoiseDb,
        seating,
        verificationDb,
        decision);
  }

  /**
   * @return true: both sides must be the right way round
   */
  public boolean polaritySame() {
    return polarity.same();
  }

  /**
   * @param band the alignment band: a_c is the median of L_c − G over it
   * @param lowest lowest allowed a_c, dB
   * @param highest highest allowed a_c, dB
   * @param balanceDb largest allowed |a_L − a_R|, dB, above 0
   */
  public record LevelLimit(Band band, double lowest, double highest, double balanceDb) {}

  /**
   * @param band excitation frequencies over which the limit holds
   * @param orders lowest and highest order for total harmonic distortion; empty for high-order
   *     distortion
   * @param thdPercent limit of THD_F in percent, if total harmonic distortion is limited
   * @param highOrderDb limit of high-order distortion re the fundamental in dB, if that is limited
   */
  public record DistortionLimit(
      Band band, Optional<Orders> orders, OptionalDouble thdPercent, OptionalDouble highOrderDb) {}

  /**
   * @param lowest first harmonic order, 2 upwards @param highest last one
   */
  public record Orders(int lowest, int highest) {}

  /**
   * @param same true: both sides must be the right way round
   * @param required false: a pair whose polarity cannot be told (a curve without phase, say) is
   *     reported as not judged instead of being INVALID
   * @param bands further bands, beside 100 Hz–1 kHz, in which a single driver may be reversed alone
   */
  public record PolarityRule(boolean same, boolean required, List<Band> bands) {
    /** Polarity is not looked at. */
    public static final PolarityRule NONE = new PolarityRule(false, false, List.of());

    /** Both sides the right way round in 100 Hz–1 kHz, and it must be told. */
    public static final PolarityRule SAME = new PolarityRule(true, true, List.of());

    public PolarityRule {
      bands = List.copyOf(bands);
    }
  }

  /**
   * @param count valid seatings wanted, 1 upwards
   * @param tries mountings allowed for them, not below count
   * @param leakDb a loss at 20–50 Hz above this looks like a leak, dB
   * @param depthPercent a shift of the canal's length-mode peak above this looks like a wrong
   *     depth, percent
   * @param depthSearch where that peak is looked for
   */
  public record SeatingRules(
      int count, int tries, double leakDb, double depthPercent, Band depthSearch) {}

  /**
   * @param guarded false: simple acceptance
   * @param guard guard band as a multiple of the expanded uncertainty U (k = 2); 0 when simple
   * @param acceptConditionalPass whether a result inside the guard band still passes
   */
  public record DecisionRule(boolean guarded, double guard, boolean acceptConditionalPass) {
    /**
     * @return true if a check in this state keeps the pair from passing
     */
    public boolean rejects(CheckState state) {
      return state == CheckState.FAIL
          || state == CheckState.CONDITIONAL_FAIL
          || state == CheckState.CONDITIONAL_PASS && !acceptConditionalPass;
    }
  }
}
