package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class OutputGainTests {
  /** A tone at 0 dB re full scale that reads 1 V r.m.s. has a peak of √2 V. */
  @Test
  void aFullScaleToneOfOneVoltIsRootTwo() {
    assertThat(OutputGain.of(0, 1000).voltsPerFullScale()).isCloseTo(1.414213562, within(1e-9));
  }

  /** −20 dB is a tenth: 100 mV there are 1 V r.m.s. at full scale. */
  @Test
  void aWeakerToneCountsForMore() {
    assertThat(OutputGain.of(-20, 100).fullScaleVoltsRms()).isCloseTo(1, within(1e-12));
  }

  @Test
  void aReadingOfMicrovoltsIsNoOutput() {
    assertThat(OutputGain.of(0, 0.1).plausible()).isFalse();
    assertThat(OutputGain.of(-60, 1000).plausible()).isFalse();
    assertThat(OutputGain.of(-12, 179.6).plausible()).isTrue();
  }
}
