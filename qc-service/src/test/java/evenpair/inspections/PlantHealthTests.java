package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.access.TestCallers;
import evenpair.inspections.TestLine.Reply;
import io.micrometer.core.instrument.MeterRegistry;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;

/** The plant on one page, and the same numbers as metrics. */
@InspectionTest
class PlantHealthTests {
  private static final String STATION = "bench-h";

  @LocalServerPort private int port;
  @Autowired private MockMvc mvc;
  @Autowired private MeterRegistry meters;
  private TestLine line;

  /** Two good pairs, one that fails, and one that is mounted badly and then well. */
  @BeforeAll
  void shift() {
    line = new TestLine(port);
    line.makeStation(STATION);
    line.makeUncalibratedStation("bench-h2");
    good("FE-H-1");
    good("FE-H-2");
    inspect("FE-H-3", 6, 12);
    line.inspect(
        TestLine.inspection("FE-H-4", "plain", STATION),
        TestSound.wav(leaking(41)),
        TestSound.wav(TestSound.capture(42, TestSound.peak(3000, 6))));
    good("FE-H-4");
  }

  private static float[] leaking(long seed) {
    return TestSound.capture(
        seed,
        TestSound.peak(3000, 6),
        evenpair.acoustics.Biquad.highPass(400, 0.7, TestSound.RATE));
  }

  private Reply good(String serial) {
    return inspect(serial, 6, 6);
  }

  private Reply inspect(String serial, double leftPeakDb, double rightPeakDb) {
    Reply reply =
        line.inspect(
            TestLine.inspection(serial, "plain", STATION),
            TestSound.wav(TestSound.capture(serial.hashCode(), TestSound.peak(3000, leftPeakDb))),
            TestSound.wav(
                TestSound.capture(serial.hashCode() + 1L, TestSound.peak(3000, rightPeakDb))));
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
    return reply;
  }

