package evenpair.demo.line;

import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Fault;
import evenpair.tolerance.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A batch of simulated pairs in production order.
 *
 * @param name such as {@code SW-2647}
 * @param design the product
 * @param units its pairs
 */
public record DemoBatch(String name, Design design, List<DemoUnit> units) {
  private static final long SEED = 2647;

  /** Place of the first pair of batch SW-2650 with tweeters from another lot, 1 upwards. */
  public static final int LOT_CHANGE = 31;

  /** How much louder those tweeters are, dB. */
  public static final double LOT_DB = 1.0;

  /** A fault and the side it is on. */
  private record Planned(Fault fault, Channel side) {}

  private static final Map<Integer, Planned> SEDGE_FAULTS =
      Map.ofEntries(
          Map.entry(2, new Planned(Fault.USB_FRAME_NOISE, Channel.LEFT)),
          Map.entry(4, new Planned(Fault.DEAD_TWEETER, Channel.RIGHT)),
          Map.entry(6, new Planned(Fault.BUZZING_DRIVER, Channel.LEFT)),
          Map.entry(7, new Planned(Fault.LOW_SENSITIVITY, Channel.LEFT)),
          Map.entry(9, new Planned(Fault.NEVER_SEALS, Channel.LEFT)),
          Map.entry(11, new Planned(Fault.CLIPPED_CAPTURE, Channel.LEFT)),
          Map.entry(13, new Planned(Fault.SWAPPED_POLARITY, Channel.LEFT)),
          Map.entry(16, new Planned(Fault.LEAKY_SEAT, Channel.RIGHT)),
          Map.entry(19, new Planned(Fault.MISMATCHED_PAIR, Channel.LEFT)),
          Map.entry(22, new Planned(Fault.NOISY_CAPTURE, Channel.LEFT)),
          Map.entry(24, new Planned(Fault.SHIFTED_CROSSOVER, Channel.RIGHT)),
          Map.entry(26, new Planned(Fault.WEAK_BASS, Channel.RIGHT)),
          Map.entry(28, new Planned(Fault.DEAD_LOWER_TWEETER, Channel.LEFT)),
          Map.entry(31, new Planned(Fault.DISTORTED_DRIVER, Channel.RIGHT)),
          Map.entry(33, new Planned(Fault.DEEP_SEAT, Channel.LEFT)),
          Map.entry(38, new Planned(Fault.MISMATCHED_PAIR, Channel.RIGHT)));

  private static final Map<Integer, Planned> REED_FAULTS =
      Map.of(
          3, new Planned(Fault.LOW_SENSITIVITY, Channel.RIGHT),
          5, new Planned(Fault.SWAPPED_POLARITY, Channel.RIGHT));

  private static final Map<Integer, Planned> LOT_FAULTS =
      Map.of(
          18, new Planned(Fault.LOW_SENSITIVITY, Channel.RIGHT),
          55, new Planned(Fault.WEAK_BASS, Channel.LEFT));

  private static final Map<Integer, Planned> SPARE_FAULTS =
      Map.of(
          2,
          new Planned(Fault.DEAD_TWEETER, Channel.RIGHT),
          3,
          new Planned(Fault.MISMATCHED_PAIR, Channel.LEFT));

  public DemoBatch {
    units = List.copyOf(units);
  }

  /**
   * @return batch SW-2647: forty pairs of sedge-2, each kind of fault at least once
   */
  public static DemoBatch sedge() {
    return planned("SW-2647", Design.SEDGE_2, "SG2-004200", 40, SEDGE_FAULTS);
  }

  /**
   * @return batch SW-2651: six pairs of reed-1
   */
  public static DemoBatch reed() {
    return planned("SW-2651", Design.REED_1, "RD1-000300", 6, REED_FAULTS);
  }

  /**
   * @return batch SW-2650: seventy-two pairs of sedge-2, of which those from {@link #LOT_CHANGE} on
   *     have tweeters from another lot, {@link #LOT_DB} louder: too little for any window
   */
  public static DemoBatch lotChange() {
    DemoBatch steady = planned("SW-2650", Design.SEDGE_2, "SG2-004400", 72, LOT_FAULTS);
    List<DemoUnit> units = new ArrayList<>(steady.units());
    for (int place = LOT_CHANGE; place <= units.size(); place++) {
      units.set(place - 1, units.get(place - 1).withTweetersOf(LOT_DB));
    }
    return new DemoBatch(steady.name(), steady.design(), units);
  }

  /**
   * @return batch SW-2648: three pairs of sedge-2 whose captures are left as files for trying the
   *     Bench screen by hand
   */
  public static DemoBatch spare() {
    return planned("SW-2648", Design.SEDGE_2, "SG2-004300", 3, SPARE_FAULTS);
  }

  /**
   * @return the pair that the line keeps for its swap studies on benches of that design's simulator
   */
  public static DemoUnit reference(Design design) {
    String serial = "REF-" + (design.ordinal() + 1);
    return DemoUnit.build(serial, "reference", design, Fault.NONE, Channel.LEFT, SEED);
  }

  /**
   * @return three pairs that a gauge study measures again and again
   */
  public static List<DemoUnit> gaugeParts(Design design) {
    return planned(
            "gauge", design, design == Design.SEDGE_2 ? "SG2-009000" : "RD1-009000", 3, Map.of())
        .units();
  }

  /**
   * @return the same batch with these of its units only, by their place (1 upwards)
   */
  public DemoBatch only(int... places) {
    List<DemoUnit> chosen = new ArrayList<>();
    for (int place : places) {
      chosen.add(units.get(place - 1));
    }
    return new DemoBatch(name, design, chosen);
  }

  private static DemoBatch planned(
      String name, Design design, String base, int count, Map<Integer, Planned> faults) {
    List<DemoUnit> units = new ArrayList<>();
    for (int place = 1; place <= count; place++) {
      Planned planned = faults.getOrDefault(place, new Planned(Fault.NONE, Channel.LEFT));
      units.add(
          DemoUnit.build(serial(base, place), name, design, planned.fault(), planned.side(), SEED));
    }
    return new DemoBatch(name, design, units);
  }

  private static String serial(String base, int place) {
    String prefix = base.substring(0, 4);
    return prefix + "%06d".formatted(Integer.parseInt(base.substring(4)) + place);
  }
}
