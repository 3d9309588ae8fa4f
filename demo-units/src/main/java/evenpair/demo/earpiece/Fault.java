package evenpair.demo.earpiece;

import static evenpair.demo.earpiece.Design.LOWER_TWEETER;
import static evenpair.demo.earpiece.Design.MID_ARMATURE;
import static evenpair.demo.earpiece.Design.UPPER_ARMATURE;
import static evenpair.demo.earpiece.Design.UPPER_TWEETER;

import evenpair.tolerance.Channel;

/**
 * What is known to be wrong with a simulated unit, or with its first capture, and what a station
 * should make of it.
 */
public enum Fault {
  NONE("good unit", Expected.PASS),
  /** The upper of two tweeters is silent. */
  DEAD_TWEETER("dead upper tweeter", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, earpiece -> earpiece.with(UPPER_TWEETER, Driver::dead));
    }
  },
  DEAD_LOWER_TWEETER("dead lower tweeter", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, earpiece -> earpiece.with(LOWER_TWEETER, Driver::dead));
    }
  },
  SWAPPED_POLARITY("swapped polarity", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, Earpiece::reversed);
    }
  },
  /** A wrong value in the crossover between the two armatures. */
  SHIFTED_CROSSOVER("shifted crossover", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(
          side, earpiece -> earpiece.with(UPPER_ARMATURE, driver -> driver.crossedOverAt(0.55)));
    }
  },
  LOW_SENSITIVITY("low sensitivity", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, earpiece -> earpiece.louder(-2.8));
    }
  },
  /** Each side keeps its windows, but their armatures come from opposite ends of the lot. */
  MISMATCHED_PAIR("mismatched pair", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, earpiece -> armatures(earpiece, 0.25, 1.3))
          .with(side.other(), earpiece -> armatures(earpiece, -0.25, -1.3));
    }
  },
  /** A weak magnet: less bass on one side, which must not be taken for a leak. */
  WEAK_BASS("weak bass", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, earpiece -> earpiece.weakBass(180, -5));
    }
  },
  /** A voice coil that touches: high harmonics in the bass. */
  BUZZING_DRIVER("buzzing driver", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, earpiece -> earpiece.moving(motion -> motion.touching(0.1, 1)));
    }
  },
  /** A torn surround: low harmonics ten times as strong as they should be. */
  DISTORTED_DRIVER("distorted driver", Expected.FAIL) {
    @Override
    Sides in(Sides good, Channel side) {
      return good.with(side, earpiece -> earpiece.moving(motion -> motion.bent(12)));
    }
  },
  /** Earpieces good, USB cable badly filtered: its frames are heard while nothing plays. */
  USB_FRAME_NOISE("USB frame noise", Expected.FAIL),
  /** A bent nozzle: one eartip never seals, however often it is mounted. */
  NEVER_SEALS("never seals", Expected.FAIL),
  /** The unit is good; one eartip does not seal in the first mounting. */
  LEAKY_SEAT("leaky seat", Expected.RESEAT_THEN_PASS),
  /** The unit is good; one earpiece is pushed in too far in the first mounting. */
  DEEP_SEAT("seated too deep", Expected.RESEAT_THEN_PASS),
  /** The unit is good; somebody moved the microphones' gain before the first capture. */
  CLIPPED_CAPTURE("clipped capture", Expected.INVALID_THEN_PASS),
  /** The unit is good; a compressor ran beside the bench during the first capture. */
  NOISY_CAPTURE("noisy capture", Expected.INVALID_THEN_PASS);

  /** What a unit with this fault should come to. */
  public enum Expected {
    PASS,
    FAIL,
    /** The first mounting is refused; the second one passes. */
    RESEAT_THEN_PASS,
    /** The first capture cannot be judged; the second one passes. */
    INVALID_THEN_PASS
  }

  private final String label;
  private final Expected expected;

  Fault(String label, Expected expected) {
    this.label = label;
    this.expected = expected;
  }

  /**
   * @return the pair with the fault built in on that side; unchanged where only the capture is at
   *     fault
   */
  Sides in(Sides good, Channel side) {
    return good;
  }

  /**
   * @return a few words for tables
   */
  public String label() {
    return label;
  }

  public Expected expected() {
    return expected;
  }

  private static Earpiece armatures(Earpiece earpiece, double midDb, double upperDb) {
    return earpiece
        .with(MID_ARMATURE, driver -> driver.louder(midDb))
        .with(UPPER_ARMATURE, driver -> driver.louder(upperDb));
  }
}
