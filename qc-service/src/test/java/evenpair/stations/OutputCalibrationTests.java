package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.jayway.jsonpath.JsonPath;
import java.net.http.HttpResponse;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class OutputCalibrationTests extends StationHttpTest {
  /** √2 · 0.1796 V / 10^(−12/20) = 1.01117 V (by hand). */
  @Test
  void givesVoltsPerFullScale() throws Exception {
    HttpResponse<String> answer = output("179.6");
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    assertThat(JsonPath.<Double>read(answer.body(), "$.voltsPerFullScale"))
        .isCloseTo(1.01117, within(1e-5));
    assertThat(
            stations
                .chainAt(name, Instant.now())
                .orElseThrow()
                .output()
                .orElseThrow()
                .voltsPerFullScale())
        .isEqualTo(JsonPath.<Double>read(answer.body(), "$.voltsPerFullScale"));
  }

  @Test
  void refusesVoltsSentAsMillivolts() throws Exception {
    HttpResponse<String> answer = output("0.1796");
    assertProblem(answer, 422, "reading-implausible");
    assertThat(JsonPath.<String>read(answer.body(), "$.field")).isEqualTo("readingMvRms");
  }

  @Test
  void refusesAReadingThatIsMissing() throws Exception {
    assertProblem(output("null"), 400, "invalid-field");
  }

  private HttpResponse<String> output(String reading) throws Exception {
    return Multipart.send(
        "POST",
        url("/output-calibrations"),
        "{\"toneDbfs\":-12,\"frequencyHz\":1000,\"readingMvRms\":"
            + reading
            + ",\"meterSerial\":\"VM-3\",\"operator\":\"op-17\"}");
  }
}
