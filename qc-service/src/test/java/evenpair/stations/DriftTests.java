package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class DriftTests {
  private static final double LIMIT_DB = 0.5;

  @Test
  void leavesAFirstCalibrationAlone() {
    assertThat(unexplained(20)).isEmpty();
  }

  @Test
  void leavesSmallChangesAlone() {
    assertThat(unexplained(20, 20.9)).isEmpty(); // 0.38 dB
  }

  @Test
  void stopsAtAMovedGain() {
    assertThat(unexplained(20, 22)).isPresent(); // 0.83 dB
  }

  @Test
  void goesOnOnceASecondOneAgrees() {
    assertThat(unexplained(20, 22, 22.1)).isEmpty();
  }

  @Test
  void goesOnOnceTheNextOneGoesBack() {
    assertThat(unexplained(20, 22, 20.1)).isEmpty();
  }

  @Test
  void staysStoppedWhileNoTwoAgree() {
    assertThat(unexplained(20, 22, 25)).isPresent();
  }

  @Test
  void stopsAgainWhenAConfirmedGainMovesBack() {
    assertThat(unexplained(20, 22, 22, 20)).isPresent();
  }

  @Test
  void goesOnOnceAnEngineerClearedIt() {
    List<Drift.Reading> newest = readings(20, 22);
    assertThat(Drift.unexplained(newest, Set.of(newest.get(0).id()), LIMIT_DB)).isEmpty();
  }

  @Test
  void stopsWhenAnAcceptedGainMovesBack() {
    List<Drift.Reading> newest = readings(20, 22, 20);
    assertThat(Drift.unexplained(newest, Set.of(newest.get(1).id()), LIMIT_DB)).isPresent();
  }

  private static Optional<Drift.Reading> unexplained(double... oldestFirst) {
    return Drift.unexplained(readings(oldestFirst), Set.of(), LIMIT_DB);
  }

  /** The three newest, newest first, as the database gives them. */
  private static List<Drift.Reading> readings(double... oldestFirst) {
    List<Drift.Reading> newest = new ArrayList<>();
    for (int i = 0; i < oldestFirst.length; i++) {
      Change change =
          i == 0 ? Change.first() : Change.between(oldestFirst[i - 1], oldestFirst[i], LIMIT_DB);
      double changeDb = change.changeDb() == null ? 0 : change.changeDb();
      newest.add(
          0,
          new Drift.Reading(
              new UUID(0, i),
              oldestFirst[i],
              changeDb,
              change.changed(),
              Instant.EPOCH.plusSeconds(i)));
    }
    return newest.subList(0, Math.min(3, newest.size()));
  }
}
