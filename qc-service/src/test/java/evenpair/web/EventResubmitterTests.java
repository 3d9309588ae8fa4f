package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import evenpair.EvenpairDatabaseTest;
import evenpair.TestDatabase;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.modulith.events.FailedEventPublications;
import org.springframework.modulith.events.ResubmissionOptions;
import org.springframework.transaction.support.TransactionTemplate;

@EvenpairDatabaseTest
class EventResubmitterTests {
  @Autowired private JdbcClient jdbc;
  @Autowired private TransactionTemplate transaction;
  @Autowired private TestDatabase.Access database;

  private final List<ResubmissionOptions> asked = new ArrayList<>();

  private EventResubmitter resubmitter(FailedEventPublications failed) {
    return new EventResubmitter(failed, jdbc, transaction);
  }

  /** The running service's own may be at it for a moment. */
  private void resubmitOnceAlone() throws InterruptedException {
    EventResubmitter resubmitter = resubmitter(asked::add);
    for (int look = 0; look < 500 && asked.isEmpty(); look++) {
      resubmitter.resubmit();
      Thread.sleep(asked.isEmpty() ? 20 : 0);
    }
  }

  @Test
  void handsOutAgainOnlyWhatHasWaitedForAMinute() throws Exception {
    resubmitOnceAlone();
    assertThat(asked).hasSize(1);
    assertThat(asked.get(0).getMinAge()).isEqualTo(Duration.ofMinutes(1));
  }

  @Test
  void leavesItToTheProcessThatIsAtItAlready() throws Exception {
    try (Connection other = database.service().getConnection();
        Statement statement = other.createStatement()) {
      other.setAutoCommit(false);
      statement.execute("select pg_advisory_xact_lock(" + 0x6576656e74L + ")");
      resubmitter(asked::add).resubmit();
      assertThat(asked).isEmpty();
      other.rollback();
    }
    resubmitOnceAlone();
    assertThat(asked).hasSize(1);
  }

  @Test
  void goesOnAfterAFailure() throws Exception {
    EventResubmitter failing =
        resubmitter(
            options -> {
              throw new IllegalStateException("the listener is gone");
            });
    assertThatCode(failing::resubmit).doesNotThrowAnyException();
    resubmitOnceAlone();
    assertThat(asked).as("the lock was let go").hasSize(1);
  }
}
