package evenpair.stations;

import evenpair.acoustics.Response;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Samples;
import evenpair.acoustics.UnusableCapture;
import evenpair.captures.Stimuli;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.web.Refusal;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Component;

/** From a station's capture of a stimulus to its response. */
@Component
class CaptureAnalysis {
  private final Stimuli stimuli;

  CaptureAnalysis(Stimuli stimuli) {
    this.stimuli = stimuli;
  }

  ResponseAnalyser analyser(Stimulus stimulus) {
    return stimuli.analyser(stimulus);
  }

  /**
   * @param part the part's name in a refusal
   * @throws Refusal 422 naming what is wrong with the capture and where
   */
  static Response response(String part, Samples samples, ResponseAnalyser analyser) {
    try {
      return analyser.analyse(samples);
    } catch (UnusableCapture e) {
      String flaw = e.flaw().name().toLowerCase(Locale.ROOT).replace('_', '-');
      throw new Refusal(
              422,
              "unusable-capture",
              String.format(
                  Locale.ROOT,
                  "The part '%s' cannot be used: %s at %.3f s (found %.4g, allowed %.4g).",
                  part,
                  flaw.replace('-', ' '),
                  e.atSeconds(),
                  e.measured(),
                  e.allowed()))
          .with("part", part)
          .with("flaw", flaw)
          .with("place", String.format(Locale.ROOT, "%.4f s", e.atSeconds()))
          .with("measured", e.measured())
          .with("allowed", e.allowed());
    }
  }

  /**
   * @param name null for the standard sweep at that rate
   * @throws Refusal 422 with the known names if there is none, or it has another sample rate
   */
  Stimulus stimulus(String name, double rateHz) {
    List<String> names = stimuli.all().stream().map(Stimulus::name).toList();
    if (name == null) {
      return stimuli.forRate(rateHz).orElseThrow(() -> unknownRate(rateHz, names));
    }
    Stimulus stimulus = stimuli.find(name).orElseThrow(() -> unknownStimulus(names));
    if (stimulus.sweep().rateHz() != rateHz) {
      throw new Refusal(
              422,
              "sample-rates-differ",
              String.format(
                  Locale.ROOT,
                  "The stimulus '%s' has %.0f samples a second, the captures have %.0f.",
                  stimulus.name(),
                  stimulus.sweep().rateHz(),
                  rateHz))
          .with("field", "stimulus")
          .with("expected", stimulus.sweep().rateHz());
    }
    return stimulus;
  }

  private static Refusal unknownRate(double rateHz, List<String> names) {
    return new Refusal(
            422,
            "unknown-sample-rate",
            String.format(
                Locale.ROOT, "No stimulus has the captures' %.0f samples a second.", rateHz))
        .with("choices", names);
  }

  private static Refusal unknownStimulus(List<String> names) {
    return new Refusal(422, "unknown-stimulus", "There is no stimulus of that name.")
        .with("field", "stimulus")
        .with("choices", names);
  }
}
