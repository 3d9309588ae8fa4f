package evenpair.demo.earpiece;

/** Seeds for independent random streams, each named by what it is for. */
public final class Seeds {
  private static final long FNV_OFFSET = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;

  private Seeds() {}

  /**
   * Mixes a base seed with words by FNV-1a over their UTF-16 units, so that a stream depends on
   * nothing but its name.
   *
   * @return a seed for {@link java.util.SplittableRandom}, which scrambles it further
   */
  public static long of(long base, Object... words) {
    long hash = FNV_OFFSET ^ base;
    for (Object word : words) {
      for (char unit : (word + "/").toCharArray()) {
        hash = (hash ^ unit) * FNV_PRIME;
      }
    }
    return hash;
  }
}
