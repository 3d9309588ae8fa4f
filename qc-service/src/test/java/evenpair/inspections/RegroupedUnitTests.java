package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/** From failed pairs over HTTP to new ones with an inspection of their own. */
@InspectionTest
class RegroupedUnitTests {
  private static final String STATION = "bench-pairing";
  private static boolean made;

  @LocalServerPort private int port;
  private TestLine line;

  /** Left and right of two units lie 1.6 dB to either side at 9 kHz: 3.2 dB apart, 2.5 allowed. */
  @BeforeEach
  void unitsThatMismatchTheOtherWayRound() {
    line = new TestLine(port);
    if (made) {
      return;
    }
    line.makeStation(STATION);
    expect("FAIL", inspect("OP-PAIR-1", "production", "", 61, 1.6, -1.6));
    expect("FAIL", inspect("OP-PAIR-2", "production", "", 63, -1.6, 1.6));
    expect("PASS", inspect("OP-PAIR-3", "production", "", 65, 0, 0));
    expect("FAIL", inspect("OP-PAIR-4", "production", "", 67, 5, 0));
    made = true;
  }

  private Reply inspect(
      String serial, String occasion, String more, long seed, double left, double right) {
    String json =
        """
        {"serial": "%s", "batch": "OB-PAIR", "product": "open-1", "tuning": "plain", "station": "%s", "operator": "op-17",
         "occasion": "%s"%s}
        """
            .formatted(serial, STATION, occasion, more);
    return line.inspect(json, sound(seed, left), sound(seed + 1, right));
  }

  private static byte[] sound(long seed, double bump) {
    return TestSound.wav(
        TestSound.capture(seed, TestSound.peak(3000, 6), TestSound.peak(9000, bump)));
  }

  private static void expect(String verdict, Reply reply) {
    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo(verdict);
  }

  private Reply propose(String pool) {
    return line.post(
        "/api/pairings", "{\"product\": \"open-1\", \"tuning\": \"plain\", " + pool + "}");
  }

  @Test
  void failedPairsBecomeNewOnesThatPassAfterTheirOwnInspection() {
    Reply reply = propose("\"batch\": \"OB-PAIR\", \"which\": \"failed-match\"");

    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
    assertThat(reply.json().path("gained").intValue()).isEqualTo(2);
    assertThat(reply.json().path("asBuilt").path("feasible").intValue()).isZero();
    JsonNode pair = reply.json().path("pairs").path(0);
    assertThat(pair.path("asBuilt").booleanValue()).isFalse();
    assertThat(pair.path("inspected").isNull()).isTrue();
    assertThat(reply.json().path("notes").path(0).stringValue()).contains("rework");

    String serial = pair.path("serial").stringValue();
    expect(
        "PASS",
        inspect(
            serial,
            "rework",
            ", \"leftEarpiece\": \"%s\", \"rightEarpiece\": \"%s\""
                .formatted(
                    pair.path("left").path("earpiece").stringValue(),
                    pair.path("right").path("earpiece").stringValue()),
            71,
            1.6,
            1.6));

    String self = reply.json().path("links").path("self").stringValue();
    JsonNode after = line.get(self).json().path("pairs").path(0);
    assertThat(after.path("inspected").path("verdict").stringValue()).isEqualTo("PASS");
    assertThat(line.get("/api/units/" + serial + "/certificate").status()).isEqualTo(200);

    // that pair's right earpiece came from the other unit, which has it no longer
    JsonNode again =
        propose(
                "\"inspections\": [\"%s\"]"
                    .formatted(pair.path("right").path("inspection").stringValue()))
            .json();
    assertThat(again.path("pool").path("rights").intValue()).isZero();
    assertThat(again.path("leftOut").path(0).path("why").stringValue()).isEqualTo("regrouped");
    assertThat(again.path("leftOut").path(0).path("text").stringValue()).contains(serial);
  }

  @Test
  void theCurvesOfAProposedPairAreThoseOfItsEarpieces() {
    Reply reply =
        propose(
            "\"earpieces\": [{\"serial\": \"OP-PAIR-3\", \"channel\": \"left\"},"
                + " {\"serial\": \"OP-PAIR-4\", \"channel\": \"right\"}]");
    String self = reply.json().path("links").path("self").stringValue();
    JsonNode curves = line.get(self + "/pairs/1/curves").json();

    String third = reply.json().path("pairs").path(0).path("left").path("inspection").stringValue();
    JsonNode measured = line.get("/api/inspections/" + third + "/curves").json();
    assertThat(curves.path("left").path("levelDb"))
        .isEqualTo(measured.path("left").path("levelDb"));
    assertThat(curves.path("difference").path("limitDb"))
        .isEqualTo(measured.path("difference").path("limitDb"));
    assertThat(line.get(self + "/pairs/2/curves").status()).isEqualTo(404);
  }

  @Test
  void anEarpieceThatFailsByItselfStaysOutAndSaysWhy() {
    JsonNode json = propose("\"serials\": [\"OP-PAIR-4\"]").json();

    assertThat(json.path("pool").path("lefts").intValue()).isZero();
    assertThat(json.path("pool").path("rights").intValue()).isEqualTo(1);
    assertThat(json.path("leftOut").path(0).path("text").stringValue())
        .startsWith("Left earpiece is outside its treble window at ");
    assertThat(json.path("alone").path(0).path("earpiece").stringValue()).isEqualTo("OP-PAIR-4.R");
  }

  @Test
  void namesEveryUnknownSerial() {
    Reply reply = propose("\"serials\": [\"OP-PAIR-3\", \"OP-NONE-1\", \"OP-NONE-2\"]");

    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.text("detail")).contains("OP-NONE-1, OP-NONE-2").doesNotContain("OP-PAIR-3");
  }

  @Test
  void refusesARequestWithoutAPoolAndUnknownNames() {
    assertThat(propose("\"which\": \"all\"").status()).isEqualTo(400);
    assertThat(propose("\"batch\": \"OB-NONE\"").status()).isEqualTo(404);
    assertThat(propose("\"batch\": \"OB-PAIR\", \"which\": \"some\"").status()).isEqualTo(400);
    assertThat(
            line.post("/api/pairings", "{\"product\": \"open-1\", \"tuning\": \"bright\"}")
                .status())
        .isEqualTo(404);
  }

  @Test
  void writesThePairsAsCsv() {
    Reply reply = propose("\"serials\": [\"OP-PAIR-3\"]");
    byte[] csv = line.get(reply.json().path("links").path("csv").stringValue()).raw().body();

    assertThat(new String(csv, StandardCharsets.UTF_8).split("\r\n"))
        .hasSize(2)
        .satisfies(
            lines ->
                assertThat(lines[1])
                    .startsWith("1,OP-PAIR-3,OP-PAIR-3.L,OP-PAIR-3,OP-PAIR-3.R,OP-PAIR-3,yes,0."));
  }
}
