package evenpair.inspections.dropfolder;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * When a set that could not be taken is tried again: after twice the time each try, up to 1 min.
 */
final class Retries {
  private static final Duration LONGEST = Duration.ofMinutes(1);

  private record Try(Instant next, Duration pause, String problem) {}

  private final Duration first;
  private final Map<String, Try> tries = new HashMap<>();
  private String problem;

  Retries(Duration first) {
    this.first = first;
  }

  boolean due(String set, Instant now) {
    Try before = tries.get(set);
    return before == null || !now.isBefore(before.next());
  }

  /**
   * @return true if that is another problem than the one before
   */
  boolean later(String set, Instant now, String why) {
    Try before = tries.get(set);
    Duration pause = before == null ? first : before.pause().multipliedBy(2);
    Duration capped = pause.compareTo(LONGEST) > 0 ? LONGEST : pause;
    tries.put(set, new Try(now.plus(capped), capped, why));
    problem = why;
    return before == null || !before.problem().equals(why);
  }

  /** Forgets every set that no longer waits. */
  void keepOnly(Collection<String> waiting) {
    tries.keySet().retainAll(waiting);
    if (tries.isEmpty()) {
      problem = null;
    }
  }

  /**
   * @return the newest; null if every set that waits is only not whole yet
   */
  String problem() {
    return problem;
  }
}
