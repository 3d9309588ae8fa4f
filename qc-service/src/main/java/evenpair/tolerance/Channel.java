package evenpair.tolerance;

/** One of the two channels of a pair. */
public enum Channel {
  LEFT,
  RIGHT;

  /**
   * @return the lower-case word used in JSON and texts: {@code left} or {@code right}
   */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  /**
   * @return the other channel
   */
  public Channel other() {
    return this == LEFT ? RIGHT : LEFT;
  }
}
