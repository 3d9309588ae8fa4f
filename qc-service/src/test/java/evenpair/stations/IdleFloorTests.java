package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.tolerance.Channel;
import java.net.http.HttpResponse;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class IdleFloorTests extends StationHttpTest {
  /**
   * The calibrator's tone reads 0.1 at 94 dB; the same tone at 0.001 is 40 dB less. A-weighting is
   * 0 dB at 1 kHz and 0.01 dB over the tone's few bins.
   */
  @Test
  void isTheWeightedLevelWithNothingConnected() throws Exception {
    calibrate("left", tone(0.1));
    calibrate("right", tone(0.1));

    HttpResponse<String> answer = send(tone(0.001), tone(0.0005));

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    assertThat(number(answer.body(), "$.leftDba")).isCloseTo(54, within(0.02));
    assertThat(stations.idleFloorDba(name, Channel.RIGHT, Instant.now()).orElseThrow())
        .isCloseTo(54 - 20 * Math.log10(2), within(0.02));
    assertThat(stations.idleFloorDba(name, Channel.RIGHT, Instant.now().minusSeconds(3600)))
        .isEmpty();
  }

  @Test
  void needsACalibratedMicrophone() throws Exception {
    assertProblem(send(tone(0.001), tone(0.001)), 409, "calibration-missing");
  }

  private HttpResponse<String> send(byte[] left, byte[] right) throws Exception {
    return new Multipart()
        .json("idleFloor", "{\"operator\":\"op-17\"}")
        .wav("left", left)
        .wav("right", right)
        .post(url("/idle-floors"));
  }
}
