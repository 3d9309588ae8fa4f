package evenpair.demo.earpiece;

import static evenpair.demo.earpiece.Section.firstOrderHighPass;
import static evenpair.demo.earpiece.Section.highPass;
import static evenpair.demo.earpiece.Section.lowPass;

import evenpair.acoustics.EarSimulator;
import java.util.List;

/**
 * The two invented products as their designer drew them: every driver, every crossover, nominal
 * sensitivity.
 */
public enum Design {
  /**
   * Two dynamic drivers for the bass, two balanced armatures for mid and presence, two planar
   * tweeters. The armature for the mid range and the lower tweeter are wired the other way round so
   * that neighbouring branches add up at their crossovers.
   */
  SEDGE_2("sedge-2", EarSimulator.IEC_60318_4, 180, 97) {
    @Override
    Earpiece uncalibrated() {
      return new Earpiece(
          List.of(
              Driver.of("dynamic 1", 1.25, lowPass(300, 0.55), lowPass(2200, 1.0)),
              Driver.of("dynamic 2", 1.25, lowPass(321, 0.55), lowPass(1900, 0.9)),
              Driver.of(MID_ARMATURE, -1.0, firstOrderHighPass(380), lowPass(2750, 1.9)),
              Driver.of(UPPER_ARMATURE, 0.80, highPass(2100, 0.7), lowPass(4300, 1.1)),
              Driver.of(LOWER_TWEETER, -0.34, highPass(6000, 0.75), lowPass(15_000, 0.9)),
              Driver.of(
                  UPPER_TWEETER,
                  0.50,
                  highPass(10_500, 0.8),
                  highPass(9500, 0.7),
                  lowPass(21_000, 1.0))),
          new Canal(8000, 0.22),
          4,
          1,
          Motion.soft(350, 0.022, 0.09));
    }
  },
  /**
   * One dynamic driver behind a damping cloth, measured on a 2 cm³ coupler, whose short tube has
   * its mode far up.
   */
  REED_1("reed-1", EarSimulator.IEC_60318_5, 126, 96) {
    @Override
    Earpiece uncalibrated() {
      return new Earpiece(
          List.of(Driver.of("dynamic 1", 1, lowPass(3300, 1.5), lowPass(15_000, 0.7))),
          new Canal(13_500, 0.35),
          16,
          1,
          Motion.soft(900, 0.03, 0.15));
    }
  };

  static final String MID_ARMATURE = "mid armature";
  static final String UPPER_ARMATURE = "upper armature";
  static final String LOWER_TWEETER = "lower tweeter";
  static final String UPPER_TWEETER = "upper tweeter";

  private final String product;
  private final EarSimulator earSimulator;
  private final double millivoltsRms;
  private final double levelAtOneKilohertzDb;

  Design(
      String product,
      EarSimulator earSimulator,
      double millivoltsRms,
      double levelAtOneKilohertzDb) {
    this.product = product;
    this.earSimulator = earSimulator;
    this.millivoltsRms = millivoltsRms;
    this.levelAtOneKilohertzDb = levelAtOneKilohertzDb;
  }

  abstract Earpiece uncalibrated();

  /**
   * @return the product's key in limits/
   */
  public String product() {
    return product;
  }

  /**
   * @return the type of ear simulator on which it is measured
   */
  public EarSimulator earSimulator() {
    return earSimulator;
  }

  /**
   * @return voltage at the terminals at which it is measured, mV r.m.s.
   */
  public double millivoltsRms() {
    return millivoltsRms;
  }

  /**
   * @return one side of a perfect unit
   */
  public Earpiece nominal() {
    return uncalibrated().calibrated(millivoltsRms, levelAtOneKilohertzDb);
  }
}
