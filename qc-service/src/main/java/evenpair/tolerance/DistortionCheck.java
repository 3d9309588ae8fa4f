package evenpair.tolerance;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.Findings.Rank;
import evenpair.tolerance.LimitSet.DistortionLimit;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * One distortion limit: total harmonic distortion over the orders asked, or high-order distortion,
 * at every grid point of its span, for each channel. Decided simply.
 *
 * <p>A point without data, with the limit within 6 dB of the noise floor, or over the limit only by
 * what cannot be told from noise (within 10 dB of its own floor) is not judged: then the pair
 * cannot pass, but a point that is over the limit still fails it.
 */
final class DistortionCheck implements Check {
  /** So far above the floor must a limit lie to be judged (common practice, simulated). */
  private static final double LIMIT_ABOVE_FLOOR_DB = 6;

  private final DistortionLimit limit;
  private final String span;
  private final boolean harmonic;

  DistortionCheck(DistortionLimit limit) {
    this.limit = limit;
    this.harmonic = limit.thdPercent().isPresent();
    this.span = label(limit.band().fromHz()) + "–" + label(limit.band().toHz()) + " Hz";
  }

  private static String label(double hz) {
    return hz == Math.rint(hz) ? Long.toString((long) hz) : Double.toString(hz);
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    for (Channel channel : Channel.values()) {
      Optional<MeasuredDistortion> measured = pair.measured().of(channel).distortion();
      if (measured.isEmpty()) {
        findings.result(RegionResult.notJudged(kind(), span, channel));
        findings.blocked(Reason.notJudged("distortion", channel, null));
      } else {
        look(measured.get(), channel, findings);
      }
    }
  }

  private ReasonKind kind() {
    return harmonic ? ReasonKind.THD : ReasonKind.HIGH_ORDER_DISTORTION;
  }

  private void look(MeasuredDistortion measured, Channel channel, Findings findings) {
    IntFunction<Optional<Amount>> amounts =
        harmonic ? index -> thd(measured, index) : index -> highOrder(measured, index);
    Margin worst = null;
    Integer firstUnjudged = null;
    for (int i = limit.band().firstIndex(); i <= limit.band().lastIndex(); i++) {
      Optional<Amount> amount = amounts.apply(i).filter(this::tells);
      if (amount.isPresent()) {
        worst = Margin.smaller(worst, margin(i, amount.get()));
      } else if (firstUnjudged == null) {
        firstUnjudged = i;
      }
    }
    note(worst, firstUnjudged, channel, findings);
  }

  /** Limit and amount in percent for harmonics, in dB for high orders. */
  private Margin margin(int index, Amount amount) {
    double allowed = harmonic ? limit.thdPercent().getAsDouble() : limitDb();
    double shown = harmonic ? amount.percent() : amount.wholeDb();
    return Margin.below(index, shown, allowed, Math.max(1e-3, Math.abs(allowed)));
  }

  private double limitDb() {
    return harmonic
        ? 20 * Math.log10(limit.thdPercent().getAsDouble() / 100)
        : limit.highOrderDb().getAsDouble();
  }

  private boolean tells(Amount amount) {
    boolean clearOfFloor = limitDb() - amount.floorDb() >= LIMIT_ABOVE_FLOOR_DB;
    boolean overByNoiseOnly = amount.wholeDb() > limitDb() && !(amount.seenDb() > limitDb());
    return clearOfFloor && !overByNoiseOnly;
  }

  private void note(Margin worst, Integer unjudged, Channel channel, Findings findings) {
    boolean fails = worst != null && worst.db() < 0;
    if (unjudged != null) {
      findings.undecided(Reason.notJudged("distortion-floor", channel, (Double) Grid.hz(unjudged)));
    }
    if (worst == null || unjudged != null && !fails) {
      findings.result(RegionResult.notJudged(kind(), span, channel));
      return;
    }
    String unit = harmonic ? RegionResult.PERCENT : RegionResult.DB;
    findings.result(worst.resultIn(unit, kind(), span, channel));
    if (fails) {
      findings.failure(worst.reason(kind(), span, channel), Rank.REST, worst.severity());
    }
  }

  private Optional<Amount> thd(MeasuredDistortion measured, int index) {
    LimitSet.Orders orders = limit.orders().orElseThrow();
    Amount sum = Amount.NONE;
    for (int order = orders.lowest(); order <= orders.highest(); order++) {
      int k = order - MeasuredDistortion.LOWEST_ORDER;
      if (order > MeasuredDistortion.HIGHEST_ORDER || !has(measured, k, index)) {
        return Optional.empty();
      }
      List<Curve> levels = measured.harmonicsDb();
      sum = sum.plus(levels.get(k).at(index), measured.floorsDb().get(k).at(index));
    }
    return Optional.of(sum);
  }

  private static boolean has(MeasuredDistortion measured, int k, int index) {
    return measured.harmonicsDb().get(k).has(index) && measured.floorsDb().get(k).has(index);
  }

  private static Optional<Amount> highOrder(MeasuredDistortion measured, int index) {
    return measured.highOrderDb().has(index) && measured.highOrderFloorDb().has(index)
        ? Optional.of(
            Amount.NONE.plus(
                measured.highOrderDb().at(index), measured.highOrderFloorDb().at(index)))
        : Optional.empty();
  }

  /**
   * Powers re the fundamental.
   *
   * @param seen of the orders that stand clear of their floors
   * @param whole of all orders
   * @param floor of the noise
   */
  private record Amount(double seen, double whole, double floor) {
    /** An order so little above its own floor counts as below it (common practice, simulated). */
    private static final double ABOVE_FLOOR_DB = 10;

    static final Amount NONE = new Amount(0, 0, 0);

    Amount plus(double db, double floorDb) {
      double power = Math.pow(10, db / 10);
      double counted = db >= floorDb + ABOVE_FLOOR_DB ? power : 0;
      return new Amount(seen + counted, whole + power, floor + Math.pow(10, floorDb / 10));
    }

    /**
     * @return THD_F of the orders seen, percent: 100·√Σ|H_n|²/|H_1|
     */
    double percent() {
      return 100 * Math.sqrt(seen);
    }

    double seenDb() {
      return 10 * Math.log10(seen);
    }

    double wholeDb() {
      return 10 * Math.log10(whole);
    }

    double floorDb() {
      return 10 * Math.log10(floor);
    }
  }
}