  private JsonNode station(String name) {
    JsonNode all = line.get("/api/health/stations").json().path("stations");
    return StreamSupport.stream(all.spliterator(), false)
        .filter(one -> one.path("station").asString().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void countsUnitsThatPassedAtFirstWithTheIntervalAndReseatsBeside() {
    JsonNode station = station(STATION);
    JsonNode firstPass = station.path("firstPass");
    assertThat(firstPass.path("of").asInt()).isEqualTo(4);
    assertThat(firstPass.path("passed").asInt()).isEqualTo(3);
    // Wilson for 3 of 4 at 95 %, by hand: z = 1.959964, z²/n = 0.960365; centre 1.230182, half
    // 1.959964·√(0.046875 + 0.240091/4) = 0.641023, both over 1.960365. 5e-4: the last digit.
    assertThat(firstPass.path("wilson").path(0).asDouble()).isCloseTo(0.3006, within(5e-4));
    assertThat(firstPass.path("wilson").path(1).asDouble()).isCloseTo(0.9544, within(5e-4));
    assertThat(station.path("mountings").path("attempts").asInt()).isEqualTo(5);
    assertThat(station.path("mountings").path("reseats").asInt()).isEqualTo(1);
  }

  @Test
  void listsTheLastVerdictsNewestFirstAndWhenTheStationWasHeard() {
    JsonNode station = station(STATION);
    JsonNode verdicts = station.path("verdicts");
    assertThat(verdicts.path(0).path("serial").asString()).isEqualTo("FE-H-4");
    assertThat(verdicts.path(1).path("serial").asString()).isEqualTo("FE-H-3");
    assertThat(verdicts.path(1).path("verdict").asString()).isEqualTo("FAIL");
    assertThat(station.path("heardAt").isString()).isTrue();
  }

  @Test
  void tellsWhatIsLeftOfEachCalibrationAndWhatWasNeverMade() {
    JsonNode calibrations = station(STATION).path("calibrations");
    assertThat(calibrations.size()).isEqualTo(4);
    calibrations.forEach(
        one -> assertThat(one.path("secondsLeft").asLong()).as("%s", one).isPositive());
    JsonNode bare = station("bench-h2");
    assertThat(bare.path("state").asString()).isEqualTo("problem");
    assertThat(bare.path("calibrations").path(0).path("secondsLeft").isNull()).isTrue();
    assertThat(bare.path("firstPass").path("share").isNull()).isTrue();
    assertThat(bare.path("heardAt").isNull()).isTrue();
  }

  @Test
  void tellsHowTheServiceIs() {
    JsonNode service = line.get("/api/health/stations").json().path("service");
    assertThat(service.path("database").path("latencyMs").asDouble(-1)).isNotNegative();
    assertThat(service.path("database").path("oneRole").asBoolean()).isFalse();
    assertThat(service.path("database").path("ledger").path("unsealed").isIntegralNumber())
        .isTrue();
    assertThat(service.path("disk").path("freeBytes").asLong()).isPositive();
    assertThat(service.path("version").asString()).isNotEmpty();
  }

  @Test
  void keepsWhatABenchHolds() throws Exception {
    held(STATION, "{\"count\": 3, \"oldestAt\": \"2026-11-25T07:00:00Z\"}", 204);
    JsonNode held = station(STATION).path("held");
    assertThat(held.path("count").asInt()).isEqualTo(3);
    assertThat(held.path("oldestAt").asString()).isEqualTo("2026-11-25T07:00:00Z");
    held(STATION, "{\"count\": 0}", 204);
    assertThat(station(STATION).path("held").path("count").asInt()).isZero();
  }

  @Test
  void refusesAReportThatCannotBe() throws Exception {
    held(STATION, "{\"count\": -1}", 400);
    held(STATION, "{\"oldestAt\": \"2026-11-25T07:00:00Z\"}", 400);
    held(STATION, "{\"count\": 0, \"oldestAt\": \"2026-11-25T07:00:00Z\"}", 400);
    held("bench-nowhere", "{\"count\": 1}", 404);
  }

  private void held(String station, String json, int wanted) throws Exception {
    mvc.perform(
            put("/api/stations/" + station + "/held")
                .contentType(MediaType.APPLICATION_JSON)
                .content(json))
        .andExpect(status().is(wanted));
  }

  @Test
  void countsWhatWasRecordedByStationProductTuningAndVerdict() {
    assertThat(counter("evenpair.inspections", "verdict", "PASS")).isEqualTo(3);
    assertThat(counter("evenpair.inspections", "verdict", "FAIL")).isEqualTo(1);
    assertThat(counter("evenpair.attempts", "outcome", "RESEAT")).isEqualTo(1);
    assertThat(meters.get("evenpair.ingest").tag("result", "recorded").timer().count())
        .isGreaterThanOrEqualTo(5);
  }

  private double counter(String name, String label, String word) {
    return meters
        .get(name)
        .tags("station", STATION, "product", "fern-1", "tuning", "plain", label, word)
        .counter()
        .count();
  }

  /** What our own meters say of whom and what, word for word: serials and people are not in it. */
  @Test
  void labelsNameNoUnitAndNobody() {
    List<String> labels =
        meters.getMeters().stream()
            .filter(meter -> meter.getId().getName().startsWith("evenpair."))
            .flatMap(meter -> meter.getId().getTags().stream())
            .map(tag -> tag.getKey())
            .distinct()
            .toList();
    assertThat(labels)
        .contains("station")
        .isSubsetOf("station", "product", "tuning", "verdict", "outcome", "result", "kind");
  }

  @Test
  void namesPeopleToEngineersOnly() throws Exception {
    assertThat(asked("engineer")).contains("\"operator\":\"op-17\"");
    assertThat(asked("administrator")).contains("\"operator\":\"op-17\"");
    assertThat(asked("operator")).contains(STATION).doesNotContain("op-17", "\"operators\"");
  }

  private String asked(String role) throws Exception {
    return mvc.perform(get("/api/health/stations").header(TestCallers.ROLES, role))
        .andExpect(status().isOk())
        .andReturn()
        .getResponse()
        .getContentAsString();
  }
}
