package evenpair.inspections;

import evenpair.acoustics.Drive;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Response;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.ResponseAnalyser.WithDistortion;
import evenpair.acoustics.Samples;
import evenpair.acoustics.UnusableCapture;
import evenpair.captures.Stimuli;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/**
 * The signal processing of one seating: recordings become responses. The slow part of an attempt;
 * needs no database.
 */
@Component
class Hearing {
  private static final double DRIVE_REFERENCE_HZ = 1000;

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
    List<Reason> together = new ArrayList<>();
    Ear ear = stimulus.map(s -> ear(s, pair, together)).orElse(Ear.DEAF);
    Heard left = heard(pair.left(), ear);
    Heard right = heard(pair.right(), ear);
    if (!silent(left) && !silent(right)) {
      together.addAll(PairFlaws.of(pair));
    }
    return new HeardPair(left, right, stimulus, together, IdleHearing.of(pair));
  }

  /** Turns one recording into response and distortion. */
  private interface Ear {
    Ear DEAF =
        samples -> {
          throw new IllegalStateException("a recording without a stimulus");
        };

    WithDistortion listen(Samples samples) throws UnusableCapture;
  }

  /**
   * With the drive recorded beside it a response is microphone over drive. The drive's own gain is
   * not known, only its shape is: it is taken re its level at 1 kHz, where the output calibration
   * says how many volts full scale is.
   *
   * @param flaws takes what is wrong with the drive's channel; the microphones are then heard
   *     without it
   */
  private Ear ear(Stimulus stimulus, SentPair pair, List<Reason> flaws) {
    ResponseAnalyser analyser = stimuli.analyser(stimulus);
    if (pair.drive().isEmpty()) {
      return analyser::analyseWithDistortion;
    }
    try {
      Drive drive = analyser.drive(pair.drive().get());
      double gainDb = drive.level().at(Grid.nearest(DRIVE_REFERENCE_HZ));
      return samples -> scaled(analyser.analyseAgainstWithDistortion(samples, drive), gainDb);
    } catch (UnusableCapture e) {
      flaws.add(reason(null, e));
      return analyser::analyseWithDistortion;
    }
  }

  private static WithDistortion scaled(WithDistortion heard, double gainDb) {
    Response response = heard.response();
    Response scaled =
        new Response(
            response.level().plus(gainDb),
            response.phaseDeg(),
            response.signalToNoise(),
            response.arrivalSeconds(),
            response.delaySeconds(),
            response.peak());
    return new WithDistortion(scaled, heard.distortion());
  }

  private Optional<Stimulus> stimulus(SentPair pair, Optional<String> name) {
    List<SentChannel> recorded =
        Stream.of(pair.left(), pair.right())
            .filter(c -> c.sound() instanceof SentChannel.Recording)
            .toList();
    Optional<Stimulus> named = name.map(this::named);
    if (recorded.isEmpty()) {
      return Optional.empty();
    }
    double rate = rate(recorded.get(0));
    Stimulus stimulus =
        named.or(() -> stimuli.forRate(rate)).orElseThrow(() -> unknownRate(recorded.get(0), rate));
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
            422,
            "sample-rate",
            "The part '" + part + "' has " + hertz(rate) + ", for which there is no stimulus.")
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
      throw new Refusal(422, "sample-rate", detail)
          .with("part", part)
          .with("expected", hertz(expected));
    }
  }

  private static Heard heard(SentChannel channel, Ear ear) {
    if (channel.sound() instanceof SentChannel.Finished finished) {
      return new Heard.Finished(finished.curve());
    }
    try {
      WithDistortion heard = ear.listen(samples(channel));
      return new Heard.Clear(heard.response(), heard.distortion());
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
