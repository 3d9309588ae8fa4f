package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;

import com.jayway.jsonpath.JsonPath;
import evenpair.EvenpairDatabaseTest;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A plant that demands a verification each shift. */
@EvenpairDatabaseTest(properties = "evenpair.stations.verification-required=true")
class VerificationRequiredTests extends TrustedStationTest {
  @Test
  void blocksTheTuningUntilItsReferenceUnitHasBeenMeasured() throws Exception {
    assertThat(block(Instant.now())).isNull(); // no reference unit, nothing to demand
    certify(curve(hz -> 100), curve(hz -> 101));

    assertThat(block(Instant.now()).cause()).isEqualTo(Block.Cause.VERIFICATION_MISSING);
    assertThat(
            JsonPath.<List<String>>read(
                Multipart.send("GET", url(""), null).body(), "$.needs[*].what"))
        .containsExactly("verification");
    assertThat(stations.blockedAt(name, "sedge-2", "warm", Instant.now())).isEmpty();
    assertThat(stations.blockedAt(name, Instant.now())).isEmpty();

    verify(curve(hz -> 100), curve(hz -> 101));
    Instant now = Instant.now();
    assertThat(block(now)).isNull();
    assertThat(block(now.plus(Duration.ofHours(13))).cause())
        .isEqualTo(Block.Cause.VERIFICATION_MISSING);
  }

  private Block block(Instant at) {
    return stations.blockedAt(name, "sedge-2", "plain", at).orElse(null);
  }
}
