package evenpair.captures;

import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Sweep;
import java.util.List;
import java.util.Optional;

/**
 * The test signals that stations play. A capture is turned into a response with the very signal
 * that was played.
 */
public interface Stimuli {
  /**
   * The name that stands for the stimulus which a rig plays if it has no reason to choose another.
   */
  String DEFAULT = "default";

  /**
   * @return every stimulus, the lowest sample rate first
   */
  List<Stimulus> all();

  /**
   * @return the stimulus of that name ({@link #DEFAULT} is the one at 48 kHz); empty if there is
   *     none
   */
  Optional<Stimulus> find(String name);

  /**
   * @return the standard sweep at exactly that sample rate in hertz; empty if there is none
   */
  Optional<Stimulus> forRate(double rateHz);

  /**
   * @return the analyser of captures of that stimulus, made once and shared: it may be used by many
   *     threads at a time
   */
  ResponseAnalyser analyser(Stimulus stimulus);

  /**
   * @param name as the API knows it, such as {@code sweep-48000}
   * @param sweep its parameters
   */
  record Stimulus(String name, Sweep sweep) {}
}
