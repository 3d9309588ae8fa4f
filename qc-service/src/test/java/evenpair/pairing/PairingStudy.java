package evenpair.pairing;

import com.sun.management.OperatingSystemMXBean;
import evenpair.acoustics.Curve;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.tolerance.Channel;
import evenpair.tolerance.PairFit;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;

/**
 * How long a large pool takes, from levels to stored-ready pairs: every cost and the assignment.
 * Three populations, from one in which nearly every pair keeps its limits to one in which hardly
 * any does, and a pool with fewer rights than lefts. Fails if one of them misses the bar, which
 * counts processor time: on a machine that has nothing else to do no pool takes longer than that.
 */
final class PairingStudy {
  private static final double BAR_SECONDS = 10;

  private PairingStudy() {}

  /** Arguments: earpieces of a side, seed. */
  public static void main(String[] args) {
    int n = Integer.parseInt(args[0]);
    long seed = Long.parseLong(args[1]);
    System.out.printf(
        "earpieces %d a side, seed %d, cores %d%n",
        n, seed, Runtime.getRuntime().availableProcessors());
    System.out.println(
        "spread dB; lefts; rights; feasible share; own checks s; costs and assignment s; processor s; as built; proposed");
    boolean kept = true;
    for (double spread : new double[] {0.1, 0.25, 0.4, 0.8}) {
      kept &= run(spread, n, n, seed);
    }
    kept &= run(0.25, n, n * 9 / 10, seed);
    if (!kept) {
      throw new IllegalStateException(
          "a pool took more than " + BAR_SECONDS + " s of processor time");
    }
  }

  private static boolean run(double spread, int lefts, int rights, long seed) {
    PairFit fit = LoosePool.fit(false);
    List<InspectedPair> units = units(spread, Math.max(lefts, rights), seed);
    double before = processor();
    long start = System.nanoTime();
    List<Loose> left = LoosePool.side(fit, units.subList(0, lefts), Channel.LEFT);
    List<Loose> right = LoosePool.side(fit, units.subList(0, rights), Channel.RIGHT);
    double own = since(start);
    start = System.nanoTime();
    Regrouping made = Regrouping.of(fit, left, right);
    double seconds = since(start);
    double processor = processor() - before;
    System.out.printf(
        Locale.ROOT,
        "%.2f; %d; %d; %.3f; %.2f; %.2f; %.2f; %d; %d%n",
        spread,
        lefts,
        rights,
        feasible(fit, left, right),
        own,
        seconds,
        processor,
        made.asBuiltFeasible(),
        made.pairs().size());
    return processor < BAR_SECONDS;
  }

  private static double feasible(PairFit fit, List<Loose> left, List<Loose> right) {
    int feasible = 0;
    for (int cost : new PairCosts(fit, left, right).all()) {
      feasible += cost == Assignment.INFEASIBLE ? 0 : 1;
    }
    return (double) feasible / left.size() / right.size();
  }

  private static List<InspectedPair> units(double spread, int n, long seed) {
    Random random = new Random(seed);
    List<InspectedPair> units = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Curve left = LoosePool.curve(random, spread);
      Curve right = LoosePool.curve(random, spread);
      units.add(LoosePool.unit("SG2-%06d".formatted(i), "bench-1", left, right, Optional.empty()));
    }
    return units;
  }

  /** Of all threads: what the pool takes, whatever else the machine has to do. */
  private static double processor() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime()
        / 1e9;
  }

  private static double since(long start) {
    return (System.nanoTime() - start) / 1e9;
  }
}
