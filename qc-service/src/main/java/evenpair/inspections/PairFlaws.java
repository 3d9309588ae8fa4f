package evenpair.inspections;

import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What is wrong with two recordings as a pair although each may be good by itself. */
final class PairFlaws {
  /**
   * Recordings made together differ by a block of the sound driver at most; more says that one was
   * cut or is of another take. Common practice, no source: no usual block is longer than 10 ms at a
   * measuring station's settings.
   */
  private static final double LENGTHS_MAY_DIFFER_SECONDS = 0.010;

  private PairFlaws() {}

  static List<Reason> of(SentPair pair) {
    List<Reason> flaws = new ArrayList<>();
    if (identical(pair)) {
      flaws.add(Reason.of(ReasonKind.IDENTICAL_CHANNELS, null, null, null));
    }
    if (lengthsDiffer(pair)) {
      flaws.add(Reason.of(ReasonKind.LENGTHS_DIFFER, null, null, null));
    }
    return flaws;
  }

  /**
   * Noise makes two real recordings differ; equal ones are one recording sent twice, whatever their
   * file headers.
   */
  private static boolean identical(SentPair pair) {
    if (pair.left().sound() instanceof SentChannel.Recording left
        && pair.right().sound() instanceof SentChannel.Recording right) {
      return left.samples().rateHz() == right.samples().rateHz()
          && Arrays.equals(left.samples().values(), right.samples().values());
    }
    if (pair.left().sound() instanceof SentChannel.Finished left
        && pair.right().sound() instanceof SentChannel.Finished right) {
      return left.curve().level().equals(right.curve().level());
    }
    return false;
  }

  private static boolean lengthsDiffer(SentPair pair) {
    if (pair.left().sound() instanceof SentChannel.Recording left
        && pair.right().sound() instanceof SentChannel.Recording right) {
      return Math.abs(left.samples().seconds() - right.samples().seconds())
          > LENGTHS_MAY_DIFFER_SECONDS;
    }
    return false;
  }
}
