package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import tools.jackson.databind.json.JsonMapper;

/** The screens' words against the table of texts; needs no browser. */
class ScreenTextsTests {
  private static final Pattern KEY = Pattern.compile("\"(screen\\.[A-Za-z0-9.]*[A-Za-z0-9])\"");

  /** In quotes for {@code tOf}, or before what a template puts in. */
  private static final Pattern PREFIX =
      Pattern.compile("[\"`](screen\\.[A-Za-z0-9.]*\\.)(?:\"|\\$\\{)");

  /**
   * Three words in a row, as a sentence has them, inside double quotes and not a key, a class list
   * or a piece of an address.
   */
  private static final Pattern SENTENCE =
      Pattern.compile("\"([A-Z][a-z]+ [A-Za-z]+ [a-z]+[^\"]*)\"");

  private static Map<String, String> sources;
  private static Set<String> table;

  @BeforeAll
  static void read() throws IOException {
    PathMatchingResourcePatternResolver files = new PathMatchingResourcePatternResolver();
    sources = new TreeMap<>();
    for (Resource file : files.getResources("classpath*:/static/js/**/*.js")) {
      sources.put(
          file.getURL().toString().replaceFirst(".*/static/", ""),
          file.getContentAsString(StandardCharsets.UTF_8));
    }
    table = new TreeSet<>();
    for (Resource file : files.getResources("classpath*:/texts/en/*.json")) {
      JsonMapper.builder()
          .build()
          .readTree(file.getContentAsString(StandardCharsets.UTF_8))
          .propertyNames()
          .stream()
          .filter(key -> key.startsWith("screen."))
          .forEach(table::add);
    }
    assertThat(sources).as("modules found").hasSizeGreaterThan(20);
  }

  @Test
  void everyKeyThatAModuleNamesStandsInTheTable() {
    Set<String> missing = new TreeSet<>(found(KEY));
    missing.removeAll(table);
    assertThat(missing).isEmpty();
  }

  @Test
  void everyPrefixThatIsCompletedByAWordHasTextsBehindIt() {
    assertThat(found(PREFIX))
        .isNotEmpty()
        .allMatch(prefix -> table.stream().anyMatch(key -> key.startsWith(prefix)));
  }

  @Test
  void noTextOfTheTableIsLeftUnused() {
    Set<String> unused = new TreeSet<>(table);
    unused.removeAll(found(KEY));
    Set<String> prefixes = found(PREFIX);
    unused.removeIf(key -> prefixes.stream().anyMatch(key::startsWith));
    assertThat(unused).isEmpty();
  }

  /** The one sentence written into a module is what is shown when the table cannot be had. */
  @Test
  void noModuleHasSentencesOfItsOwnButTheOneForAServiceThatIsAway() {
    assertThat(found(SENTENCE))
        .hasSize(1)
        .allMatch(sentence -> sentence.startsWith("The Evenpair service does not answer"));
  }

  @Test
  void noModuleWritesMarkupOrStyleIntoStrings() {
    assertThat(sources)
        .allSatisfy(
            (name, source) ->
                assertThat(source)
                    .as(name)
                    .doesNotContain(
                        "innerHTML",
                        "insertAdjacentHTML",
                        "document.write",
                        "style:",
                        "blob:",
                        "eval("));
  }

  private static Set<String> found(Pattern pattern) {
    return sources.values().stream()
        .flatMap(source -> pattern.matcher(source).results())
        .map((MatchResult match) -> match.group(1))
        .collect(Collectors.toCollection(HashSet::new));
  }

  /** A probe that the patterns find what they are for. */
  @Test
  void thePatternsTellKeysFromPrefixes() {
    assertThat(
            Stream.of("\"screen.a.b\"", "\"screen.a.\"")
                .filter(text -> KEY.matcher(text).matches()))
        .containsExactly("\"screen.a.b\"");
    assertThat(PREFIX.matcher("\"screen.a.\"").matches()).isTrue();
    assertThat(SENTENCE.matcher("el(\"p\", {}, \"Scan the pair\")").find()).isTrue();
  }
}
