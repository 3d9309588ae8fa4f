package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.jayway.jsonpath.JsonPath;
import evenpair.tolerance.Channel;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/**
 * Regions of the limit set {@code sedge-2 plain}: bass to 200 Hz, mid to 5 kHz, treble to 16 kHz;
 * verification-db 0.5.
 */
class VerificationTests extends TrustedStationTest {
  /** A flat +0.3 dB on both sides, which the correction (0 within 0.001 dB) does not hide. */
  @Test
  void passesAStationThatRepeatsTheCertifiedCurves() throws Exception {
    assertThat(certify(curve(hz -> 100), curve(hz -> 101)).statusCode()).isEqualTo(201);

    HttpResponse<String> answer = verify(curve(hz -> 100.3), curve(hz -> 101.3));

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    assertThat(JsonPath.<Boolean>read(answer.body(), "$.passed")).isTrue();
    assertThat(number(answer.body(), "$.limitDb")).isEqualTo(0.5);
    assertThat(numbers(answer.body(), "$.regions[*].deviationDb"))
        .hasSize(6)
        .allSatisfy(db -> assertThat(db).isCloseTo(0.3, within(0.002)));
    assertThat(stations.blockedAt(name, Instant.now())).isEmpty();
    String station = Multipart.send("GET", url(""), null).body();
    assertThat(JsonPath.<String>read(station, "$.state")).isEqualTo("ready");
    assertThat(JsonPath.<List<Boolean>>read(station, "$.verifications[*].passed"))
        .containsExactly(true);
  }

  @Test
  void blocksUntilAnEngineerClearsIt() throws Exception {
    certify(curve(hz -> 100), curve(hz -> 101));

    String failed =
        verify(curve(hz -> 100), curve(hz -> hz > 200 && hz < 5000 ? 101.8 : 101)).body();

    assertThat(JsonPath.<Boolean>read(failed, "$.passed")).isFalse();
    Instant before = Instant.now();
    Block block = stations.blockedAt(name, before).orElseThrow();
    assertThat(block.cause()).isEqualTo(Block.Cause.VERIFICATION_FAILED);
    assertThat(block.subject()).isEqualTo(UUID.fromString(JsonPath.read(failed, "$.id")));
    assertThat(block.channel()).hasValue(Channel.RIGHT);
    assertThat(block.region()).hasValue("mid");
    // smoothing mixes 1 point of 110 with its neighbours outside; the mean moves by less than 0.02
    // dB
    assertThat(block.measured().orElseThrow()).isCloseTo(0.8, within(0.02));
    String station = Multipart.send("GET", url(""), null).body();
    assertThat(JsonPath.<String>read(station, "$.state")).isEqualTo("blocked");
    assertThat(JsonPath.<String>read(station, "$.blocks[0].text"))
        .isEqualTo(
            "Right side reads +0.8 dB in mid on the reference unit (0.5 dB are allowed). An engineer should look and clear the"
                + " station.");

    // a good one afterwards does not unblock: what was wrong in between has to be understood
    assertThat(
            JsonPath.<Boolean>read(verify(curve(hz -> 100), curve(hz -> 101)).body(), "$.passed"))
        .isTrue();
    assertThat(stations.blockedAt(name, Instant.now())).isPresent();

    HttpResponse<String> cleared = clear("gain-restored");
    assertThat(cleared.statusCode()).as(cleared.body()).isEqualTo(201);
    assertThat(JsonPath.<String>read(cleared.body(), "$.items[0].engineer")).isEqualTo("eng-3");
    assertThat(stations.blockedAt(name, Instant.now())).isEmpty();
    assertThat(stations.blockedAt(name, before)).isPresent();
    assertProblem(clear("gain-restored"), 409, "station-not-blocked");
    String list = Multipart.send("GET", url("/verifications"), null).body();
    assertThat(JsonPath.<List<String>>read(list, "$.items[?(@.passed==false)].cleared.reason"))
        .containsExactly("gain-restored");
  }

