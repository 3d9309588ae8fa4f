package evenpair.demo.study;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.demo.study.ProposalStudy.Reached;
import evenpair.demo.study.SimulatedPopulation.Kind;
import evenpair.statistics.CoverageRank;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The long study, cut down: fewer and smaller repetitions, a lower yield that these can promise.
 */
class ProposalStudyTests {
  /**
   * A promise that is kept with probability 0.95 fails in more than 7 of 40 repetitions once in
   * some 1400 runs (binomial), and the seed is fixed; separate scales for windows and match would
   * keep it in some 0.56 to 0.82 of them, 23 to 33.
   */
  @ParameterizedTest
  @EnumSource(Kind.class)
  void promisesAreKeptInMostRepetitions(Kind kind) {
    Reached reached = new ProposalStudy(40, 120, new CoverageRank(0.9, 0.95)).reached(kind, 7);

    assertThat(reached.bare()).isGreaterThanOrEqualTo(33);
    assertThat(reached.drawn()).as("drawn around").isGreaterThanOrEqualTo(reached.bare());
  }
}
