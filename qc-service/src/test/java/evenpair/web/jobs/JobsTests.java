package evenpair.web.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.EvenpairDatabaseTest;
import evenpair.TestDatabase;
import evenpair.web.Refusal;
import evenpair.web.jobs.Jobs.Job;
import java.net.URI;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Kinds of these tests are known to runners made here only, so that the service's own workers leave
 * them alone.
 */
@EvenpairDatabaseTest
class JobsTests {
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

  @Autowired JobTable table;
  @Autowired Jobs jobs;
  @Autowired JdbcClient jdbc;
  @Autowired TransactionTemplate transaction;
  @Autowired TestDatabase.Access database;
  @Autowired MockMvc mvc;

  private final ConcurrentLinkedQueue<Integer> steps = new ConcurrentLinkedQueue<>();
  private Instant now = NOON;
  private String kind;

  @BeforeEach
  void aKindOfItsOwn() {
    kind = "test-" + UUID.randomUUID();
  }

  @Test
  void doesEveryStepInOrderAndSaysWhatCameOut() throws Exception {
    UUID id = added("{}");
    JobRunner runner = runner(kindOf(3, (parameters, index) -> steps.add(index)));

    assertThat(find(id).state()).isEqualTo("waiting");
    assertThat(find(id).total()).isNull();
    runner.runOneStep();
    assertThat(find(id).state()).isEqualTo("running");
    assertThat(find(id).total()).isEqualTo(3);
    runToTheEnd(runner);

    assertThat(steps).containsExactly(0, 1, 2);
    mvc.perform(get("/api/jobs/" + id))
        .andExpect(status().isOk())
        .andExpect(jsonPath("$.state").value("done"))
        .andExpect(jsonPath("$.done").value(3))
        .andExpect(jsonPath("$.result").value("/api/results/" + id));
  }

  @Test
  void isDoneAtOnceWhenThereIsNothingToDo() {
    UUID id = added("{}");

    runToTheEnd(runner(kindOf(0, (parameters, index) -> steps.add(index))));

    assertThat(steps).isEmpty();
    assertThat(find(id).state()).isEqualTo("done");
  }

  @Test
  void resumesAtTheStepThatACrashInterruptedAndKeepsNothingOfIt() throws Exception {
    UUID id = added("{}");
    UUID witness = UUID.randomUUID();
    CountDownLatch halfWay = new CountDownLatch(1);
    CountDownLatch dead = new CountDownLatch(1);
    JobRunner first =
        runner(
            kindOf(
                3,
                (parameters, index) -> {
                  leaveATrace(witness, index);
                  if (index == 1) {
                    halfWay.countDown();
                    dead.await(60, TimeUnit.SECONDS);
                  }
                  steps.add(index);
                }));
    first.runOneStep(); // total
    first.runOneStep(); // step 0
    ExecutorService process = Executors.newSingleThreadExecutor();
    Future<?> crashing = process.submit(first::runOneStep);
    assertThat(halfWay.await(60, TimeUnit.SECONDS)).isTrue();

    cutTheConnectionThatHolds(id);
    JobRunner second =
        runner(
            kindOf(
                3,
                (parameters, index) -> {
                  leaveATrace(witness, index);
                  steps.add(index);
                }));
    second.runOneStep();
    dead.countDown();
    assertThat(traces(witness)).containsExactly(0, 1);
    runToTheEnd(second);
    process.shutdown();
    assertThat(process.awaitTermination(60, TimeUnit.SECONDS)).isTrue();
    assertThat(crashing).isDone();

    assertThat(traces(witness)).containsExactly(0, 1, 2);
    assertThat(find(id).state()).isEqualTo("done");
    assertThat(find(id).done()).isEqualTo(3);
  }

  @Test
  void severalProcessesShareTheJobsAndDoEachStepOnce() throws Exception {
    List<UUID> ids = IntStream.range(0, 3).mapToObj(i -> added("{\"job\":" + i + "}")).toList();
    ConcurrentLinkedQueue<String> done = new ConcurrentLinkedQueue<>();
    JobKind shared = kindOf(12, (parameters, index) -> done.add(parameters + index));
    ExecutorService processes = Executors.newFixedThreadPool(4);
    List<Future<?>> all = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      JobRunner runner = runner(shared);
      all.add(
          processes.submit(
              () -> {
                while (ids.stream().anyMatch(id -> !find(id).over())) {
                  runner.runOneStep();
                }
              }));
    }
    for (Future<?> process : all) {
      process.get(120, TimeUnit.SECONDS);
    }
    processes.shutdown();

