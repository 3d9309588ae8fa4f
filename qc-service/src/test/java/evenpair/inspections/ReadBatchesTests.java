package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.ReadBatches.Key;
import evenpair.inspections.ReadBatches.Stamp;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class ReadBatchesTests {
  private static final Instant THEN = Instant.parse("2026-11-25T07:00:00Z");

  private final ReadBatches known = new ReadBatches();
  private final AtomicInteger reads = new AtomicInteger();

  private BatchCurves get(String batch, Locale locale, Stamp stamp) {
    return known.get(
        new Key(batch, "sedge-2", "plain", null, locale),
        stamp,
        () -> {
          reads.incrementAndGet();
          double[] none = {};
          float[] empty = {};
          return new BatchCurves(
              "sedge-2", "plain", List.of(), List.of(), empty, empty, none, none, none, none, none,
              none, List.of(), "none");
        });
  }

  @Test
  void areReadAgainOnlyWhenAnInspectionHasClosed() {
    BatchCurves first = get("A", Locale.ENGLISH, new Stamp(3, THEN));

    assertThat(get("A", Locale.ENGLISH, new Stamp(3, THEN))).isSameAs(first);
    assertThat(reads).hasValue(1);
    assertThat(get("A", Locale.ENGLISH, new Stamp(4, THEN))).isNotSameAs(first);
    assertThat(reads).hasValue(2);
  }

  @Test
  void areKeptByLanguageForTheirSentences() {
    get("A", Locale.ENGLISH, new Stamp(3, THEN));
    get("A", Locale.CHINESE, new Stamp(3, THEN));

    assertThat(reads).hasValue(2);
  }

  @Test
  void areFewAtATime() {
    for (String batch : List.of("A", "B", "C", "D", "E", "A")) {
      get(batch, Locale.ENGLISH, new Stamp(3, THEN));
    }
    assertThat(reads).hasValue(6);
  }
}
