package evenpair.pairing;

import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.tolerance.Channel;
import evenpair.tolerance.PairFit;

/**
 * An earpiece that may be paired.
 *
 * @param name its own number, or the unit's with {@code .L} or {@code .R}
 * @param from the pair that it was inspected in
 * @param measured as judged by the set of the pairing
 */
record Loose(Channel side, String name, InspectedPair from, PairFit.Earpiece measured) {}
