package evenpair.demo.player;

import evenpair.demo.earpiece.Fault;
import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Truth against verdict over everything that was played.
 *
 * @param goodUnits good units played
 * @param goodRefused of them, those not passed
 * @param faults faulty units and bad captures played
 * @param faultsFound of them, those that came to what they should
 * @param surprises one line for each unit that did not come to what it should
 * @param samples pages to look at
 */
public record Summary(
    int goodUnits,
    int goodRefused,
    int faults,
    int faultsFound,
    List<String> surprises,
    Samples samples) {
  public Summary {
    surprises = List.copyOf(surprises);
  }

  /**
   * @param batch the first batch played
   * @param product its product
   * @param passedInspection id of an inspection that passed, if any
   * @param failedUnit serial of a unit that failed, if any
   */
  public record Samples(
      String batch,
      String product,
      Optional<String> passedInspection,
      Optional<String> failedUnit) {}

  /**
   * @return true if every unit came to what the truth asks for
   */
  public boolean asItShould() {
    return surprises.isEmpty();
  }

  static Summary print(List<UnitOutcome> outcomes, PrintStream out) {
    Summary summary = of(outcomes);
    out.println();
    out.println("Truth against verdict");
    byFault(outcomes).forEach((fault, count) -> out.println(line(fault, count)));
    out.println(
        "Faults found: "
            + summary.faultsFound
            + " of "
            + summary.faults
            + ".  Good units refused: "
            + summary.goodRefused
            + " of "
            + summary.goodUnits
            + ".");
    summary.surprises.forEach(surprise -> out.println("NOT AS IT SHOULD BE: " + surprise));
    return summary;
  }

  static Summary of(List<UnitOutcome> outcomes) {
    List<UnitOutcome> good =
        outcomes.stream().filter(outcome -> outcome.unit().fault() == Fault.NONE).toList();
    List<UnitOutcome> faulty =
        outcomes.stream().filter(outcome -> outcome.unit().fault() != Fault.NONE).toList();
    return new Summary(
        good.size(),
        (int) good.stream().filter(UnitOutcome::goodUnitRefused).count(),
        faulty.size(),
        (int) faulty.stream().filter(UnitOutcome::asItShould).count(),
        outcomes.stream().filter(outcome -> !outcome.asItShould()).map(Summary::surprise).toList(),
        samples(outcomes));
  }

  /** How many units of a kind there were, and how many came to what they should. */
  private record Count(int played, int asItShould) {
    Count plus(UnitOutcome outcome) {
      return new Count(played + 1, asItShould + (outcome.asItShould() ? 1 : 0));
    }
  }

  private static Map<Fault, Count> byFault(List<UnitOutcome> outcomes) {
    Map<Fault, Count> counts = new LinkedHashMap<>();
    for (Fault fault : Fault.values()) {
      for (UnitOutcome outcome : outcomes) {
        if (outcome.unit().fault() == fault) {
          counts.merge(fault, new Count(0, 0).plus(outcome), (before, one) -> before.plus(outcome));
        }
      }
    }
    return counts;
  }

  private static String line(Fault fault, Count count) {
    String wanted =
        switch (fault.expected()) {
          case PASS -> "passed";
          case FAIL -> "failed, as they should";
          case RESEAT_THEN_PASS -> "RESEAT, then passed, as they should";
          case INVALID_THEN_PASS -> "first try INVALID, second one passed, as they should";
        };
    return "  %-20s %2d of %2d %s"
        .formatted(fault.label(), count.asItShould(), count.played(), wanted);
  }

  private static String surprise(UnitOutcome outcome) {
    StringBuilder stories = new StringBuilder();
    outcome
        .tunings()
        .forEach(
            t -> stories.append(' ').append(t.tuning()).append(": ").append(t.story()).append(';'));
    return outcome.unit().serial()
        + " ("
        + outcome.unit().fault().label()
        + ") came to "
        + outcome.verdict()
        + " –"
        + stories
        + ' '
        + outcome.firstSentence().orElse("no reason given");
  }

  private static Samples samples(List<UnitOutcome> outcomes) {
    Optional<UnitOutcome> passed =
        outcomes.stream().filter(o -> o.verdict().equals("PASS")).findFirst();
    Optional<UnitOutcome> failed =
        outcomes.stream().filter(o -> o.verdict().equals("FAIL")).findFirst();
    return new Samples(
        outcomes.isEmpty() ? "" : outcomes.get(0).unit().batch(),
        outcomes.isEmpty() ? "" : outcomes.get(0).unit().design().product(),
        passed.map(o -> o.tunings().get(0).inspection()),
        failed.map(o -> o.unit().serial()));
  }
}
