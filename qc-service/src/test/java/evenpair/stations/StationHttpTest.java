package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;

import com.jayway.jsonpath.JsonPath;
import evenpair.EvenpairDatabaseTest;
import evenpair.acoustics.Samples;
import evenpair.captures.CaptureStore;
import evenpair.captures.WavWriter;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A station of its own for each test, over a real socket. */
@EvenpairDatabaseTest
abstract class StationHttpTest {
  private static int count;

  @LocalServerPort private int port;
  @Autowired Stations stations;
  @Autowired CaptureStore store;
  @Autowired JdbcClient jdbc;

  String name;

  @BeforeEach
  void makeAStation() throws Exception {
    name = "station-" + ++count;
    assertThat(Multipart.send("PUT", url(""), "{\"note\":\"for a test\"}").statusCode())
        .isEqualTo(201);
  }

  final String allStations() {
    return "http://127.0.0.1:" + port + "/api/stations";
  }

  final HttpResponse<String> calibrate(String channel, byte[] tone) throws Exception {
    return new Multipart()
        .json("calibration", calibration(channel))
        .wav("tone", tone)
        .post(url("/calibrations"));
  }

  static String calibration(String channel) {
    return "{\"channel\":\""
        + channel
        + "\",\"earSimulator\":\"IEC 60318-4\",\"earSimulatorSerial\":\"ES-101\","
        + "\"calibratorSerial\":\"SC-7\",\"levelDb\":94.0,\"frequencyHz\":1000,\"operator\":\"op-17\"}";
  }

  static byte[] tone(double amplitude) {
    float[] values = new float[96_000];
    for (int n = 0; n < values.length; n++) {
      values[n] = (float) (amplitude * Math.sin(2 * Math.PI * 1000.3 * n / 48_000));
    }
    return WavWriter.float32(new Samples(values, 48_000));
  }

  final String url(String path) {
    return "http://127.0.0.1:" + port + "/api/stations/" + name + path;
  }

  static void assertProblem(HttpResponse<String> answer, int status, String type) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
    assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
    assertThat(JsonPath.<String>read(answer.body(), "$.type")).isEqualTo("/problems/" + type);
  }

  /** A number however the JSON reader holds it: long decimals come as BigDecimal. */
  static double number(String json, String path) {
    return JsonPath.<Number>read(json, path).doubleValue();
  }

  static List<Double> numbers(String json, String path) {
    return JsonPath.<List<Number>>read(json, path).stream().map(Number::doubleValue).toList();
  }
}
