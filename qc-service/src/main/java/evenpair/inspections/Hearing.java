package evenpair.inspections;

import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Samples;
import evenpair.acoustics.UnusableCapture;
import evenpair.captures.Stimuli;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.web.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** The signal processing of one seating: recordings become responses. The slow part of an attempt; needs no database. */
@Component
class Hearing {
  private final Stimuli stimuli;

  Hearing(Stimuli stimuli) {
    this.stimuli = stimuli;
  }

  /**
   * @param stimulusName empty: the default one of the recordings' sample rate
   * @throws Refusal 422 if the stimulus is unknown or the sample rates do not fit
   */
  HeardPair hear(SentPair pair, Optional<String> stimulusName) {
    Optional<Stimulus> stimulus = stimulus(pair, stimulusName);
    Heard left = heard(pair.left(), stimulus);
    Heard right = heard(pair.right(), stimulus);
    List<Reason> together = silent(left) || silent(right) ? List.of() : PairFlaws.of(pair);
    return new HeardPair(left, right, stimulus, together);
  }

  private Optional<Stimulus> stimulus(SentPair pair, Optional<String> name) {
    List<SentChannel> recorded =
        Stream.of(pair.left(), pair.right()).filter(c -> c.sound() instanceof SentChannel.Recording).toList();
    Optional<Stimulus> named = name.map(this::named);
    if (recorded.isEmpty()) {
      return Optional.empty();
    }
    double rate = rate(recorded.get(0));
    Stimulus stimulus = named.or(() -> stimuli.forRate(rate)).orElseThrow(() -> unknownRate(recorded.get(0), rate));
    for (SentChannel channel : recorded) {
      requireRate(channel, stimulus);
    }
    return Optional.of(stimulus);
  }

  private Stimulus named(String name) {
    return stimuli
        .find(name)
        .orElseThrow(
            () ->
                new Refusal(422, "unknown-stimulus", "There is no stimulus '" + name + "'.")
                    .with("field", "stimulus")
                    .with("choices", names()));
  }

  private Refusal unknownRate(SentChannel channel, double rate) {
    String part = channel.file().part();
    return new Refusal(
            422, "sample-rate", "The part '" + part + "' has " + hertz(rate) + ", for which there is no stimulus.")
        .with("part", part)
        .with("expected", "a sample rate that a stimulus has")
        .with("choices", names());
  }

  private static void requireRate(SentChannel channel, Stimulus stimulus) {
    double expected = stimulus.sweep().rateHz();
    if (rate(channel) != expected) {
      String part = channel.file().part();
      String detail =
          "The part '%s' has %s, but the stimulus '%s' is played at %s."
              .formatted(part, hertz(rate(channel)), stimulus.name(), hertz(expected));
      throw new Refusal(422, "sample-rate", detail).with("part", part).with("expected", hertz(expected));
    }
  }

  private Heard heard(SentChannel channel, Optional<Stimulus> stimulus) {
    if (channel.sound() instanceof SentChannel.Finished finished) {
      return new Heard.Finished(finished.curve());
    }
    ResponseAnalyser analyser = stimuli.analyser(stimulus.orElseThrow());
    try {
      return new Heard.Clear(analyser.analyse(samples(channel)));
    } catch (UnusableCapture e) {
      return new Heard.Flawed(reason(channel.channel(), e));
    }
  }

  private static Reason reason(Channel channel, UnusableCapture e) {
    return Reason.of(ReasonKind.valueOf(e.flaw().name()), channel, null, null);
  }

  private List<String> names() {
    return stimuli.all().stream().map(Stimulus::name).toList();
  }

  private static boolean silent(Heard heard) {
    return heard instanceof Heard.Flawed flawed && flawed.reason().kind() == ReasonKind.SILENT;
  }

  private static double rate(SentChannel channel) {
    return samples(channel).rateHz();
  }

  private static Samples samples(SentChannel channel) {
    return ((SentChannel.Recording) channel.sound()).samples();
  }

  private static String hertz(double rate) {
    return (rate == Math.rint(rate) ? Long.toString((long) rate) : Double.toString(rate)) + " Hz";
  }
}
