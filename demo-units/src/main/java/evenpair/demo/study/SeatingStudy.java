package evenpair.demo.study;

import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.acoustics.UnusableCapture;
import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Fault;
import evenpair.demo.earpiece.Mounting;
import evenpair.demo.earpiece.Seeds;
import evenpair.demo.earpiece.Sides;
import evenpair.demo.line.Bench;
import evenpair.demo.line.KnownBench;
import evenpair.demo.line.LineRecorder;
import evenpair.demo.line.PlainLimits;
import evenpair.statistics.Proportion;
import evenpair.tolerance.Channel;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.SeatingCheck;
import evenpair.tolerance.SeatingSuspicion;
import java.io.PrintStream;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;

/**
 * How often a bad seating is told from a bad unit: simulated pairs of sedge-2, each seated once
 * well and once badly (in turn a leak and a wrong depth, on a random side), and each once with a
 * weak bass driver and once with another fault on a good seating. Every seating is rendered as the
 * benches' microphones would record it, noise included, and analysed as the service does.
 */
public final class SeatingStudy {
  private static final int UNITS = 500;
  private static final long SEED = 5;
  private static final Design DESIGN = Design.SEDGE_2;

  /** Faults that change the response and must be judged, not mounted again. */
  private static final List<Fault> FAULTS =
      List.of(
          Fault.DEAD_TWEETER,
          Fault.DEAD_LOWER_TWEETER,
          Fault.SHIFTED_CROSSOVER,
          Fault.LOW_SENSITIVITY,
          Fault.MISMATCHED_PAIR);

  private final long seed;
  private final LineRecorder recorder;
  private final ResponseAnalyser analyser;
  private final SeatingCheck check;

  SeatingStudy(long seed) {
    Sweep sweep = Sweep.standard(48_000);
    this.seed = seed;
    this.recorder = new LineRecorder(new Samples(SweepSignal.render(sweep), sweep.rateHz()), seed);
    this.analyser = new ResponseAnalyser(sweep);
    this.check = SeatingCheck.of(PlainLimits.seating(DESIGN), PlainLimits.golden(DESIGN));
  }

  /**
   * @param args number of units (default 500) and seed (default 5); ends with exit code 1 if a bar
   *     is missed
   */
  public static void main(String[] args) {
    int units = args.length > 0 ? Integer.parseInt(args[0]) : UNITS;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : SEED;
    SeatingFigures figures = new SeatingStudy(seed).run(units);
    print(units, seed, figures, System.out);
    if (!figures.keepsItsBars()) {
      System.exit(1);
    }
  }

  private static void print(int units, long seed, SeatingFigures figures, PrintStream out) {
    out.println(
        units
            + " simulated units of "
            + DESIGN.product()
            + ", seed "
            + seed
            + "; intervals: Clopper and Pearson, 95 %");
    figures.print(out);
  }

  /** What was seen of one unit. */
  private record Seen(
      boolean leaked,
      boolean badCalled,
      boolean goodCalled,
      boolean weakCalled,
      boolean faultyCalled) {}

  /**
   * @param units how many pairs, each seated three times
   */
  SeatingFigures run(int units) {
    List<Seen> all = IntStream.range(0, units).parallel().mapToObj(this::see).toList();
    return new SeatingFigures(
        share(all.stream().filter(Seen::leaked).map(Seen::badCalled).toList()),
        share(all.stream().filter(seen -> !seen.leaked()).map(Seen::badCalled).toList()),
        share(all.stream().map(Seen::goodCalled).toList()),
        share(all.stream().map(Seen::weakCalled).toList()),
        share(all.stream().map(Seen::faultyCalled).toList()));
  }

  private static Proportion share(List<Boolean> called) {
    return new Proportion((int) called.stream().filter(c -> c).count(), called.size());
  }

  private Seen see(int number) {
    RandomGenerator random = new SplittableRandom(Seeds.of(seed, "seating", number));
    String serial = "SG2-%06d".formatted(number + 1);
    Channel side = random.nextBoolean() ? Channel.LEFT : Channel.RIGHT;
    Sides sides = DemoUnit.build(serial, "study", DESIGN, Fault.NONE, side, seed).sides();
    Fault fault = FAULTS.get(number % FAULTS.size());
    Sides faulty = DemoUnit.build(serial, "study", DESIGN, fault, side, seed).sides();
    boolean leaks = number % 2 == 0;
    Mounting careful = Mounting.careful(random);
    Mounting bad = leaks ? Seatings.leaking(random) : Seatings.misplaced(random);
    Seatings.Shelf shelf = Seatings.weakBass(random);
    Sides weak = sides.with(side, earpiece -> earpiece.weakBass(shelf.hz(), shelf.gainDb()));
    return new Seen(
        leaks,
        !suspicions(sides, number, side, bad, careful, "bad").isEmpty(),
        !suspicions(sides, number, side, Mounting.careful(random), careful, "good").isEmpty(),
        suspicions(weak, number, side, Mounting.careful(random), careful, "weak").stream()
            .anyMatch(suspicion -> suspicion.kind() == ReasonKind.LEAK),
        !suspicions(faulty, number, side, Mounting.careful(random), careful, "faulty").isEmpty());
  }

  private List<SeatingSuspicion> suspicions(
      Sides sides, int number, Channel side, Mounting there, Mounting other, String what) {
    Bench bench = Bench.LINE.get(number % 3);
    Mounting left = side == Channel.LEFT ? there : other;
    Mounting right = side == Channel.LEFT ? other : there;
    LineRecorder.PairCapture capture = recorder.seated(sides, bench, left, right, what, number);
    try {
      return check.examine(
          new KnownBench(bench, analyser).pair(capture, LineRecorder.PLAIN, DESIGN), List.of());
    } catch (UnusableCapture e) {
      throw new IllegalStateException(
          "unit " + number + " (" + what + ") gave a capture that cannot be used", e);
    }
  }
}
