package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Simplified Chinese against English, file by file. */
class ChineseTextsTests {
  private static final Pattern PLACEHOLDER = Pattern.compile("\\{[^}]*}");
  private static final Pattern WORD = Pattern.compile("\\p{L}{4,}");

  /** The same in every language: names and commands that a person types as they are. */
  private static final Set<String> PROPER_NAMES =
      Set.of(
          "screen.language.en",
          "screen.language.zh",
          "screen.batches.empty.command",
          "screen.station.empty.command",
          "paper.software-value");

  private static final Map<String, Map<String, String>> ENGLISH = read("en");
  private static final Map<String, Map<String, String>> CHINESE = read("zh");

  static List<String> both() {
    return ENGLISH.keySet().stream().filter(CHINESE::containsKey).toList();
  }

  @Test
  void everyEnglishFileHasAChineseNamesakeAndNoneIsLeftOver() {
    assertThat(CHINESE.keySet()).isEqualTo(ENGLISH.keySet());
  }

  @ParameterizedTest
  @MethodSource("both")
  void noTextIsMissingAndNoneIsLeftOver(String file) {
    Set<String> missing = new TreeSet<>(ENGLISH.get(file).keySet());
    missing.removeAll(CHINESE.get(file).keySet());
    Set<String> leftOver = new TreeSet<>(CHINESE.get(file).keySet());
    leftOver.removeAll(ENGLISH.get(file).keySet());
    assertThat(missing).as("texts that zh/" + file + " lacks").isEmpty();
    assertThat(leftOver).as("texts of zh/" + file + " that English has no longer").isEmpty();
  }

  @ParameterizedTest
  @MethodSource("both")
  void placeholdersAreTheSame(String file) {
    assertThat(
            wrong(
                file,
                key -> !placeholders(ENGLISH, file, key).equals(placeholders(CHINESE, file, key))))
        .isEmpty();
  }

  @ParameterizedTest
  @MethodSource("both")
  void everyTextIsWrittenAndInChinese(String file) {
    assertThat(
            wrong(
                file,
                key -> {
                  String text = CHINESE.get(file).get(key);
                  boolean same = text.equals(ENGLISH.get(file).get(key));
                  return text.isBlank() || (same && !PROPER_NAMES.contains(key) && hasWords(text));
                }))
        .isEmpty();
  }

  /** A probe that the check for words finds them, and lets numbers and signs through. */
  @Test
  void wordsAreToldFromPlaceholdersAndUnits() {
    assertThat(hasWords("Scan the pair")).isTrue();
    assertThat(hasWords("{from|Hz} – {to|Hz}")).isFalse();
    assertThat(hasWords("Cpk")).isFalse();
  }

  /** Four letters in a row: units, indices and letters of formulae are shorter. */
  private static boolean hasWords(String text) {
    return WORD.matcher(PLACEHOLDER.matcher(text).replaceAll("")).find();
  }

  private static List<String> wrong(String file, java.util.function.Predicate<String> isWrong) {
    return ENGLISH.get(file).keySet().stream()
        .filter(CHINESE.get(file)::containsKey)
        .filter(isWrong)
        .toList();
  }

  private static List<String> placeholders(
      Map<String, Map<String, String>> language, String file, String key) {
    return PLACEHOLDER
        .matcher(language.get(file).get(key))
        .results()
        .map(MatchResult::group)
        .sorted()
        .toList();
  }

  private static Map<String, Map<String, String>> read(String language) {
    try {
      Resource[] files =
          new PathMatchingResourcePatternResolver()
              .getResources("classpath*:texts/" + language + "/*.json");
      return Stream.of(files)
          .collect(
              Collectors.toMap(
                  Resource::getFilename, ChineseTextsTests::texts, (a, b) -> a, TreeMap::new));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Map<String, String> texts(Resource file) {
    try {
      return JsonMapper.builder()
          .build()
          .readValue(
              file.getContentAsString(StandardCharsets.UTF_8),
              new TypeReference<TreeMap<String, String>>() {});
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
