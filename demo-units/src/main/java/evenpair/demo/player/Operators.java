package evenpair.demo.player;

import evenpair.demo.line.Bench;

/** Who stands at which bench. */
final class Operators {
  private Operators() {}

  /**
   * @return the operator's badge, such as {@code op-11} at bench-1
   */
  static String of(Bench bench) {
    return "op-1" + bench.name().substring(bench.name().length() - 1);
  }
}
