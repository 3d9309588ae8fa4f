package evenpair.demo.study;

import evenpair.statistics.Proportion;
import java.io.PrintStream;

/**
 * How often a look at a seating is right.
 *
 * @param leaks leaks called a bad seating, of leaks
 * @param depths wrong depths called a bad seating, of wrong depths
 * @param good good seatings called bad, of good seatings
 * @param weakBass weak bass drivers on good seatings taken for leaks, of weak bass drivers
 * @param faulty units with another fault on good seatings called a bad seating, of such units
 */
record SeatingFigures(
    Proportion leaks, Proportion depths, Proportion good, Proportion weakBass, Proportion faulty) {
  private static final double CONFIDENCE = 0.95;
  static final double LEAST_BAD_CALLED = 0.95;
  static final double MOST_GOOD_CALLED = 0.01;
  static final double MOST_WEAK_BASS_CALLED = 0.02;

  /**
   * @return bad seatings of both kinds together
   */
  Proportion bad() {
    return new Proportion(leaks.hits() + depths.hits(), leaks.trials() + depths.trials());
  }

  /**
   * @return true if every share is on the right side of its bar
   */
  boolean keepsItsBars() {
    return bad().share() >= LEAST_BAD_CALLED
        && good.share() < MOST_GOOD_CALLED
        && weakBass.share() <= MOST_WEAK_BASS_CALLED;
  }

  void print(PrintStream out) {
    line(
        out,
        "bad seatings called RESEAT",
        bad(),
        "at least 95 %",
        bad().share() >= LEAST_BAD_CALLED);
    line(out, "  leaks of 3 dB and more", leaks, "", true);
    line(out, "  depth off by 10 to 25 %", depths, "", true);
    line(out, "good seatings called RESEAT", good, "below 1 %", good.share() < MOST_GOOD_CALLED);
    line(
        out,
        "weak bass drivers taken for leaks",
        weakBass,
        "at most 2 %",
        weakBass.share() <= MOST_WEAK_BASS_CALLED);
    line(out, "other faults called RESEAT", faulty, "(no bar)", true);
  }

  private static void line(
      PrintStream out, String what, Proportion share, String bar, boolean kept) {
    Proportion.Interval interval = share.clopperPearson(CONFIDENCE);
    String row =
        "%-34s %4d of %4d  %6.2f %%  [%5.2f, %5.2f]  %s%s"
            .formatted(
                what,
                share.hits(),
                share.trials(),
                100 * share.share(),
                100 * interval.lower(),
                100 * interval.upper(),
                bar,
                kept ? "" : "  MISSED");
    out.println(row.stripTrailing());
  }
}
