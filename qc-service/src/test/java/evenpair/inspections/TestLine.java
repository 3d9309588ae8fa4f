package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A line's program: talks to the running service over HTTP and nothing else. */
final class TestLine {
  /** Peak of the calibrator's tone in the recording, re full scale. */
  private static final double TONE_PEAK = 0.1;

  /**
   * The standard stimulus has a peak of −12 dBFS; this reading makes it 180 mV r.m.s. to within
   * 0.02 dB.
   */
  private static final double READING_MV = 180;

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final String base;
  private final HttpClient http = HttpClient.newHttpClient();

  TestLine(int port) {
    this.base = "http://127.0.0.1:" + port;
  }

  record Reply(int status, JsonNode json, HttpResponse<byte[]> raw) {
    String text(String field) {
      return json.path(field).isString() ? json.path(field).stringValue() : null;
    }

    String reasonText() {
      return json.path("reasons").path(0).path("text").asString();
    }

    List<String> reasonKinds() {
      List<String> kinds = new ArrayList<>();
      json.path("reasons").forEach(reason -> kinds.add(reason.path("kind").stringValue()));
      return kinds;
    }
  }

  /**
   * By hand, without the code under test: 94 dB re 20 µPa is 1.002374 Pa r.m.s., so full scale is
   * √2·1.002374/0.1 Pa; a path of unity gain then turns 180 mV, digital peak 10^(−12/20), into
   * 10^(−12/20)·14.1757/√2 Pa r.m.s.
   */
  static double levelOfUnityGain() {
    double pascal = Math.pow(10, -12.0 / 20) * (1.002374 / TONE_PEAK);
    return 20 * Math.log10(pascal / 20e-6);
  }

  /**
   * Makes a station that may judge: both microphones, the output, and a swap study without
   * difference.
   */
  void makeStation(String station) {
    makeUncalibratedStation(station);
    calibrate(station, "left");
    calibrate(station, "right");
    created(
        post(
            "/api/stations/" + station + "/output-calibrations",
            """
        {"toneDbfs": -12, "frequencyHz": 1000, "readingMvRms": %s, "meterSerial": "VM-3", "operator": "op-17"}
        """
                .formatted(READING_MV)));
    correct(station);
  }

  void makeUncalibratedStation(String station) {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(base + "/api/stations/" + station))
            .header("Content-Type", "application/json")
            .PUT(BodyPublishers.ofString("{}"))
            .build();
    assertThat(send(request).status()).isIn(200, 201);
  }

  void calibrate(String station, String channel) {
    String json =
        """
        {"channel": "%s", "earSimulator": "IEC 60318-4", "earSimulatorSerial": "ES-%s", "calibratorSerial": "SC-7",
         "levelDb": 94.0, "frequencyHz": 1000, "operator": "op-17"}
        """
            .formatted(channel, channel);
    Multipart parts =
        new Multipart().json("calibration", json).wav("tone", TestSound.tone(1000, TONE_PEAK));
    created(post("/api/stations/" + station + "/calibrations", parts.end()));
  }

  private void correct(String station) {
    Multipart parts =
        new Multipart()
            .json("correction", "{\"referenceUnit\": \"REF-1\", \"operator\": \"op-17\"}");
    long seed = 1000;
    for (String part : List.of("markedLeft", "markedRight", "swappedLeft", "swappedRight")) {
      for (int seating = 0; seating < 3; seating++) {
        parts.wav(part, TestSound.wav(TestSound.capture(seed++, TestSound.peak(3000, 6))));
      }
    }
    created(post("/api/stations/" + station + "/corrections", parts.end()));
  }

  private static void created(Reply reply) {
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
  }

  static String inspection(String serial, String tuning, String station) {
    return inspection(serial, tuning, station, "");
  }

  /**
   * @param more further fields, each beginning with a comma
   */
  static String inspection(String serial, String tuning, String station, String more) {
    return """
        {"serial": "%s", "batch": "FB-1", "product": "fern-1", "tuning": "%s", "station": "%s", "operator": "op-17"%s}
        """
        .formatted(serial, tuning, station, more);
  }

  /**
   * @return of the product that the serial belongs to: {@code GO-…} or {@code FU-…}
   */
  static String other(String serial, String tuning, String station) {
    return inspection(serial, tuning, station)
        .replace("fern-1", serial.startsWith("GO-") ? "gorse-1" : "furze-1");
  }

  Reply inspect(String json, byte[] left, byte[] right) {
    return inspect(new Multipart().json("inspection", json).wav("left", left).wav("right", right));
  }

  Reply inspect(Multipart parts) {
    return post("/api/inspections", parts.end());
  }

  Reply inspect(Multipart parts, String idempotencyKey) {
    return send(
        upload("/api/inspections", parts.end()).header("Idempotency-Key", idempotencyKey).build());
  }

  Reply get(String path) {
    return send(HttpRequest.newBuilder(URI.create(base + path)).GET().build());
  }

  Reply get(String path, String language) {
    return send(
        HttpRequest.newBuilder(URI.create(base + path))
            .header("Accept-Language", language)
            .GET()
            .build());
  }

  Reply post(String path, String json) {
    return send(
        HttpRequest.newBuilder(URI.create(base + path))
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(json))
            .build());
  }

  Reply post(String path, byte[] multipart) {
    return send(upload(path, multipart).build());
  }

  Reply delete(String path) {
    return send(HttpRequest.newBuilder(URI.create(base + path)).DELETE().build());
  }

  private HttpRequest.Builder upload(String path, byte[] multipart) {
    return HttpRequest.newBuilder(URI.create(base + path))
        .header("Content-Type", Multipart.CONTENT_TYPE)
        .POST(BodyPublishers.ofByteArray(multipart));
  }

  private Reply send(HttpRequest request) {
    try {
      HttpResponse<byte[]> response = http.send(request, BodyHandlers.ofByteArray());
      String type = response.headers().firstValue("Content-Type").orElse("");
      return new Reply(
          response.statusCode(),
          type.contains("json") ? JSON.readTree(response.body()) : null,
          response);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
