package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The same unit sent again: with a key, without one, one after the other and at once. */
@InspectionTest
class RepeatedRequestTests {
  private static final String STATION = "bench-r";

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  @Autowired private IdempotencyKeys keys;
  private final ExecutorService clients = Executors.newFixedThreadPool(4);
  private TestLine line;
  private byte[] left;
  private byte[] right;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
    line.makeStation("bench-r2");
    left = TestSound.wav(TestSound.capture(1, TestSound.peak(3000, 6)));
    right = TestSound.wav(TestSound.capture(2, TestSound.peak(3000, 6)));
  }

  @AfterAll
  void end() {
    clients.shutdownNow();
  }

  private Multipart parts(String json) {
    return new Multipart().json("inspection", json).wav("left", left).wav("right", right);
  }

  private List<Reply> atOnce(List<Supplier<Reply>> requests) throws Exception {
    CyclicBarrier start = new CyclicBarrier(requests.size());
    List<Future<Reply>> running = new ArrayList<>();
    for (Supplier<Reply> request : requests) {
      running.add(
          clients.submit(
              () -> {
                start.await();
                return request.get();
              }));
    }
    List<Reply> replies = new ArrayList<>();
    for (Future<Reply> reply : running) {
      replies.add(reply.get());
    }
    return replies;
  }

  @Test
  void answersAnEqualRequestWithTheFirstAnswer() {
    String json = TestLine.inspection("FE-KEY", "plain", STATION);
    Reply first = line.inspect(parts(json), "key-1");
    // The same JSON in another order and spacing is the same request.
    Reply again = line.inspect(parts(reordered("FE-KEY")), "key-1");

    assertThat(first.status()).isEqualTo(201);
    assertThat(first.raw().headers().firstValue("Idempotent-Replay")).isEmpty();
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.raw().headers().firstValue("Idempotent-Replay")).hasValue("true");
    assertThat(again.raw().body()).isEqualTo(first.raw().body());
    assertThat(Recorded.of(jdbc, "FE-KEY")).isEqualTo(new Recorded(1, 1, 1, 2));
  }

  private static String reordered(String serial) {
    return """
        {"operator":"op-17","station":"%s","tuning":"plain","product":"fern-1","batch":"FB-1","serial":"%s"}
        """
        .formatted(STATION, serial);
  }

  @Test
  void refusesTheKeyWithAnotherRequest() {
    line.inspect(parts(TestLine.inspection("FE-KEY-2", "plain", STATION)), "key-2");
    Reply otherJson =
        line.inspect(parts(TestLine.inspection("FE-KEY-3", "plain", STATION)), "key-2");
    Multipart swapped =
        new Multipart()
            .json("inspection", TestLine.inspection("FE-KEY-2", "plain", STATION))
            .wav("left", right)
            .wav("right", left);
    Reply otherFiles = line.inspect(swapped, "key-2");

    assertThat(otherJson.status()).isEqualTo(409);
    assertThat(otherJson.text("type")).isEqualTo("/problems/idempotency-key-reused");
    assertThat(otherFiles.status()).isEqualTo(409);
    assertThat(Recorded.of(jdbc, "FE-KEY-3")).isEqualTo(Recorded.NOTHING);
  }

  @Test
  void knowsKeysByStation() {
    Reply here = line.inspect(parts(TestLine.inspection("FE-KEY-4", "plain", STATION)), "key-4");
    Reply there =
        line.inspect(parts(TestLine.inspection("FE-KEY-5", "plain", "bench-r2")), "key-4");
    assertThat(List.of(here.status(), there.status())).containsExactly(201, 201);
  }

  @Test
  void doesNotRememberARefusal() {
    String json = TestLine.inspection("FE-KEY-6", "plain", STATION);
    Multipart broken =
        new Multipart().json("inspection", json).wav("left", new byte[30]).wav("right", right);
    assertThat(line.inspect(broken, "key-6").status()).isEqualTo(422);
    assertThat(line.inspect(parts(json), "key-6").status()).isEqualTo(201);
  }

  @Test
  void refusesAKeyThatIsTooLong() {
    Reply reply =
        line.inspect(parts(TestLine.inspection("FE-KEY-7", "plain", STATION)), "k".repeat(256));
    assertThat(reply.status()).isEqualTo(400);
  }

  @RepeatedTest(3)
  void givesEqualRequestsAtOnceOneRecordAndOneAnswer(RepetitionInfo repetition) throws Exception {
    String serial = "FE-ATONCE-" + repetition.getCurrentRepetition();
    Supplier<Reply> request =
        () -> line.inspect(parts(TestLine.inspection(serial, "plain", STATION)), "key-" + serial);
    List<Reply> replies = atOnce(List.of(request, request, request));

    assertThat(replies).extracting(Reply::status).containsExactlyInAnyOrder(201, 200, 200);
    assertThat(replies)
        .extracting(reply -> new String(reply.raw().body()))
        .containsOnly(new String(replies.get(0).raw().body()));
    assertThat(Recorded.of(jdbc, serial)).isEqualTo(new Recorded(1, 1, 1, 2));
  }

  @RepeatedTest(3)
  void letsOneOfTwoClientsWinAndTellsTheOther(RepetitionInfo repetition) throws Exception {
    String serial = "FE-RACE-" + repetition.getCurrentRepetition();
    Supplier<Reply> request =
        () -> line.inspect(parts(TestLine.inspection(serial, "plain", STATION)));
    List<Reply> replies = atOnce(List.of(request, request));

    assertThat(replies).extracting(Reply::status).containsExactlyInAnyOrder(201, 409);
    Reply loser = replies.get(0).status() == 409 ? replies.get(0) : replies.get(1);
    assertThat(loser.text("type")).isEqualTo("/problems/already-judged");
    assertThat(Recorded.of(jdbc, serial)).isEqualTo(new Recorded(1, 1, 1, 2));
  }

  @Test
  void letsOneOfTwoFirstSeatingsWin() throws Exception {
    Supplier<Reply> request =
        () -> line.inspect(parts(TestLine.inspection("FE-RACE-2S", "twice", STATION)));
    List<Reply> replies = atOnce(List.of(request, request));

    assertThat(replies).extracting(Reply::status).containsExactlyInAnyOrder(201, 409);
    Reply loser = replies.get(0).status() == 409 ? replies.get(0) : replies.get(1);
    assertThat(loser.text("type")).isEqualTo("/problems/unexpected-seating");
    assertThat(Recorded.of(jdbc, "FE-RACE-2S")).isEqualTo(new Recorded(1, 1, 0, 2));
  }

  @Test
  void forgetsKeysThatAreOlderThanTheLimit() {
    line.inspect(parts(TestLine.inspection("FE-KEY-8", "plain", STATION)), "key-8");
    Instant created =
        jdbc.sql("select created_at from idempotency_key where key = 'key-8'")
            .query(OffsetDateTime.class)
            .single()
            .toInstant();

    keys.forgetBefore(created);
    assertThat(keys.find(STATION, "key-8")).as("as old as the limit").isPresent();
    keys.forgetBefore(created.plusMillis(1));
    assertThat(keys.find(STATION, "key-8")).isEmpty();
  }
}
