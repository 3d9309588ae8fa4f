package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class StationSettingsTests {
  @Test
  void refuseACalibrationThatHoldsForever() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new StationSettings(
                    Duration.ofDays(400),
                    Duration.ofDays(90),
                    0.5,
                    1,
                    0.1,
                    3,
                    2,
                    -60,
                    3,
                    2,
                    6,
                    Duration.ofMinutes(5)))
        .withMessageContaining("evenpair.stations.calibration-valid");
  }

  @Test
  void refuseALimitThatIsNotANumber() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new StationSettings(
                    Duration.ofHours(12),
                    Duration.ofDays(90),
                    Double.NaN,
                    1,
                    0.1,
                    3,
                    2,
                    -60,
                    3,
                    2,
                    6,
                    Duration.ofMinutes(5)))
        .withMessageContaining("evenpair.stations.change-db");
  }
}
