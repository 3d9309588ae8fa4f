package evenpair.print;

import java.util.Map;
import java.util.function.Function;

/** The words in a plot, in the reader's language. */
record PlotLabels(
    String left,
    String right,
    String golden,
    String difference,
    String window,
    String matchLimit,
    String levelAxis,
    String differenceAxis,
    Map<Aspect, String> aspects) {

  /**
   * @param text renders the key below {@code paper.plot.}
   */
  static PlotLabels from(Function<String, String> text) {
    return new PlotLabels(
        text.apply("left"),
        text.apply("right"),
        text.apply("golden"),
        text.apply("difference"),
        text.apply("window"),
        text.apply("match-limit"),
        text.apply("level-axis"),
        text.apply("difference-axis"),
        Map.of(
            Aspect.DECADE_25_DB,
            text.apply("aspect-25"),
            Aspect.DECADE_50_DB,
            text.apply("aspect-50")));
  }
}
