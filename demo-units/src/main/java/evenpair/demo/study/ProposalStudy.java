package evenpair.demo.study;

import evenpair.demo.study.SimulatedPopulation.Kind;
import evenpair.statistics.CoverageRank;
import evenpair.statistics.Proportion;
import evenpair.statistics.Proportion.Interval;
import evenpair.tolerance.FlatJudge;
import evenpair.tolerance.FlatJudge.Outcome;
import evenpair.tolerance.LimitProposal;
import evenpair.tolerance.LimitProposal.Scaled;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.PairTable;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How often proposed limits keep their promise: from populations that are known, units are drawn,
 * limits proposed, and the yield of these limits read off many further units of the same
 * population. The share of repetitions whose true yield reaches the wanted one must come near the
 * confidence.
 */
public final class ProposalStudy {
  /** The computation's bar for 400 repetitions at a confidence of 0.95. */
  static final double BAR = 0.925;

  private static final int EVALUATED = 20_000;

  /** As many of them without limits drawn around, which goes slower. */
  private static final int BARE_EVALUATED = 10_000;

  private final int repetitions;
  private final int units;
  private final CoverageRank wanted;

  ProposalStudy(int repetitions, int units, CoverageRank wanted) {
    this.repetitions = repetitions;
    this.units = units;
    this.wanted = wanted;
  }

  /**
   * @param args repetitions, units in each, seed; exits with 1 if a bar is missed
   */
  public static void main(String[] args) {
    ProposalStudy study =
        new ProposalStudy(
            Integer.parseInt(args[0]), Integer.parseInt(args[1]), new CoverageRank(0.98, 0.95));
    long seed = Long.parseLong(args[2]);
    System.out.printf(
        Locale.ROOT,
        "%d repetitions of %d units, yield %.2f at confidence %.2f, seed %d%n",
        study.repetitions,
        study.units,
        study.wanted.share(),
        study.wanted.confidence(),
        seed);
    boolean kept = true;
    for (Kind kind : Kind.values()) {
      Reached reached = study.reached(kind, seed);
      kept &= study.print(kind + ", m ± t·s itself", reached.bare());
      kept &= study.print(kind + ", limits by region, outward to 0.1 dB", reached.drawn());
    }
    if (!kept) {
      System.exit(1);
    }
  }

  private boolean print(String what, int kept) {
    Proportion share = new Proportion(kept, repetitions);
    Interval interval = share.clopperPearson(0.95);
    System.out.printf(
        Locale.ROOT,
        "%s: promise kept in %d of %d, %.3f (%.3f to %.3f), bar %.3f%n",
        what,
        kept,
        repetitions,
        share.share(),
        interval.lower(),
        interval.upper(),
        BAR);
    return share.share() >= BAR;
  }

  /**
   * In how many repetitions the true yield reaches the wanted one.
   *
   * @param bare of m ± t·s point by point, which has nothing to spare
   * @param drawn of the limits drawn around it, which have
   */
  record Reached(int bare, int drawn) {}

  Reached reached(Kind kind, long seed) {
    SimulatedPopulation population = new SimulatedPopulation(kind);
    PairTable judged = population.draw(EVALUATED, seed ^ 0x5eedL);
    int bare = 0;
    int drawn = 0;
    for (int repetition = 0; repetition < repetitions; repetition++) {
      LimitProposal proposal = proposal(population.draw(units, seed * 1_000_003 + repetition));
      double scale = scale(proposal);
      LimitSet limits = proposal.limits(scale, Scaled.ALL, List.of(Optional.empty()), 2);
      bare += within(proposal, scale, judged) >= wanted.share() ? 1 : 0;
      drawn += yieldOf(limits, judged) >= wanted.share() ? 1 : 0;
    }
    return new Reached(bare, drawn);
  }

  /** Units are drawn at random, so that the first half is as good as one by a hash. */
  private LimitProposal proposal(PairTable drawn) {
    return new LimitProposal(
        SimulatedPopulation.SET, drawn, IntStream.range(0, units / 2).toArray());
  }

  private double scale(LimitProposal proposal) {
    return proposal
        .scale(IntStream.range(units / 2, units).toArray(), wanted, Scaled.ALL)
        .orElseThrow(
            () -> new IllegalArgumentException(units + " units are too few for the promise"));
  }

  private static double within(LimitProposal proposal, double scale, PairTable units) {
    int[] rows = IntStream.range(0, BARE_EVALUATED).toArray();
    double[] numbers = proposal.numbers(units, rows, Scaled.ALL);
    return (double) Arrays.stream(numbers).filter(number -> number <= scale).count() / rows.length;
  }

  private static double yieldOf(LimitSet limits, PairTable units) {
    Outcome outcome =
        new FlatJudge(limits, SimulatedPopulation.GOLDEN, List.of(Optional.empty())).judge(units);
    int passed = 0;
    for (byte state : outcome.state) {
      // a pair on a limit counts half: 32 bits do not tell
      passed += state == Outcome.PASS ? 2 : state == Outcome.NEAR ? 1 : 0;
    }
    return passed / 2.0 / units.rows();
  }
}
