package evenpair.tolerance;

/** Both channels of one pair, from one seating or the mean of several. */
public record MeasuredPair(MeasuredChannel left, MeasuredChannel right) {
  /**
   * @return the channel asked for
   */
  public MeasuredChannel of(Channel channel) {
    return channel == Channel.LEFT ? left : right;
  }
}
