package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.TestDatabase;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Live events between service processes: here the running service and wires of two others. */
@InspectionTest
class LiveWireTests {
  private static final String STATION = "bench-w";

  /** A machine that is busy elsewhere may take its time; a broken wire never answers. */
  private static final long PATIENCE_SECONDS = 60;

  @LocalServerPort private int port;
  @Autowired private JdbcConnectionDetails database;
  @Autowired private JdbcClient jdbc;
  @Autowired private TransactionTemplate transaction;
  @Autowired private LiveWire own;
  @Autowired private TestDatabase.Access access;
  private final Heard first = new Heard();
  private final Heard second = new Heard();
  private List<LiveWire> wires;
  private TestLine line;

  private static final class Heard implements LiveWire.Sink {
    private final BlockingQueue<String> events = new LinkedBlockingQueue<>();

    @Override
    public void send(String event, Object json) {
      events.add(event + " " + json);
    }

    @Override
    public void missed() {
      events.add("missed");
    }

    /** Passes over what other tests of the shared service cause. */
    String nextThatHas(String text) throws InterruptedException {
      for (String event = next(); event != null; event = next()) {
        if (event.contains(text)) {
          return event;
        }
      }
      throw new AssertionError("nothing with " + text + " was heard");
    }

    private String next() throws InterruptedException {
      return events.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    }
  }

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
  }

  @BeforeEach
  void listen() throws InterruptedException {
    wires = List.of(new LiveWire(database, first), new LiveWire(database, second));
    for (LiveWire wire : wires) {
      wire.start();
      await(wire);
    }
  }

  private static void await(LiveWire wire) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    while (!wire.heard()) {
      assertThat(System.nanoTime()).as("no connection").isLessThan(end);
      Thread.sleep(20);
    }
  }

  @AfterEach
  void stop() {
    wires.forEach(LiveWire::stop);
  }

  private String inspect(String serial) {
    return line.inspect(
            TestLine.inspection(serial, "plain", STATION),
            TestSound.wav(TestSound.capture(serial.hashCode(), TestSound.peak(3000, 6))),
            TestSound.wav(TestSound.capture(serial.hashCode() + 1L, TestSound.peak(3000, 6))))
        .text("id");
  }

  @Test
  void tellsScreensOfOtherProcessesWhatThisOneRecorded() throws InterruptedException {
    String id = inspect("FE-WIRE-1");
    for (Heard heard : List.of(first, second)) {
      assertThat(heard.nextThatHas("FE-WIRE-1")).startsWith("attempt {").contains(id);
      assertThat(heard.nextThatHas("FE-WIRE-1"))
          .startsWith("inspection-closed {")
          .contains("\"verdict\":\"PASS\"");
    }
  }

  @Test
  void tellsNothingOfWhatWasRolledBack() throws InterruptedException {
    transaction.executeWithoutResult(
        status -> {
          own.tell(jdbc, List.of("attempt"), "{\"serial\":\"FE-NEVER\"}");
          status.setRollbackOnly();
        });
    inspect("FE-WIRE-2");
    assertThat(first.nextThatHas("FE-")).doesNotContain("FE-NEVER");
  }

  @Test
  void doesNotHearItsOwnEventsASecondTime() throws InterruptedException {
    LiveWire sender = wires.get(0);
    transaction.executeWithoutResult(
        status -> sender.tell(jdbc, List.of("station"), "{\"station\":\"wire-own\"}"));
    assertThat(second.nextThatHas("wire-own")).isEqualTo("station {\"station\":\"wire-own\"}");
    inspect("FE-WIRE-3"); // what comes before it has come
    List<String> before = new ArrayList<>();
    do {
      before.add(first.nextThatHas(""));
    } while (!before.get(before.size() - 1).contains("FE-WIRE-3"));
    assertThat(before).noneMatch(event -> event.contains("wire-own"));
  }

  @Test
  void saysThatEventsMayHaveBeenMissedAfterABreakAndGoesOn() throws InterruptedException {
    JdbcClient.create(access.superuser())
        .sql("select pg_terminate_backend(pid) from pg_stat_activity where application_name = ?")
        .param(LiveWire.CONNECTION)
        .query(Boolean.class)
        .list();
    assertThat(first.nextThatHas("missed")).isEqualTo("missed");
    assertThat(second.nextThatHas("missed")).isEqualTo("missed");
    inspect("FE-WIRE-4");
    assertThat(first.nextThatHas("FE-WIRE-4")).startsWith("attempt");
  }
}
