package evenpair.tolerance;

import java.util.List;

/**
 * Why a seating looks bad.
 *
 * @param kind OFF_SIMULATOR, LEAK or DEPTH
 * @param channel null where left and right sit at depths too far apart
 * @param size what the reason shows: OFF_SIMULATOR how far the response lies below golden, dB; LEAK
 *     the loss at 20–50 Hz, dB; DEPTH the shift of the canal's peak, percent (positive: higher in
 *     frequency, too deep), or how far left lies above right
 * @param limit the set's limit of that size
 * @param atHz DEPTH the peak's frequency, Hz; LEAK the leak's corner, Hz; else null
 * @param repeats a try before it showed the same loss within 1 dB: it is the driver or the seal
 */
public record SeatingSuspicion(
    ReasonKind kind, Channel channel, double size, double limit, Double atHz, boolean repeats) {

  SeatingSuspicion repeating(boolean again) {
    return new SeatingSuspicion(kind, channel, size, limit, atHz, again);
  }

  /**
   * @return the reason an attempt is RESEAT for
   */
  public Reason reason() {
    return new Reason(
        kind, channel, null, atHz, size, limit, List.of(), null, null, null, List.of(), repeats);
  }

  /**
   * @return the reason of the FAIL after the last try
   */
  public Reason seal() {
    return new Reason(
        ReasonKind.SEAL,
        channel,
        null,
        null,
        null,
        null,
        List.of(),
        null,
        null,
        null,
        List.of(),
        repeats);
  }
}
