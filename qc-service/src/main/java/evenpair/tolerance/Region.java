package evenpair.tolerance;

import evenpair.acoustics.Band;
import java.util.Optional;

/**
 * A named span of frequency with its limits.
 *
 * @param name unique in the set
 * @param band the span in hertz
 * @param lower lowest allowed deviation from golden, dB; below upper everywhere
 * @param upper highest allowed deviation from golden, dB
 * @param match largest allowed |left − right|, dB, above 0; empty if the region has no match limit
 * @param required false: a region without data is reported as not judged instead of making the
 *     inspection INVALID
 */
public record Region(
    String name, Band band, Span lower, Span upper, Optional<Span> match, boolean required) {}
