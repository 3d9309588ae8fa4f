package evenpair.statistics;

import java.util.Optional;
import java.util.function.Function;

/**
 * What a sample tells, or why it tells nothing: a number that cannot be known is never NaN, it is a
 * {@link NotEnough} that says what is missing.
 */
public sealed interface Finding<T> permits Finding.Found, Finding.NotEnough {
  /** What a sample may lack. */
  enum Lack {
    /** It holds too few units. */
    UNITS,
    /** All its values are alike. */
    SPREAD,
    /** It holds too few groups with two values at least. */
    GROUPS
  }

  /**
   * @param value what was found
   */
  record Found<T>(T value) implements Finding<T> {}

  /**
   * @param have units, different values or groups there are
   * @param need how many it takes
   */
  record NotEnough<T>(Lack lack, int have, int need) implements Finding<T> {}

  /**
   * @return the value, or nothing
   */
  default Optional<T> told() {
    return this instanceof Found<T> found ? Optional.of(found.value()) : Optional.empty();
  }

  /**
   * @return the same of another quantity that follows from this one
   */
  default <R> Finding<R> map(Function<T, R> next) {
    if (this instanceof NotEnough<T> lacking) {
      return new NotEnough<>(lacking.lack(), lacking.have(), lacking.need());
    }
    return new Found<>(next.apply(((Found<T>) this).value()));
  }
}
