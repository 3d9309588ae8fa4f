package evenpair.certificates;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * How often each caller may ask: a bucket of so many tokens that fills again evenly; one token a
 * question. In this process's memory only; the callers asked least recently are forgotten first.
 */
final class RateLimit {
  private static final int MOST_CALLERS = 20_000;

  private final int burst;
  private final double nanosAToken;
  private final LongSupplier nanoTime;
  private final Map<String, Bucket> buckets =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
          return size() > MOST_CALLERS;
        }
      };

  /**
   * @param burst questions at once
   * @param perToken how long one token takes to come back
   * @param nanoTime such as {@code System::nanoTime}
   */
  RateLimit(int burst, Duration perToken, LongSupplier nanoTime) {
    this.burst = burst;
    this.nanosAToken = perToken.toNanos();
    this.nanoTime = nanoTime;
  }

  /**
   * Takes one token.
   *
   * @return zero if there was one, else how long until there is
   */
  synchronized Duration ask(String caller) {
    long now = nanoTime.getAsLong();
    Bucket before = buckets.getOrDefault(caller, new Bucket(burst, now));
    double tokens = Math.min(burst, before.tokens() + (now - before.at()) / nanosAToken);
    if (tokens < 1) {
      buckets.put(caller, new Bucket(tokens, now));
      return Duration.ofNanos((long) Math.ceil((1 - tokens) * nanosAToken));
    }
    buckets.put(caller, new Bucket(tokens - 1, now));
    return Duration.ZERO;
  }

  private record Bucket(double tokens, long at) {}
}
