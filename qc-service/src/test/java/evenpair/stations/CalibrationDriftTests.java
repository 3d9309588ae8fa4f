package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.stations.CalibrationDrift.Reading;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CalibrationDriftTests {
  /** 20·lg 2 = 6.0206 dB, by hand; rounding of doubles is far below 1e-9. */
  private static final double DOUBLED_DB = 6.020599913279624;

  @Test
  void tellsGainsFromTheOldestOneOldestFirst() {
    CalibrationDrift drift = CalibrationDrift.of(List.of(reading(2, 20), reading(1, 10)), 0.5);
    assertThat(drift.points()).extracting(CalibrationDrift.Point::measuredAt).isSorted();
    assertThat(drift.points().get(0).deviationDb()).isZero();
    assertThat(drift.points().get(1).deviationDb()).isCloseTo(DOUBLED_DB, within(1e-9));
    assertThat(drift.points().get(1).movingRangeDb()).isCloseTo(DOUBLED_DB, within(1e-9));
  }

  @Test
  void drawsNoLimitsFromAFewCalibrationsAndSaysWhy() {
    CalibrationDrift drift = CalibrationDrift.of(List.of(reading(1, 10)), 0.5);
    assertThat(drift.chart()).isNull();
    assertThat(drift.note()).contains("8", "have 1");
    assertThat(drift.points().get(0).signals()).isNull();
  }

  @Test
  void signalsAGainThatJumpsAfterManySteadyOnes() {
    List<Reading> newestFirst =
        IntStream.rangeClosed(0, 20).mapToObj(i -> reading(20 - i, i == 0 ? 20 : 10 + 0.01 * (i % 2))).toList();
    CalibrationDrift drift = CalibrationDrift.of(newestFirst, 0.5);
    assertThat(drift.points().get(20).signals()).isTrue();
    assertThat(drift.points().subList(0, 20)).noneMatch(CalibrationDrift.Point::signals);
  }

  @Test
  void hasNoPointsForAStationThatWasNeverCalibrated() {
    assertThat(CalibrationDrift.of(List.of(), 0.5).points()).isEmpty();
  }

  private static Reading reading(int hour, double gain) {
    return new Reading(Instant.EPOCH.plusSeconds(3600L * hour), gain);
  }
}
