package evenpair.batches;

import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The tighter of two sets at every limit; both have the same regions. */
final class NeverWider {
  private NeverWider() {}

  /**
   * @return the proposed set, each limit that is wider than now put back to what it is now
   */
  static LimitSet than(LimitSet now, LimitSet proposed) {
    LimitSet.LevelLimit a = now.level();
    LimitSet.LevelLimit b = proposed.level();
    List<Region> regions = new ArrayList<>();
    for (int i = 0; i < now.regions().size(); i++) {
      regions.add(tighter(now.regions().get(i), proposed.regions().get(i)));
    }
    return new LimitSet(
        proposed.product(),
        proposed.tuning(),
        proposed.version(),
        proposed.earSimulator(),
        proposed.golden(),
        proposed.drive(),
        proposed.smoothing(),
        new LimitSet.LevelLimit(
            a.band(),
            Math.max(a.lowest(), b.lowest()),
            Math.min(a.highest(), b.highest()),
            Math.min(a.balanceDb(), b.balanceDb())),
        regions,
        proposed.distortion(),
        proposed.polarity(),
        proposed.idleNoiseDba(),
        proposed.signalToNoiseDb(),
        proposed.seating(),
        proposed.verificationDb(),
        proposed.decision());
  }

  private static Region tighter(Region now, Region proposed) {
    Optional<Span> match = now.match().map(m -> lower(m, proposed.match().orElse(m)));
    return new Region(
        now.name(),
        now.band(),
        higher(now.lower(), proposed.lower()),
        lower(now.upper(), proposed.upper()),
        match,
        now.required());
  }

  private static Span lower(Span a, Span b) {
    return new Span(Math.min(a.start(), b.start()), Math.min(a.end(), b.end()));
  }

  private static Span higher(Span a, Span b) {
    return new Span(Math.max(a.start(), b.start()), Math.max(a.end(), b.end()));
  }
}
