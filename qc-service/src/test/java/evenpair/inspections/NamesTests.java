package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NamesTests {
  @ParameterizedTest
  @ValueSource(strings = {"SG2-004217", "a", "a.b_c-9", "耳机001", "Ж-١٢", "É"})
  void acceptsLettersAndDigitsOfAnyScript(String name) {
    assertThat(Names.accept(name)).hasValue(name);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "a b", "a/b", "a\"b", "a'b", "a\nb", "a;b", "\u202Eab", "😀"})
  void refusesEverythingElse(String name) {
    assertThat(Names.accept(name)).isEmpty();
  }

  @Test
  void countsCodePointsNotStorageUnits() {
    String rareLetter = new String(Character.toChars(0x20000));
    assertThat(Names.accept(rareLetter.repeat(64))).isPresent();
    assertThat(Names.accept(rareLetter.repeat(65))).isEmpty();
    assertThat(Names.accept("a".repeat(65))).isEmpty();
  }

  @Test
  void bringsComposedAndDecomposedLettersToOneForm() {
    assertThat(Names.accept("E\u0301")).isEqualTo(Names.accept("\u00c9"));
  }
}
