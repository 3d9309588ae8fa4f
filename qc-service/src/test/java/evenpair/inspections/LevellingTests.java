package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Distortion;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.IdleNoise;
import evenpair.acoustics.IdleNoise.Origin;
import evenpair.acoustics.Response;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.inspections.Levelling.Levelled;
import evenpair.stations.Stations.Chain;
import evenpair.stations.Stations.Correction;
import evenpair.stations.Stations.Microphone;
import evenpair.stations.Stations.Output;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.MeasuredIdleNoise;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LevellingTests {
  private static final Instant DAWN = Instant.parse("2026-11-25T06:00:00Z");
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");
  private static final LimitSet SET =
      FixtureProducts.set("fern-1", "plain", EarSimulator.IEC_60318_4, 1, 180).set();
  private static final double TOLERANCE_DB = 0.5;

  /** Volts per full scale with which the stimulus, peak −12 dBFS, is exactly 180 mV r.m.s. */
  private static final double VOLTS = Math.sqrt(2) * 0.180 / Math.pow(10, -12.0 / 20);

  private static Chain chain(
      double pascalLeft, double pascalRight, double volts, double stationDb) {
    Map<Channel, Microphone> microphones = new EnumMap<>(Channel.class);
    microphones.put(Channel.LEFT, microphone(Channel.LEFT, pascalLeft, EarSimulator.IEC_60318_4));
    microphones.put(
        Channel.RIGHT, microphone(Channel.RIGHT, pascalRight, EarSimulator.IEC_60318_4));
    Curve difference = Curve.from(hz -> stationDb);
    return new Chain(
        UUID.randomUUID(),
        "bench-1",
        microphones,
        Optional.of(new Output(UUID.randomUUID(), volts, DAWN, NOON)),
        Optional.of(new Correction(UUID.randomUUID(), 1, difference, difference, DAWN, NOON)));
  }

  private static Microphone microphone(Channel channel, double pascal, EarSimulator type) {
    return new Microphone(UUID.randomUUID(), channel, type, "ES-1", pascal, DAWN, NOON);
  }

  private static HeardPair heard() {
    Response unity =
        new Response(
            Curve.from(hz -> 0), new double[Grid.POINTS], Curve.from(hz -> 60), 0.35, 0, 0.3);
    Stimulus stimulus = new Stimulus("sweep-48000", TestSound.SWEEP);
    Heard.Clear clear = new Heard.Clear(unity, distortion());
    IdleNoise noise =
        new IdleNoise(1e-4, List.of(new IdleNoise.Tone(2000, 12, Origin.USB_FRAME)), 6);
    return new HeardPair(
        clear, clear, Optional.of(stimulus), List.of(), Map.of(Channel.RIGHT, noise));
  }

  private static Distortion distortion() {
    List<Curve> harmonics =
        IntStream.range(0, 4).mapToObj(k -> Curve.from(hz -> -40.0 - 10 * k)).toList();
    List<Curve> floors = IntStream.range(0, 4).mapToObj(k -> Curve.from(hz -> -90.0)).toList();
    return new Distortion(harmonics, floors, Curve.from(hz -> -70), Curve.from(hz -> -80));
  }

  private static Surroundings surroundings(Chain chain, Instant at) {
    return new Surroundings(chain, at, Optional.empty(), Map.of(Channel.RIGHT, 12.0));
  }

  private static Levelled level(Chain chain, Instant at) {
    return Levelling.level(heard(), surroundings(chain, at), SET, TOLERANCE_DB);
  }

  @Test
  void turnsFullScaleIntoSoundPressureAtTheSetsDrive() {
    // By hand: peak −12 dBFS is r.m.s. 0.25119/√2 = 0.17762; times 10 Pa = 1.7762 Pa;
    // 20·lg(1.7762/20e-6) = 98.969 dB.
    StoredPair pair = level(chain(10, 20, VOLTS, 0), DAWN.plusSeconds(1)).curves().orElseThrow();
    // Stored as 32-bit float: steps of 7.6e-6 dB at 100 dB; the hand value has three decimals.
    assertThat((double) pair.left().levelDb()[136]).isCloseTo(98.969, within(0.001));
    assertThat((double) pair.right().levelDb()[136]).isCloseTo(98.969 + 6.0206, within(0.001));
  }

  @Test
  void takesHalfTheStationsOwnDifferenceFromLeftAndAddsHalfToRight() {
    StoredPair without = level(chain(10, 10, VOLTS, 0), DAWN.plusSeconds(1)).curves().orElseThrow();
    StoredPair with = level(chain(10, 10, VOLTS, 0.6), DAWN.plusSeconds(1)).curves().orElseThrow();
    assertThat((double) with.left().levelDb()[50] - without.left().levelDb()[50])
        .isCloseTo(-0.3, within(2e-5));
    assertThat((double) with.right().levelDb()[50] - without.right().levelDb()[50])
        .isCloseTo(0.3, within(2e-5));
  }

  @Test
  void keepsHarmonicsWithTheirFloorsInTheOrderOfTheOrders() {
    StoredDistortion kept =
        level(chain(10, 10, VOLTS, 0), DAWN.plusSeconds(1))
            .curves()
            .orElseThrow()
            .left()
            .distortion();
    assertThat(kept.harmonicsDb()).hasSize(4 * Grid.POINTS);
    for (int k = 0; k < 4; k++) {
      assertThat(kept.harmonicsDb()[k * Grid.POINTS + 136]).isEqualTo(-40f - 10 * k);
    }
    assertThat(kept.highOrderFloorDb()).containsOnly(-80f);
  }

  @Test
  void givesIdleNoiseAsSoundPressureWhateverTheDriveAndTheCorrection() {
    // By hand: 1e-4 of full scale at 20 Pa per full scale is 2 mPa r.m.s., 20·lg(2e-3/20e-6) = 40
    // dB.
    StoredPair pair = level(chain(10, 20, VOLTS, 0.6), DAWN.plusSeconds(1)).curves().orElseThrow();
    assertThat(pair.left().idle()).as("no idle recording").isNull();
    StoredIdle idle = pair.right().idle();
    assertThat(idle.dba()).isCloseTo(40, within(1e-9));
    assertThat(idle.floorDba()).isEqualTo(12.0);
    assertThat(idle.tones()).containsExactly(new MeasuredIdleNoise.Tone(2000, 12, true));
  }

  @Test
  void scalesASmallResidueOfTheDriveAndRefusesALargeOne() {
    double up04 = VOLTS * Math.pow(10, -0.4 / 20);
    double up06 = VOLTS * Math.pow(10, -0.6 / 20);
    StoredPair exact = level(chain(10, 10, VOLTS, 0), DAWN.plusSeconds(1)).curves().orElseThrow();
    StoredPair scaled = level(chain(10, 10, up04, 0), DAWN.plusSeconds(1)).curves().orElseThrow();
    assertThat((double) scaled.left().levelDb()[136] - exact.left().levelDb()[136])
        .isCloseTo(0.4, within(2e-5));

    Levelled refused = level(chain(10, 10, up06, 0), DAWN.plusSeconds(1));
    assertThat(refused.curves()).isEmpty();
    assertThat(refused.flaws()).extracting(Reason::kind).containsExactly(ReasonKind.WRONG_DRIVE);
    assertThat(refused.flaws().get(0).measuredDb()).isCloseTo(-12, within(1e-9));
    assertThat(refused.flaws().get(0).limitDb()).isCloseTo(-11.4, within(1e-9));
  }

  @Test
  void trustsACalibrationUpToItsEndAndNotAtIt() {
    assertThat(level(chain(10, 10, VOLTS, 0), NOON.minusMillis(1)).curves()).isPresent();
    Levelled late = level(chain(10, 10, VOLTS, 0), NOON);
    assertThat(late.curves()).isEmpty();
    assertThat(late.flaws())
        .extracting(Reason::kind)
        .containsExactly(
            ReasonKind.CALIBRATION_EXPIRED,
            ReasonKind.CALIBRATION_EXPIRED,
            ReasonKind.OUTPUT_CALIBRATION_EXPIRED,
            ReasonKind.CORRECTION_EXPIRED);
  }

  @Test
  void refusesASimulatorOfAnotherTypeNamingBoth() {
    Chain chain = chain(10, 10, VOLTS, 0);
    chain.microphones().put(Channel.RIGHT, microphone(Channel.RIGHT, 10, EarSimulator.IEC_60318_5));
    assertThatThrownBy(() -> ChainCheck.requireSameSimulator(chain, SET))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("right channel")
        .hasMessageContaining("IEC 60318-5")
        .hasMessageContaining("IEC 60318-4");
  }
}
