package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import evenpair.statistics.GroupDifferences.Difference;
import java.util.Random;
import org.junit.jupiter.api.Test;

class GroupDifferencesTests {
  /**
   * By hand: means 2 and 5, s_within 1 with 4 degrees of freedom, t(0.975; 4) = 2.776445 (any
   * table, six decimals); half width 2.776445·√(1/3 + 1/3) = 2.266958.
   */
  @Test
  void ofTwoGroupsAreStudents() {
    GroupDifferences found =
        GroupDifferences.of(0.95, 1, new double[] {1, 2, 3}, new double[] {4, 5, 6})
            .told()
            .orElseThrow();

    Difference difference = found.differences().get(0);
    assertThat(difference.meanDifference()).isCloseTo(-3, within(1e-12));
    assertThat(difference.interval().lower()).isCloseTo(-3 - 2.266958, within(1e-6));
    assertThat(difference.interval().excludes(0)).isTrue();
  }

  /**
   * Groups that are alike: any of the intervals of a comparison misses 0 in at most 5 % of cases;
   * Bonferroni's inequality is nearly an equation for three pairs. Four standard errors of a share
   * of 5 % in 4000 cases: 1.4 %.
   */
  @Test
  void seldomCallAlikeGroupsDifferent() {
    Random random = new Random(15);
    int wrong = 0;
    for (int i = 0; i < 4000; i++) {
      GroupDifferences found =
          GroupDifferences.of(0.95, 1, draw(random), draw(random), draw(random))
              .told()
              .orElseThrow();
      wrong += found.differences().stream().anyMatch(d -> d.interval().excludes(0)) ? 1 : 0;
    }
    assertThat(wrong / 4000.0).isBetween(0.03, 0.05 + 0.014);
  }

  private static double[] draw(Random random) {
    return random.doubles(8).map(Normal::quantile).toArray();
  }

  @Test
  void sayWhatTheyNeed() {
    assertThat(GroupDifferences.of(0.95, 1, new double[] {1, 2, 3}))
        .isEqualTo(new NotEnough<>(Lack.GROUPS, 1, 2));
    assertThat(GroupDifferences.of(0.95, 1, new double[] {1, 2, 3}, new double[] {1}))
        .isEqualTo(new NotEnough<>(Lack.GROUPS, 1, 2));
    assertThat(GroupDifferences.of(0.95, 1, new double[] {1, 1}, new double[] {2, 2}))
        .isEqualTo(new NotEnough<>(Lack.SPREAD, 1, 2));
  }
}
