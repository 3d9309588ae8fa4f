package evenpair.tolerance;

import evenpair.tolerance.Findings.Rank;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Level, balance and match, which explain one another: one weak earpiece fails all three. So that
 * the operator reads one cause, a level failure absorbs the balance failure, and match failures
 * that the imbalance alone explains fold into it.
 */
final class LevelAndMatchCheck implements Check {
  private final LimitSet.LevelLimit limit;
  private final MatchCheck match;

  LevelAndMatchCheck(LimitSet.LevelLimit limit, List<RegionLimits> regions) {
    this.limit = limit;
    this.match = new MatchCheck(regions);
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    Map<Channel, Margin> levels = levels(pair, findings);
    Optional<Margin> balance = balance(pair, findings).filter(m -> pair.guard().rejects(m.state()));
    List<String> folded = match.look(pair, findings, balance.map(Margin::value));
    List<Channel> failing = worstFirst(levels, pair.guard());
    for (Channel channel : failing) {
      boolean absorbs = balance.isPresent() && channel == failing.get(0);
      Margin margin = levels.get(channel);
      Reason reason = margin.reason(ReasonKind.LEVEL, null, channel);
      findings.failure(absorbs ? reason.also(folded) : reason, Rank.LEVEL, margin.severity());
    }
    if (failing.isEmpty()) {
      balance.ifPresent(b -> fail(b, folded, findings));
    }
  }

  private Map<Channel, Margin> levels(JudgedPair pair, Findings findings) {
    Map<Channel, Margin> margins = new EnumMap<>(Channel.class);
    double halfWidth = (limit.highest() - limit.lowest()) / 2;
    for (Channel channel : Channel.values()) {
      Optional<Margin> margin =
          pair.alignment(channel)
              .map(
                  a ->
                      Margin.inside(
                          Margin.NO_PLACE,
                          a,
                          limit.lowest(),
                          limit.highest(),
                          halfWidth,
                          pair.guard().offset()));
      margin.ifPresent(m -> margins.put(channel, m));
      findings.result(
          margin
              .map(m -> m.result(ReasonKind.LEVEL, null, channel))
              .orElseGet(() -> RegionResult.notJudged(ReasonKind.LEVEL, null, channel)));
    }
    return margins;
  }

  private Optional<Margin> balance(JudgedPair pair, Findings findings) {
    Optional<Margin> margin =
        pair.imbalance()
            .map(d -> Margin.within(Margin.NO_PLACE, d, limit.balanceDb(), pair.guard().balance()));
    findings.result(
        margin
            .map(m -> m.amount(ReasonKind.BALANCE, null))
            .orElseGet(() -> RegionResult.notJudged(ReasonKind.BALANCE, null, null)));
    return margin;
  }

  private static List<Channel> worstFirst(Map<Channel, Margin> levels, Guard guard) {
    List<Channel> failing = new ArrayList<>(levels.keySet());
    failing.removeIf(channel -> !guard.rejects(levels.get(channel).state()));
    failing.sort(Comparator.comparingDouble(channel -> levels.get(channel).db()));
    return failing;
  }

  private static void fail(Margin balance, List<String> folded, Findings findings) {
    Reason reason = balance.reason(ReasonKind.BALANCE, null, null).also(folded);
    findings.failure(reason, Rank.BALANCE, balance.severity());
  }
}
