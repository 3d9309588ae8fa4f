package evenpair.demo.player;

import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Fault;
import java.util.List;
import java.util.Optional;

/**
 * What one unit came to, against the truth about it.
 *
 * @param unit the simulated pair
 * @param bench where it was measured
 * @param verdict of the unit as a whole: PASS, FAIL or INCOMPLETE
 * @param tunings by tuning, in the product's order
 */
record UnitOutcome(DemoUnit unit, String bench, String verdict, List<TuningOutcome> tunings) {
  UnitOutcome {
    tunings = List.copyOf(tunings);
  }

  /**
   * @return true if the verdict is the one that the truth asks for
   */
  boolean asItShould() {
    return switch (unit.fault().expected()) {
      case PASS -> verdict.equals("PASS") && tries() == tunings.size();
      case FAIL -> verdict.equals("FAIL");
      case RESEAT_THEN_PASS -> verdict.equals("PASS") && firstTry().equals("RESEAT");
      case INVALID_THEN_PASS -> verdict.equals("PASS") && firstTry().equals("INVALID");
    };
  }

  /**
   * @return true for a good unit that was not passed
   */
  boolean goodUnitRefused() {
    return unit.fault() == Fault.NONE && !verdict.equals("PASS");
  }

  /**
   * @return the sentence that an operator would sort by: of a failed tuning, else of the first try
   *     that was not judged
   */
  Optional<String> firstSentence() {
    return tunings.stream()
        .filter(tuning -> !tuning.verdict().equals("PASS"))
        .findFirst()
        .or(() -> tunings.stream().filter(tuning -> tuning.attempts().size() > 1).findFirst())
        .flatMap(TuningOutcome::sentence);
  }

  /**
   * @return how many tries this run sent; 0 if an earlier run had judged the unit
   */
  int sent() {
    return tunings.stream().mapToInt(TuningOutcome::sent).sum();
  }

  private int tries() {
    return tunings.stream().mapToInt(tuning -> tuning.attempts().size()).sum();
  }

  private String firstTry() {
    return tunings.get(0).attempts().get(0);
  }
}
