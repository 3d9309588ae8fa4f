package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Biquad;
import evenpair.inspections.TestLine.Reply;
import evenpair.stations.Block;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Judgement;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;

/** What a station's own trustworthiness makes of a verdict, over HTTP: guard bands, blocks. */
@InspectionTest
class StationTrustTests {
  private static final String STATION = "bench-g";
  private static final String BLOCKED = "bench-g-blocked";
  private static final UUID STUDY = new UUID(7, 7);

  @LocalServerPort private int port;
  @Autowired private SwitchableStations stations;
  @Autowired private InspectionFiles files;
  @Autowired private TransactionTemplate transactions;
  private TestLine line;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
  }

  private static byte[] good(long seed, Biquad... more) {
    Biquad[] filters = new Biquad[more.length + 1];
    filters[0] = TestSound.peak(3000, 6);
    System.arraycopy(more, 0, filters, 1, more.length);
    return TestSound.wav(TestSound.capture(seed, filters));
  }

  private Reply inspect(String serial, String tuning, byte[] left, byte[] right) {
    return line.inspect(TestLine.other(serial, tuning, STATION), left, right);
  }

  @Test
  void keepsWhatABlockedStationSendsAndSaysWhyItCannotBeJudged() {
    line.makeStation(BLOCKED);
    Block block =
        new Block(
            Block.Cause.VERIFICATION_FAILED,
            UUID.randomUUID(),
            Optional.of(Channel.LEFT),
            Optional.of("treble"),
            Instant.parse("2026-11-25T06:00:00Z"),
            OptionalDouble.of(0.9),
            OptionalDouble.of(0.5));
    stations.block(BLOCKED, block);
    byte[] left = good(110);
    Reply reply = line.inspect(TestLine.other("GO-BLOCKED", "plain", BLOCKED), left, good(111));

    assertThat(reply.text("lastAttempt")).isEqualTo("INVALID");
    assertThat(reply.reasonKinds()).containsExactly("station-blocked");
    assertThat(reply.reasonText()).contains("reference unit (treble)", "Call an engineer");
    assertThat(line.get("/api/inspections/" + reply.text("id") + "/captures/1/left").raw().body())
        .isEqualTo(left);
  }

  @Nested
  class AGuardedRule {
    /** U = 2u = 0.4 dB; right 0.8 dB louder where 1 dB is allowed leaves 0.2 dB. */
    private static final double U_DB = 0.2;

    private Reply louder(String serial, String tuning, long seed) {
      return inspect(serial, tuning, good(seed), good(seed + 1, Biquad.gain(0.8)));
    }

    @Test
    void neverTakesAStationWithoutAStudyForAPerfectOne() {
      line.makeStation("bench-g-new");
      Reply reply =
          line.inspect(TestLine.other("FU-NEW", "guarded", "bench-g-new"), good(120), good(121));
      assertThat(reply.text("lastAttempt")).isEqualTo("INVALID");
      assertThat(reply.reasonKinds()).containsExactly("uncertainty-missing");
    }

    @Test
    void passesOrFailsWithinTheGuardBandAsTheSetSaysAndSaysSo() {
      stations.study(STATION, STUDY, U_DB);
      Reply accepted = louder("FU-NEAR", "guarded", 122);
      assertThat(accepted.text("verdict")).as("%s", accepted.json()).isEqualTo("PASS");
      assertThat(accepted.json().path("conditional").booleanValue()).isTrue();
      assertThat(row(accepted, "balance").path("state").stringValue())
          .isEqualTo("conditional-pass");

      Reply refused = louder("FU-NEAR", "strict", 124);
      assertThat(refused.text("verdict")).isEqualTo("FAIL");
      assertThat(refused.json().path("conditional").booleanValue()).isTrue();
    }

    @Test
    void judgesAgainByTheUncertaintyOfThatTime() {
      stations.study(STATION, STUDY, U_DB);
      UUID id = UUID.fromString(louder("FU-THEN", "guarded", 126).text("id"));
      stations.study(STATION, UUID.randomUUID(), 0.01);
      transactions.executeWithoutResult(
          status -> {
            InspectionFile file = files.find(id).orElseThrow();
            Judging judging = files.judging(file.row());
            Judgement again = judging.judge(files.validSeatings(id));
            assertThat(judging.uncertainty().orElseThrow().studies()).containsExactly(STUDY);
            assertThat(again.conditional()).isTrue();
            assertThat(RecordJson.write(again.results()))
                .isEqualTo(RecordJson.write(file.regions()));
          });
    }
  }

  private static JsonNode row(Reply reply, String check) {
    List<JsonNode> rows =
        reply
            .json()
            .path("regions")
            .valueStream()
            .filter(r -> r.path("check").stringValue().equals(check))
            .toList();
    assertThat(rows).as("%s in %s", check, reply.json()).isNotEmpty();
    return rows.get(0);
  }
}
