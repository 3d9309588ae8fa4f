package evenpair.web.jobs;

import evenpair.web.Ids;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** Jobs in the table {@code job}. */
@Component
class StoredJobs implements Jobs {
  private final JobTable table;
  private final JobRunner runner;
  private final JobWorkers workers;
  private final Ids ids;
  private final Clock clock;

  StoredJobs(JobTable table, JobRunner runner, JobWorkers workers, Ids ids, Clock clock) {
    this.table = table;
    this.runner = runner;
    this.workers = workers;
    this.ids = ids;
    this.clock = clock;
  }

  @Override
  @Transactional
  public UUID start(String kind, String parameters) {
    if (!runner.knows(kind)) {
      throw new IllegalArgumentException("no kind of job is called " + kind);
    }
    UUID id = ids.next();
    table.add(id, kind, parameters, clock.instant());
    TransactionSynchronizationManager.registerSynchronization(
        new TransactionSynchronization() {
          @Override
          public void afterCommit() {
            workers.ring();
          }
        });
    return id;
  }

  @Override
  @Transactional(readOnly = true)
  public Optional<Job> find(UUID id) {
    return table.find(id);
  }
}
