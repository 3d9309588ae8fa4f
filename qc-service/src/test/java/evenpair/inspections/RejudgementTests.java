package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import evenpair.web.DataFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/** Inspections computed again from their stored captures. */
@InspectionTest
class RejudgementTests {
  private static final String STATION = "bench-rejudged";
  private static final long PATIENCE_NS = 60_000_000_000L;

  @LocalServerPort private int port;
  @Autowired private DataFolder data;
  private TestLine line;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
  }

  private Reply inspect(String serial, String batch, long seed, String tuning, String more) {
    String json = TestLine.inspection(serial, tuning, STATION, more).replace("FB-1", batch);
    byte[] left = TestSound.wav(TestSound.capture(seed, TestSound.peak(3000, 6)));
    byte[] right = TestSound.wav(TestSound.capture(seed + 1, TestSound.peak(3000, 6)));
    Reply reply = line.inspect(json, left, right);
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
    return reply;
  }

  private JsonNode run(String which) {
    Reply started = line.post("/api/rejudgements", which);
    assertThat(started.status()).as("%s", started.json()).isEqualTo(202);
    long end = System.nanoTime() + PATIENCE_NS;
    String job = "/api/jobs/" + started.text("job");
    while (!line.get(job).text("state").equals("done")) {
      assertThat(line.get(job).text("state")).as("%s", line.get(job).json()).isNotEqualTo("failed");
      assertThat(System.nanoTime()).isLessThan(end);
    }
    return line.get(line.get(job).text("result")).json();
  }

  @Test
  void givesTheSameBitsUnderTheSameSoftware() {
    inspect("FE-R1", "FB-AGAIN", 301, "plain", "");
    inspect("FE-R2", "FB-AGAIN", 303, "twice", "");
    inspect("FE-R2", "FB-AGAIN", 305, "twice", ", \"seating\": 2");
    // what is measured about the station afterwards changes nothing
    line.calibrate(STATION, "left");
    JsonNode report = run("{\"batch\": \"FB-AGAIN\"}");
    assertThat(report.path("inspections").asInt()).isEqualTo(2);
    assertThat(report.path("bitForBit").asInt()).isEqualTo(2);
    assertThat(report.path("differing").asInt()).isZero();
    assertThat(report.path("differences")).isEmpty();
  }

  @Test
  void namesAnInspectionWhoseCaptureIsGone() throws Exception {
    Reply made = inspect("FE-R3", "FB-GONE", 401, "plain", "");
    String sha256 =
        line.get("/api/inspections/" + made.text("id"))
            .json()
            .at("/attempts/0/left/sha256")
            .asString();
    Path file =
        data.folder("captures")
            .resolve(sha256.substring(0, 2))
            .resolve(sha256.substring(2, 4))
            .resolve(sha256);
    byte[] kept = Files.readAllBytes(file);
    Files.delete(file);
    try {
      JsonNode report = run("{\"serial\": \"FE-R3\"}");
      assertThat(report.path("differing").asInt()).isEqualTo(1);
      JsonNode difference = report.path("differences").path(0);
      assertThat(difference.path("serial").asString()).isEqualTo("FE-R3");
      assertThat(difference.path("problem").asString()).contains("attempt 1");
    } finally {
      Files.write(file, kept);
    }
  }

  /** Another capture in the place of the stored one: the seal finds that, and so does judging. */
  @Test
  void reportsADifferenceAboveAThousandthOfADecibel() throws Exception {
    Reply made = inspect("FE-R4", "FB-OTHER", 501, "plain", "");
    String sha256 =
        line.get("/api/inspections/" + made.text("id"))
            .json()
            .at("/attempts/0/right/sha256")
            .asString();
    Path file =
        data.folder("captures")
            .resolve(sha256.substring(0, 2))
            .resolve(sha256.substring(2, 4))
            .resolve(sha256);
    byte[] kept = Files.readAllBytes(file);
    Files.write(
        file,
        TestSound.wav(TestSound.capture(502, TestSound.peak(3000, 6), TestSound.peak(1000, 0.1))));
    try {
      JsonNode report = run("{\"serial\": \"FE-R4\"}");
      assertThat(report.path("differing").asInt()).isEqualTo(1);
      // 0.1 dB at 1 kHz was added by hand; noise of the same seed is the same
      assertThat(report.at("/differences/0/largestDb").asDouble()).isBetween(0.05, 0.15);
    } finally {
      Files.write(file, kept);
    }
  }
}
