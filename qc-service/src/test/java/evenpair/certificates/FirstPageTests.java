package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.print.Printer;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FirstPageTests {
  private static final Clock CLOCK = Clock.fixed(PassedPair.CLOSED, ZoneOffset.UTC);

  @Test
  void isPrintedByTheRealEngineAndLayout() {
    List<byte[]> printed = new ArrayList<>();
    Printer real = Paper.PRINTER;

    boolean worked =
        new FirstPage(
                sheet -> {
                  printed.add(real.print(sheet));
                  return printed.get(0);
                },
                CLOCK)
            .print();

    assertThat(worked).isTrue();
    assertThat(PrintedPage.of("first-page", printed.get(0)).pages()).isEqualTo(1);
  }

  @Test
  void thatFailsHindersNothing() {
    boolean worked =
        new FirstPage(
                sheet -> {
                  throw new IllegalStateException("no fonts");
                },
                CLOCK)
            .print();

    assertThat(worked).isFalse();
  }
}
