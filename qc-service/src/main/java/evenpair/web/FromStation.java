package evenpair.web;

import java.util.Optional;

/** An authentication that may come from a station. */
public interface FromStation {
  /**
   * @return the station whose token the request carries
   */
  Optional<String> station();
}