    assertThat(ids).allMatch(id -> find(id).state().equals("done"));
    assertThat(done)
        .containsExactlyInAnyOrderElementsOf(
            IntStream.range(0, 36).mapToObj(i -> "{\"job\":" + i / 12 + "}" + i % 12).toList());
  }

  @Test
  void triesAFailedStepAgainLaterAndGoesOn() {
    UUID id = added("{}");
    JobRunner runner =
        runner(
            kindOf(
                2,
                (parameters, index) -> {
                  steps.add(index);
                  if (steps.size() == 1) {
                    throw new IllegalStateException("not this time");
                  }
                }));
    runner.runOneStep();
    runner.runOneStep();

    assertThat(runner.runOneStep()).as("before the pause is over").isFalse();
    now = NOON.plusSeconds(3);
    runToTheEnd(runner);

    assertThat(steps).containsExactly(0, 0, 1);
    assertThat(find(id).state()).isEqualTo("done");
  }

  @Test
  void endsAfterTheLastTryWithoutTellingTheErrorsOwnWords() {
    UUID id = added("{}");
    JobRunner runner =
        runner(
            kindOf(
                2,
                (parameters, index) -> {
                  steps.add(index);
                  throw new IllegalStateException("a path or a password");
                }));
    for (int i = 0; i <= JobRunner.TRIES; i++) {
      runner.runOneStep();
      now = now.plusSeconds(60);
    }

    assertThat(steps).hasSize(JobRunner.TRIES);
    assertThat(find(id).state()).isEqualTo("failed");
    assertThat(find(id).problem()).startsWith("Step 1 failed").doesNotContain("password");
  }

  @Test
  void endsAtOnceWithTheSentenceOfARefusal() {
    UUID id = added("{}");

    runToTheEnd(
        runner(
            kindOf(
                2,
                (parameters, index) -> {
                  throw new Refusal(409, "test", "Batch X has no unit that passed.");
                })));

    assertThat(find(id).state()).isEqualTo("failed");
    assertThat(find(id).problem()).isEqualTo("Batch X has no unit that passed.");
  }

  @Test
  void leavesJobsOfOtherKindsAlone() {
    UUID id = added("{}");
    JobRunner other = new JobRunner(table, transaction, clock(), List.of());

    assertThat(other.runOneStep()).isFalse();
    assertThat(find(id).state()).isEqualTo("waiting");
  }

  @Test
  void refusesAKindThatNobodyKnows() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> jobs.start("no-such-kind", "{}"))
        .withMessageContaining("no-such-kind");
  }

  @Test
  void doesNotKnowAJobThatNeverWas() throws Exception {
    mvc.perform(get("/api/jobs/" + UUID.randomUUID()))
        .andExpect(status().isNotFound())
        .andExpect(jsonPath("$.type").value("/problems/unknown-job"));
  }

  private UUID added(String parameters) {
    UUID id = UUID.randomUUID();
    table.add(id, kind, parameters, NOON);
    return id;
  }

  private Job find(UUID id) {
    return jobs.find(id).orElseThrow();
  }

  private JobRunner runner(JobKind one) {
    return new JobRunner(table, transaction, clock(), List.of(one));
  }

  private Clock clock() {
    return new Clock() {
      @Override
      public ZoneOffset getZone() {
        return ZoneOffset.UTC;
      }

      @Override
      public Clock withZone(java.time.ZoneId zone) {
        return this;
      }

      @Override
      public Instant instant() {
        return now;
      }
    };
  }

  private static void runToTheEnd(JobRunner runner) {
    while (runner.runOneStep()) {
      // the next one
    }
  }

  /** Any row that the service may write will do: here, a job that nobody runs. */
  private void leaveATrace(UUID witness, int index) {
    jdbc.sql(
            "insert into job (id, kind, parameters, state, done, failures, not_before, started_at, changed_at)"
                + " values (?, ?, ?, 'done', 0, 0, now(), now(), now())")
        .params(UUID.randomUUID(), "trace-" + witness, Integer.toString(index))
        .update();
  }

  private List<Integer> traces(UUID witness) {
    return jdbc.sql("select parameters::integer from job where kind = ? order by 1")
        .param("trace-" + witness)
        .query(Integer.class)
        .list();
  }

  /** What the death of a process looks like to the database. */
  private void cutTheConnectionThatHolds(UUID job) throws Exception {
    try (Connection connection = database.superuser().getConnection();
        Statement statement = connection.createStatement()) {
      connection.setAutoCommit(false);
      statement.execute(
          "select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database()"
              + " and state = 'idle in transaction' and pid <> pg_backend_pid()"
              + " and query like 'insert into job %'");
      // The lock is free once the server has rolled back.
      statement.execute("select id from job where id = '" + job + "' for update");
      connection.rollback();
    }
  }

  private JobKind kindOf(int total, Step step) {
    String name = kind;
    return new JobKind() {
      @Override
      public String name() {
        return name;
      }

      @Override
      public int total(String parameters) {
        return total;
      }

      @Override
      public void step(String parameters, int index) throws Exception {
        step.run(parameters, index);
      }

      @Override
      public Optional<URI> result(String parameters, UUID job) {
        return Optional.of(URI.create("/api/results/" + job));
      }
    };
  }

  private interface Step {
    void run(String parameters, int index) throws Exception;
  }
}
