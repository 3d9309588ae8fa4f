package evenpair.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.EvenpairDatabaseTest;
import evenpair.web.Refusal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.IllegalTransactionStateException;
import org.springframework.transaction.support.TransactionTemplate;

@EvenpairDatabaseTest
class PersonRegisterTests {
  @Autowired People people;
  @Autowired JdbcClient jdbc;
  @Autowired TransactionTemplate transaction;

  private UUID refer(String name) {
    return transaction.execute(status -> people.refer(name));
  }

  @Test
  void givesTheSameReferenceForTheSameName() {
    assertThat(refer("person-one")).isEqualTo(refer(" person-one "));
    assertThat(refer("person-one")).isNotEqualTo(refer("person-two"));
  }

  @Test
  void takesOneLetterForTheSameHoweverItIsComposed() {
    assertThat(refer("Zo\u00eb")).isEqualTo(refer("Zoe\u0308"));
  }

  @Test
  void showsTheName() {
    assertThat(people.nameOf(refer("李 小龙"))).hasValue("李 小龙");
    assertThat(people.nameOf(UUID.randomUUID())).isEmpty();
  }

  @Test
  void findsAPersonByBadgeToo() {
    UUID person = refer("person-with-badge");
    jdbc.sql("update person set badge = 'B-0042' where ref = ?").param(person).update();
    assertThat(refer("B-0042")).isEqualTo(person);
  }

  @Test
  void forgetsAnErasedNameAndKnowsItNoMore() {
    UUID person = refer("person-to-forget");
    jdbc.sql("update person set name = null, erased_at = now() where ref = ?")
        .param(person)
        .update();
    assertThat(people.nameOf(person)).isEmpty();
    assertThat(refer("person-to-forget")).isNotEqualTo(person);
  }

  @Test
  void addsOnePersonWhenManyBringTheNameAtOnce() throws Exception {
    int many = 6; // as many as the test's pool has connections
    CountDownLatch allAreReady = new CountDownLatch(many);
    ExecutorService pool = Executors.newFixedThreadPool(many);
    try {
      List<Callable<UUID>> jobs =
          Stream.generate(
                  () ->
                      (Callable<UUID>)
                          () -> {
                            allAreReady.countDown();
                            allAreReady.await();
                            return refer("person-at-once");
                          })
              .limit(many)
              .toList();
      Set<UUID> references = new HashSet<>();
      for (Future<UUID> job : pool.invokeAll(jobs)) {
        references.add(job.get());
      }
      assertThat(references).hasSize(1);
    } finally {
      pool.shutdownNow();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "   ", "two\nlines", "nul\u0000"})
  void refusesANameThatIsNone(String name) {
    assertThatThrownBy(() -> refer(name))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("1 to 64 characters");
  }

  @Test
  void refusesANameThatIsTooLong() {
    assertThat(refer("x".repeat(64))).isNotNull();
    assertThatThrownBy(() -> refer("x".repeat(65))).isInstanceOf(Refusal.class);
  }

  @Test
  void needsTheCallersTransaction() {
    assertThatThrownBy(() -> people.refer("person-alone"))
        .isInstanceOf(IllegalTransactionStateException.class);
  }
}
