package evenpair.web.jobs;

import java.net.URI;
import java.util.Optional;
import java.util.UUID;

/**
 * A kind of long work, cut into steps that any process can do. A bean of this type is all that is
 * needed. Everything that a step must know stands in the parameters or in tables of its own: no
 * state in the process.
 */
public interface JobKind {
  /**
   * @return the name under which jobs of this kind are started: lower case, digits, hyphens
   */
  String name();

  /**
   * Asked once, before the first step.
   *
   * @return how many steps there are, 0 or more
   */
  int total(String parameters);

  /**
   * Does one step, a few seconds long at most. It runs in a transaction that also counts it: what
   * it writes through the same data source is there exactly if the step counts as done. What it
   * does elsewhere (a file) may happen twice and must not mind. A {@link evenpair.web.Refusal} ends
   * the job at once with its sentence; any other exception has the step tried again, and ends the
   * job after {@value JobRunner#TRIES} tries.
   *
   * @param index from 0, one after the other
   */
  void step(String parameters, int index) throws Exception;

  /**
   * Asked when the last step is done.
   *
   * @return address of what came out, for the reader of {@code GET /api/jobs/{id}}
   */
  default Optional<URI> result(String parameters, UUID job) {
    return Optional.empty();
  }
}
