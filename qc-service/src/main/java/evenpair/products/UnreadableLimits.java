package evenpair.products;

import java.util.List;
import java.util.stream.Collectors;

/** A file of limits that cannot be taken; carries every problem found in it. */
final class UnreadableLimits extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<LimitsProblem> problems;

  UnreadableLimits(List<LimitsProblem> problems) {
    super(problems.stream().map(LimitsProblem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  List<LimitsProblem> problems() {
    return problems;
  }
}
