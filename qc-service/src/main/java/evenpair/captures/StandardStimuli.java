package evenpair.captures;

import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Sweep;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** The standard sweep at the three sample rates that sound cards of a line run at. */
@Component
class StandardStimuli implements Stimuli {
  private static final String STANDARD_DEFAULT = "sweep-48000";

  private final List<Stimulus> stimuli =
      Stream.of(44_100, 48_000, 96_000)
          .map(rateHz -> new Stimulus("sweep-" + rateHz, Sweep.standard(rateHz)))
          .toList();

  /**
   * An analyser plans its transforms when it is made (tens of milliseconds), so each is made at its
   * first use and kept.
   */
  private final Map<Stimulus, ResponseAnalyser> analysers = new ConcurrentHashMap<>();

  @Override
  public List<Stimulus> all() {
    return stimuli;
  }

  @Override
  public Optional<Stimulus> find(String name) {
    String wanted = DEFAULT.equals(name) ? STANDARD_DEFAULT : name;
    return stimuli.stream().filter(stimulus -> stimulus.name().equals(wanted)).findFirst();
  }

  @Override
  public Optional<Stimulus> forRate(double rateHz) {
    return stimuli.stream().filter(stimulus -> stimulus.sweep().rateHz() == rateHz).findFirst();
  }

  @Override
  public ResponseAnalyser analyser(Stimulus stimulus) {
    return analysers.computeIfAbsent(stimulus, key -> new ResponseAnalyser(key.sweep()));
  }
}
