package evenpair.products;

import evenpair.web.Refusal;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** Changes of versions: one at a time over all processes, so that versions stay in order. */
@Component
class VersionWriting {
  private final VersionStore store;
  private final TransactionTemplate transaction;

  VersionWriting(VersionStore store, TransactionTemplate transaction) {
    this.store = store;
    this.transaction = transaction;
  }

  /** Does the work in a transaction of its own that holds the lock. */
  <T> T alone(Supplier<T> work) {
    return transaction.execute(
        status -> {
          store.lock();
          T result = work.get();
          store.changed();
          return result;
        });
  }

  /**
   * @return 422 with every problem of a text
   */
  static Refusal refusal(String type, UnreadableLimits e) {
    List<Map<String, Object>> problems = e.problems().stream().map(VersionWriting::member).toList();
    LimitsProblem first = e.problems().get(0);
    return new Refusal(422, type, e.problems().size() + " problem(s), the first: " + first + ".")
        .with("place", "line " + first.line() + ", column " + first.column())
        .with("problems", problems);
  }

  private static Map<String, Object> member(LimitsProblem problem) {
    return Map.of(
        "line",
        problem.line(),
        "column",
        problem.column(),
        "path",
        problem.path(),
        "found",
        problem.found(),
        "expected",
        problem.expected());
  }
}
