package evenpair.batches;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import evenpair.web.Refusal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SelectionTests {
  private final RecordedBatch batch = new RecordedBatch().passed("A", 0, 0, 0);

  @Test
  void needsNoNarrowingWhereThereIsOnePart() {
    assertThat(new Selection(batch).of("SW-2647", null, null, null).tuning()).isEqualTo("plain");
  }

  @Test
  void refusesAnUnknownBatch() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> new Selection(batch).of("SW-1", null, null, null))
        .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(404))
        .withMessageContaining("SW-1");
  }

  @Test
  void offersTheTuningsOfAMixedBatch() {
    batch.alsoIn("warm");

    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> new Selection(batch).of("SW-2647", "sedge-2", null, null))
        .satisfies(
            refusal -> {
              assertThat(refusal.status()).isEqualTo(422);
              assertThat(refusal.members().get("choices"))
                  .isEqualTo(
                      List.of(
                          Map.of("product", "sedge-2", "tuning", "plain"),
                          Map.of("product", "sedge-2", "tuning", "warm")));
            });
    assertThat(new Selection(batch).of("SW-2647", null, "warm", null).tuning()).isEqualTo("warm");
  }

  @Test
  void offersTheVersionsWhereSeveralJudged() {
    batch.underVersion(4).passed("B", 0, 0, 0);

    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> new Selection(batch).of("SW-2647", null, null, null))
        .satisfies(
            refusal ->
                assertThat(refusal.members().get("choices"))
                    .isEqualTo(
                        List.of(
                            Map.of("product", "sedge-2", "tuning", "plain", "limitSet", 3),
                            Map.of("product", "sedge-2", "tuning", "plain", "limitSet", 4))));
    assertThat(new Selection(batch).of("SW-2647", null, null, 4).units())
        .extracting("serial")
        .containsExactly("B");
  }

  @Test
  void offersWhatThereIsWhenAskedForWhatThereIsNot() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> new Selection(batch).of("SW-2647", null, "warm", null))
        .satisfies(
            refusal -> {
              assertThat(refusal.status()).isEqualTo(422);
              assertThat(refusal.members().get("choices"))
                  .isEqualTo(List.of(Map.of("product", "sedge-2", "tuning", "plain")));
            });
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> new Selection(batch).of("SW-2647", null, null, 9))
        .satisfies(
            refusal ->
                assertThat(refusal.members().get("choices"))
                    .isEqualTo(
                        List.of(Map.of("product", "sedge-2", "tuning", "plain", "limitSet", 3))));
  }
}
