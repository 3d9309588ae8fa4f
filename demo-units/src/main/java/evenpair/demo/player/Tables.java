package evenpair.demo.player;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/** Prints the table of verdicts. */
final class Tables {
  private static final String MORE_TRIES = " *";

  private Tables() {}

  /**
   * One row a unit: its verdict, the verdict in each tuning, and the sentence that an operator
   * would sort by.
   */
  static void verdicts(List<UnitOutcome> outcomes, PrintStream out) {
    String product = "";
    for (UnitOutcome outcome : outcomes) {
      if (!product.equals(outcome.unit().batch())) {
        product = outcome.unit().batch();
        out.println();
        out.println(row("serial (" + product + ")", "unit", heads(outcome), "first reason"));
      }
      out.println(
          row(
              outcome.unit().serial(),
              outcome.verdict(),
              cells(outcome),
              outcome.firstSentence().orElse("")));
    }
    out.println();
    out.println(
        "*  an earlier try was refused or could not be judged; the pair was mounted and measured again.");
  }

  private static List<String> heads(UnitOutcome outcome) {
    return outcome.tunings().stream().map(TuningOutcome::tuning).toList();
  }

  private static List<String> cells(UnitOutcome outcome) {
    List<String> cells = new ArrayList<>();
    for (TuningOutcome tuning : outcome.tunings()) {
      cells.add(tuning.verdict() + (tuning.attempts().size() > 1 ? MORE_TRIES : ""));
    }
    return cells;
  }

  private static String row(String serial, String unit, List<String> tunings, String sentence) {
    StringBuilder row = new StringBuilder("%-18s %-10s ".formatted(serial, unit));
    tunings.forEach(cell -> row.append("%-8s".formatted(cell)));
    return row.append(' ').append(sentence).toString().stripTrailing();
  }
}
