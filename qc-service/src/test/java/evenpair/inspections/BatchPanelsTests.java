package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/** The panels of a batch over HTTP, on three units; lives here for the line's tools. */
@InspectionTest
class BatchPanelsTests {
  private static final String STATION = "bench-panels";
  private static final String BATCH = "/api/batches/PS-1/";
  private static boolean batchMade;

  @LocalServerPort private int port;
  private TestLine line;

  @BeforeEach
  void aBatchOfThreeUnits() {
    line = new TestLine(port);
    if (batchMade) {
      return;
    }
    line.makeStation(STATION);
    for (int unit = 1; unit <= 3; unit++) {
      byte[] left = TestSound.wav(TestSound.capture(400 + unit, TestSound.peak(3000, 6)));
      byte[] right = TestSound.wav(TestSound.capture(500 + unit, TestSound.peak(3000, 6)));
      String inspection =
          TestLine.inspection("FE-PANEL-" + unit, "plain", STATION).replace("FB-1", "PS-1");
      assertThat(line.inspect(inspection, left, right).text("verdict")).isEqualTo("PASS");
    }
    batchMade = true;
  }

  @Test
  void areLinkedFromTheStatistics() {
    JsonNode found = line.get(BATCH + "statistics?station=" + STATION).json();

    assertThat(found.path("finalYield").path("passed").intValue()).isEqualTo(3);
    assertThat(found.path("stations").toString()).isEqualTo("[\"" + STATION + "\"]");
    for (String panel : List.of("capability", "charts", "components", "stations")) {
      String link = found.path("links").path(panel).stringValue();
      assertThat(link).isEqualTo(BATCH + panel + "?station=" + STATION);
      assertThat(line.get(link).status()).as(link).isEqualTo(200);
    }
  }

  @Test
  void sayHowManyUnitsAreMissing() {
    JsonNode capability = line.get(BATCH + "capability").json();
    assertThat(capability.path("about").path("n").intValue()).isEqualTo(3);
    assertThat(capability.path("rows").path(0).path("missing").path("need").intValue())
        .isEqualTo(10);
    assertThat(capability.path("rows").path(0).path("cpk").isNull()).isTrue();
    assertThat(
            line.get(BATCH + "charts?kind=ewma").json().path("missing").path("text").stringValue())
        .isEqualTo("Too few units: 3 of at least 10.");
    assertThat(line.get(BATCH + "components").json().path("missing").path("need").intValue())
        .isEqualTo(20);
    assertThat(line.get(BATCH + "stations").json().path("missing").path("lack").stringValue())
        .isEqualTo("groups");
  }

  @Test
  void refuseWhatTheyCannotRead() {
    Reply kind = line.get(BATCH + "charts?kind=pie");
    assertThat(kind.status()).isEqualTo(400);
    assertThat(kind.json().path("field").stringValue()).isEqualTo("kind");
    assertThat(line.get(BATCH + "capability?from=yesterday").status()).isEqualTo(400);
    assertThat(line.get(BATCH + "statistics?limitSet=newest").status()).isEqualTo(400);
    assertThat(line.get("/api/batches/PS-9/components").status()).isEqualTo(404);
  }

  @Test
  void nameTheStationsThereAreWhenNoneIsLeft() {
    Reply none = line.get(BATCH + "stations?station=bench-nowhere");

    assertThat(none.status()).isEqualTo(422);
    assertThat(none.json().path("stations").toString()).isEqualTo("[\"" + STATION + "\"]");
    assertThat(line.get(BATCH + "statistics?to=2001-01-01T00:00:00Z").status()).isEqualTo(422);
  }

  @Test
  void areDescribedWithTheirParameters() {
    JsonNode paths = line.get("/v3/api-docs").json().path("paths");

    assertThat(
            paths
                .path("/api/batches/{batch}/charts")
                .path("get")
                .path("parameters")
                .valueStream()
                .map(parameter -> parameter.path("name").stringValue())
                .toList())
        .contains("batch", "product", "tuning", "limitSet", "station", "from", "to")
        .contains("quantity", "region", "channel", "kind", "baseline", "subgroup", "rules");
  }
}
