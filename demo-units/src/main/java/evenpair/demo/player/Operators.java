package evenpair.demo.player;

import evenpair.demo.line.Bench;

/** Who stands at which bench. */
final class Operators {
  private Operators() {}

  /**
   * @return the operator's badge, such as {@code op-11} at bench-1
   */
  static String of(Bench bench) {
    return of(bench, 1);
  }

  /**
   * @param shift 1 is the one who stands there now
   */
  static String of(Bench bench, int shift) {
    return "op-" + shift + bench.name().substring(bench.name().length() - 1);
  }
}
