package evenpair.demo.study;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.statistics.Proportion;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** The long run in small: 60 seatings of 15 pairs. */
class SeatingStudyTests {
  @Test
  void tellsBadSeatingsFromGoodOnesAndFromFaults() {
    SeatingFigures figures = new SeatingStudy(11).run(15);

    // At the long run's bars a share of 95 % misses 3 or more of 15 once in 28 runs, and a rule
    // that
    // calls 1 % of good seatings, or 2 % of weak drivers, calls 3 of 15 less than once in 250.
    assertThat(figures.bad().hits()).isGreaterThanOrEqualTo(13);
    assertThat(figures.good().hits()).isLessThanOrEqualTo(2);
    assertThat(figures.weakBass().hits()).isLessThanOrEqualTo(2);
    assertThat(figures.faulty().hits()).isLessThanOrEqualTo(3);
  }

  @Test
  void saysWhichBarIsMissed() {
    SeatingFigures figures =
        new SeatingFigures(
            new Proportion(250, 250),
            new Proportion(200, 250),
            new Proportion(0, 500),
            new Proportion(11, 500),
            new Proportion(0, 500));
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    figures.print(new PrintStream(bytes, true, StandardCharsets.UTF_8));

    assertThat(figures.keepsItsBars()).isFalse();
    assertThat(bytes.toString(StandardCharsets.UTF_8))
        .containsPattern("bad seatings called RESEAT +450 of +500 +90.00 % .*MISSED")
        .containsPattern("good seatings called RESEAT +0 of +500 .*below 1 %\\s*\\n")
        .containsPattern("weak bass drivers taken for leaks +11 of +500 +2.20 % .*MISSED");
  }
}
