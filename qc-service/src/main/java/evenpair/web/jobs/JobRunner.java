package evenpair.web.jobs;

import evenpair.web.Refusal;
import evenpair.web.jobs.JobTable.Turn;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Does one step of one job: under the lock of its row, in one transaction with the count of the
 * step. A process that dies takes its transaction with it; the lock is free again, and the next
 * process does that step anew. Any number of runners may be at it.
 */
final class JobRunner {
  /** How often a step is tried before the job has failed. */
  static final int TRIES = 4;

  private static final Logger LOG = LoggerFactory.getLogger(JobRunner.class);
  private static final Duration PAUSE = Duration.ofSeconds(2);

  private final JobTable table;
  private final TransactionTemplate transaction;
  private final Clock clock;
  private final Map<String, JobKind> kinds;

  JobRunner(
      JobTable table, TransactionTemplate transaction, Clock clock, Collection<JobKind> kinds) {
    this.table = table;
    this.transaction = transaction;
    this.clock = clock;
    this.kinds = kinds.stream().collect(Collectors.toMap(JobKind::name, Function.identity()));
  }

  boolean knows(String kind) {
    return kinds.containsKey(kind);
  }

  /**
   * @return whether there was something to do
   */
  boolean runOneStep() {
    if (kinds.isEmpty()) {
      return false;
    }
    Turn[] taken = new Turn[1];
    try {
      return Boolean.TRUE.equals(
          transaction.execute(
              status -> {
                taken[0] = table.take(kinds.keySet(), clock.instant()).orElse(null);
                if (taken[0] == null) {
                  return false;
                }
                step(taken[0]);
                return true;
              }));
    } catch (RuntimeException e) {
      if (taken[0] == null) {
        throw e;
      }
      failed(taken[0], e instanceof StepFailed ? e.getCause() : e);
      return true;
    }
  }

  private void step(Turn turn) {
    JobKind kind = kinds.get(turn.kind());
    if (turn.total() == null) {
      int total = kind.total(turn.parameters());
      table.setTotal(turn.id(), total, clock.instant());
      if (total == 0) {
        finish(kind, turn);
      }
      return;
    }
    try {
      kind.step(turn.parameters(), turn.done());
    } catch (Exception e) {
      throw new StepFailed(e); // rolls back what the step wrote
    }
    table.setDone(turn.id(), turn.done() + 1, clock.instant());
    if (turn.done() + 1 >= turn.total()) {
      finish(kind, turn);
    }
  }

  private void finish(JobKind kind, Turn turn) {
    String result = kind.result(turn.parameters(), turn.id()).map(URI::toString).orElse(null);
    table.finish(turn.id(), result, clock.instant());
  }

  private void failed(Turn turn, Throwable cause) {
    boolean hopeless = cause instanceof Refusal || turn.failures() + 1 >= TRIES;
    LOG.warn(
        "Step {} of job {} ({}) failed{}: {}",
        turn.done() + 1,
        turn.id(),
        turn.kind(),
        hopeless ? "; the job ends here" : "; tried again soon",
        cause.getMessage(),
        cause instanceof Refusal ? null : cause);
    transaction.executeWithoutResult(
        status -> {
          if (hopeless) {
            table.fail(turn, why(turn, cause), clock.instant());
          } else {
            table.tryLater(
                turn,
                clock.instant().plus(PAUSE.multipliedBy(turn.failures() + 1L)),
                clock.instant());
          }
        });
  }

  /** What an unforeseen error says is for the log: it may name what is nobody's business. */
  private static String why(Turn turn, Throwable cause) {
    return cause instanceof Refusal
        ? cause.getMessage()
        : "Step " + (turn.done() + 1) + " failed " + TRIES + " times. The service's log says why.";
  }

  private static final class StepFailed extends RuntimeException {
    private static final long serialVersionUID = 1;

    StepFailed(Exception cause) {
      super(cause);
    }
  }
}
