package evenpair.batches;

import java.util.Arrays;
import java.util.Optional;

/** Kinds of control charts. */
enum ChartKind {
  INDIVIDUALS("individuals"),
  XBAR_S("xbar-s"),
  EWMA("ewma"),
  CUSUM("cusum"),
  /** Share of failed units; whatever the quantity. */
  P("p");

  private final String word;

  ChartKind(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }

  static Optional<ChartKind> of(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }
}