  @Test
  void sealsVerificationsAndClearings() throws Exception {
    certify(curve(hz -> 100), curve(hz -> 101));
    String id = JsonPath.read(verify(curve(hz -> 102), curve(hz -> 101)).body(), "$.id");
    String clearing = JsonPath.read(clear("checked-and-accepted").body(), "$.items[0].id");

    assertThat(entries("verification", id)).isEqualTo(1);
    assertThat(entries("clearing", clearing)).isEqualTo(1);
    assertThatThrownBy(
            () ->
                jdbc.sql("update station_verification set passed = true where id = :id::uuid")
                    .param("id", id)
                    .update())
        .hasMessageContaining("station_verification");
    assertThatThrownBy(
            () ->
                jdbc.sql("delete from station_clearing where id = :id::uuid")
                    .param("id", clearing)
                    .update())
        .hasMessageContaining("station_clearing");
  }

  /**
   * Recordings 1 dB up on the left: 20·lg(0.3·10^(1/20)/0.3). The response's own error is far below
   * 0.01 dB.
   */
  @Test
  void comparesRecordingsWithRecordings() throws Exception {
    assertThat(certify(capture(0.3, 100), capture(0.2, 101)).statusCode()).isEqualTo(201);

    String same = verify(capture(0.3, 102), capture(0.2, 103)).body();
    String louder = verify(capture(0.3 * Math.pow(10, 0.05), 104), capture(0.2, 105)).body();

    assertThat(JsonPath.<Boolean>read(same, "$.passed")).isTrue();
    assertThat(JsonPath.<Boolean>read(louder, "$.passed")).isFalse();
    assertThat(numbers(louder, "$.regions[?(@.channel=='left')].deviationDb"))
        .allSatisfy(db -> assertThat(db).isCloseTo(1.0, within(0.01)));
  }

  @Test
  void namesAReferenceUnitThatIsNotKnown() throws Exception {
    certify(curve(hz -> 100), curve(hz -> 101));

    HttpResponse<String> answer = verify("REF-9", curve(hz -> 100), curve(hz -> 101));

    assertProblem(answer, 404, "unknown-reference-unit");
    assertThat(JsonPath.<List<String>>read(answer.body(), "$.choices")).containsExactly("REF-1");
  }

  @Test
  void refusesACurveThatLeavesARegionOut() throws Exception {
    String text = "frequency_hz,level_db\n100,100\n1000,100\n4000,100\n";
    HttpResponse<String> answer = certify(text.getBytes(), curve(hz -> 101));

    assertProblem(answer, 422, "region-without-data");
    assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("left");
  }

  @Test
  void refusesTheSameFileOnBothSides() throws Exception {
    byte[] once = curve(hz -> 100);
    assertProblem(certify(once, once), 422, "same-capture-twice");
  }

  @Test
  void refusesAReasonThatIsNotOnTheList() throws Exception {
    HttpResponse<String> answer = clear("because");

    assertProblem(answer, 400, "invalid-field");
    assertThat(JsonPath.<List<String>>read(answer.body(), "$.choices")).contains("gain-restored");
  }

  @Test
  void acceptsNoReferenceCapturesWhileBlocked() throws Exception {
    calibrate("left", tone(0.05)); // half the amplitude for the same pressure: 6 dB moved

    assertProblem(certify(capture(0.3, 110), capture(0.2, 111)), 409, "station-blocked");
    assertThat(stations.blockedAt(name, Instant.now()).orElseThrow().cause())
        .isEqualTo(Block.Cause.MICROPHONE_CHANGED);
    assertThat(clear("part-replaced").statusCode()).isEqualTo(201);
    assertThat(stations.blockedAt(name, Instant.now())).isEmpty();
    assertThat(certify(capture(0.3, 112), capture(0.2, 113)).statusCode()).isEqualTo(201);
  }

  private int entries(String kind, String subject) {
    return jdbc.sql("select count(*) from ledger_entry where kind = :kind and subject = :id::uuid")
        .param("kind", kind)
        .param("id", subject)
        .query(Integer.class)
        .single();
  }
}
