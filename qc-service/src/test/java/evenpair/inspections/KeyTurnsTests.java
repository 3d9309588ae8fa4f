package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class KeyTurnsTests {
  private final KeyTurns turns = new KeyTurns();
  private final ExecutorService clients = Executors.newFixedThreadPool(8);

  @AfterEach
  void end() {
    clients.shutdownNow();
  }

  @Test
  void letsOneOfEqualNamesInAtATimeAndForgetsTheName() throws Exception {
    AtomicInteger inside = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    List<Future<?>> all = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      all.add(
          clients.submit(
              () ->
                  turns.alone(
                      "bench-1 key",
                      () -> {
                        most.accumulateAndGet(inside.incrementAndGet(), Math::max);
                        Thread.yield();
                        return inside.decrementAndGet();
                      })));
    }
    for (Future<?> one : all) {
      one.get(60, TimeUnit.SECONDS);
    }
    assertThat(most).hasValue(1);
    assertThat(turns.names()).isZero();
  }

  /** Each waits inside for the other: with one turn for both, neither would come out. */
  @Test
  void letsDifferentNamesInTogether() throws Exception {
    CountDownLatch both = new CountDownLatch(2);
    List<Future<Boolean>> all = new ArrayList<>();
    for (String name : List.of("bench-1 a", "bench-1 b")) {
      all.add(clients.submit(() -> turns.alone(name, () -> meet(both))));
    }
    for (Future<Boolean> one : all) {
      assertThat(one.get()).isTrue();
    }
  }

  private static boolean meet(CountDownLatch both) {
    both.countDown();
    try {
      return both.await(30, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
