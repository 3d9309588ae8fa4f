package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.inspections.TestLine.Reply;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/**
 * From recordings over HTTP to a golden response built from them; lives here for the line's tools.
 */
@InspectionTest
class GoldenOverHttpTests {
  private static final String STATION = "bench-golden";
  private static final String BUILDS = "/api/products/fern-1/tunings/plain/golden-responses/builds";

  @Autowired private MeasuredCurves curves;
  @LocalServerPort private int port;
  private TestLine line;
  private final List<String> inspections = new ArrayList<>();

  @BeforeAll
  void threeGoodUnitsAndABadOne() {
    line = new TestLine(port);
    line.makeStation(STATION);
    for (int unit = 1; unit <= 3; unit++) {
      inspections.add(inspect("FE-GOLD-" + unit, 70 + 2 * unit, 6, "PASS"));
    }
    inspections.add(inspect("FE-GOLD-4", 90, 11, "FAIL"));
  }

  private String inspect(String serial, long seed, double peakDb, String verdict) {
    byte[] left = TestSound.wav(TestSound.capture(seed, TestSound.peak(3000, peakDb)));
    byte[] right = TestSound.wav(TestSound.capture(seed + 1, TestSound.peak(3000, peakDb)));
    String json = TestLine.inspection(serial, "plain", STATION).replace("FB-1", "GB-1");
    Reply reply = line.inspect(json, left, right);
    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo(verdict);
    return reply.text("id");
  }

  @Test
  void isBuiltFromTheUnitsOfABatchThatPassed() {
    Reply reply = line.post(BUILDS, "{\"batch\": \"GB-1\"}");

    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    JsonNode json = reply.json();
    assertThat(json.path("units").intValue()).isEqualTo(3);
    assertThat(json.path("levelDb").size()).isEqualTo(241);
    assertThat(json.path("phaseDeg").size()).isEqualTo(241);
    assertThat(json.path("saved").isNull()).isTrue();
    // good units measure as the fixture's golden response to within 0.1 dB (the bar of the analysis
    // and the chain's rounding), so their median does
    for (JsonNode region : json.path("againstActive").path("regions")) {
      assertThat(Math.abs(region.path("largestDb").doubleValue())).as("%s", region).isLessThan(0.1);
    }
  }

  @Test
  void isBuiltFromChosenInspectionsAndLeavesOutWhatIsSaid() {
    String chosen = "\"" + String.join("\", \"", inspections) + "\"";
    Reply reply =
        line.post(
            BUILDS,
            "{\"inspections\": [%s], \"leaveOut\": [\"%s\"]}"
                .formatted(chosen, inspections.get(3)));

    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.json().path("units").intValue()).isEqualTo(3);
    JsonNode first = reply.json().path("members").path(0);
    assertThat(first.path("serial").stringValue()).isEqualTo("FE-GOLD-4");
    assertThat(first.path("leftOut").booleanValue()).isTrue();
    assertThat(first.path("why").toString()).contains("above the median at ");
  }

  @Test
  void refusesWhatItCannotPool() {
    assertThat(line.post(BUILDS, "{\"batch\": \"GB-9\"}").status()).isEqualTo(404);
    assertThat(line.post(BUILDS, "{}").status()).isEqualTo(400);
    assertThat(line.post(BUILDS, "{\"batch\": \"GB-1\", \"colour\": 1}").status()).isEqualTo(400);
    Reply unknown = line.post(BUILDS, "{\"inspections\": [\"%s\"]}".formatted(new UUID(1, 1)));
    assertThat(unknown.status()).isEqualTo(422);
    assertThat(unknown.text("type")).isEqualTo("/problems/unfit-inspections");
  }

  @Test
  void comesFromCurvesAsTheyWereMeasured() {
    List<MeasuredUnit> units =
        curves.of(List.of(UUID.fromString(inspections.get(1)), new UUID(1, 1)));

    assertThat(units).extracting(MeasuredUnit::serial).containsExactly("FE-GOLD-2");
    JsonNode stored =
        line.get("/api/inspections/" + inspections.get(1) + "/curves?smoothing=none").json();
    double[] level = units.get(0).pair().right().level().toArray();
    for (int i = 0; i < level.length; i++) {
      // the address rounds to 0.001 dB at the coarsest
      assertThat(level[i] - stored.path("right").path("levelDb").path(i).doubleValue())
          .isBetween(-0.0006, 0.0006);
    }
    assertThat(curves.ofBatch("GB-1", "fern-1", "plain"))
        .extracting(MeasuredUnit::verdict)
        .containsExactly("PASS", "PASS", "PASS", "FAIL");
  }

  @Test
  void tellsNoRisksWithoutAGaugeStudy() {
    Reply reply = line.get("/api/batches/GB-1/risks");

    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.json().path("checks").size()).isZero();
    assertThat(reply.json().path("notes").toString())
        .contains("Stations without a valid uncertainty budget: " + STATION);
  }
}
