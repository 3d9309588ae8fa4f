package evenpair.captures;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Sweep;
import evenpair.captures.Stimuli.Stimulus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StandardStimuliTests {
  private final StandardStimuli stimuli = new StandardStimuli();

  @ParameterizedTest
  @CsvSource({"sweep-44100, 44100", "sweep-48000, 48000", "sweep-96000, 96000", "default, 48000"})
  void areFoundByName(String name, double rateHz) {
    assertThat(stimuli.find(name).orElseThrow().sweep()).isEqualTo(Sweep.standard(rateHz));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "sweep", "sweep-192000", "SWEEP-48000"})
  void areNotGuessed(String name) {
    assertThat(stimuli.find(name)).isEmpty();
  }

  @Test
  void areFoundByTheExactSampleRateOnly() {
    assertThat(stimuli.forRate(48_000).orElseThrow().name()).isEqualTo("sweep-48000");
    assertThat(stimuli.forRate(47_999)).isEmpty();
  }

  @Test
  void haveOneAnalyserEach() {
    Stimulus stimulus = stimuli.find("default").orElseThrow();
    assertThat(stimuli.analyser(stimulus))
        .isSameAs(stimuli.analyser(new Stimulus("sweep-48000", stimulus.sweep())));
  }
}
