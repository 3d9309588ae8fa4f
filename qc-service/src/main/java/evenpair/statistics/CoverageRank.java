package evenpair.statistics;

import java.util.OptionalInt;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * How many units a limit without any assumption on their distribution needs: the k-th smallest of n
 * values is a limit that at least the share p of the population keeps, with confidence γ, if
 * P(Bin(n, p) ≤ k − 1) ≥ γ. Source: S. S. Wilks, Ann. Math. Stat. 12 (1941) 91–96 (from memory).
 *
 * @param share p, the share of the population wanted, above 0 and below 1
 * @param confidence γ, above 0 and below 1
 */
public record CoverageRank(double share, double confidence) {
  /**
   * @throws IllegalArgumentException if share or confidence is not within 0 … 1
   */
  public CoverageRank {
    requireProbability("share", share);
    requireProbability("confidence", confidence);
  }

  private static void requireProbability(String what, double value) {
    if (!(value > 0 && value < 1)) {
      throw new IllegalArgumentException(what + " must lie between 0 and 1, was " + value);
    }
  }

  /**
   * @param n number of values, 1 upwards
   * @return the smallest k, 1 … n, whose k-th smallest value is such a limit; empty if not even the
   *     largest is
   */
  public OptionalInt of(int n) {
    if (n < 1) {
      throw new IllegalArgumentException("a rank needs one value or more, was given " + n);
    }
    BinomialDistribution kept = new BinomialDistribution(null, n, share);
    if (kept.cumulativeProbability(n - 1) < confidence) {
      return OptionalInt.empty();
    }
    int tooSmall = 0;
    int enough = n;
    while (enough - tooSmall > 1) {
      int k = (tooSmall + enough) >>> 1;
      if (kept.cumulativeProbability(k - 1) >= confidence) {
        enough = k;
      } else {
        tooSmall = k;
      }
    }
    return OptionalInt.of(enough);
  }

  /**
   * @return the smallest n of which the largest value is such a limit: 1 − pⁿ ≥ γ
   */
  public int unitsNeeded() {
    int n = Math.max(1, (int) Math.floor(Math.log1p(-confidence) / Math.log(share)) - 1);
    while (1 - Math.pow(share, n) < confidence) {
      n++;
    }
    return n;
  }

  /**
   * @param n number of values, 1 upwards
   * @return the largest p that the largest of n values promises: (1 − γ)^(1/n)
   */
  public static double promised(int n, double confidence) {
    requireProbability("confidence", confidence);
    return Math.exp(Math.log1p(-confidence) / n);
  }
}
