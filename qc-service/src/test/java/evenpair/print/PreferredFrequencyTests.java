package evenpair.print;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PreferredFrequencyTests {
  // ISO 3, R80 (from memory): exact 10^(n/80) beside its rounded number
  @ParameterizedTest
  @CsvSource({"8413.9514, 8500", "5011.8723, 5000", "4466.8359, 4500", "1000, 1000", "19.9526, 20"})
  void aPointOfTheGridIsNamedByItsRoundedNumber(double exact, double rounded) {
    assertThat(PreferredFrequency.of(exact)).isEqualTo(rounded);
  }
}
