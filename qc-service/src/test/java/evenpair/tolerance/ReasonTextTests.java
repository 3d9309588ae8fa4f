package evenpair.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

class ReasonTextTests {
  static final Map<String, String> TABLE = table();
  static final Pattern PLACEHOLDER = Pattern.compile("\\{([a-zA-Z]+)(?:\\|([^}]+))?}");

  private static Map<String, String> table() {
    try (InputStream in = ReasonTextTests.class.getResourceAsStream("/texts/en/reasons.json")) {
      return JsonMapper.builder()
          .build()
          .readValue(in, new TypeReference<Map<String, String>>() {});
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * Every reason that can be made of a kind: with and without channel, region, numbers and folded
   * regions.
   */
  static Stream<Reason> reasons() {
    return Arrays.stream(ReasonKind.values()).flatMap(ReasonTextTests::variants);
  }

  private static Stream<Reason> variants(ReasonKind kind) {
    return switch (kind) {
      case LEVEL, WINDOW ->
          Stream.of(Channel.values())
              .flatMap(
                  c ->
                      Stream.of(
                          number(kind, c, 2.3, 1.5, "mid"), number(kind, c, -2.3, -1.5, "mid")))
              .flatMap(ReasonTextTests::andFolded)
              .flatMap(ReasonTextTests::andGuarded);
      case BALANCE, MATCH ->
          Stream.of(number(kind, null, 2.3, 1.5, "mid"), number(kind, null, -2.3, -1.5, "mid"))
              .flatMap(ReasonTextTests::andFolded)
              .flatMap(ReasonTextTests::andGuarded);
      case NO_DATA ->
          channels()
              .flatMap(
                  c -> Stream.of(noNumber(kind, c, "mid", 100.0), noNumber(kind, c, null, 100.0)));
      case NOT_JUDGED ->
          Stream.of(
                  "distortion",
                  "distortion-floor",
                  "idle-noise",
                  "idle-noise-floor",
                  "idle-noise-station",
                  "polarity",
                  "some-later-check")
              .flatMap(
                  check ->
                      Stream.of(
                          Reason.notJudged(check), Reason.notJudged(check, Channel.RIGHT, 120.0)));
      case UNCERTAINTY_MISSING ->
          Stream.of(noNumber(kind, null, "mid", 120.0), noNumber(kind, null, null, null));
      case GUARD_TOO_WIDE ->
          Stream.of(number(kind, null, 2.3, 1.5, "mid"), Reason.of(kind, null, 1.2, 1.0));
      case OTHER_TUNING -> Stream.of(Reason.otherTuning("warm", 0.8, 4.1));
      case DOUBLED_TUNING ->
          Stream.of(
              new Reason(
                  kind, null, null, null, null, null, List.of(), "warm", null, null, List.of(),
                  false));
      case IDLE_NOISE ->
          channels()
              .flatMap(c -> all(kind, c))
              .flatMap(r -> Stream.of(r, r.withUsbLines(List.of(1000.0, 8000.5))));
      case LEAK, DEPTH ->
          channels()
              .flatMap(c -> Stream.of(7.0, -7.0).map(size -> suspicion(kind, c, size)))
              .flatMap(s -> Stream.of(s, s.repeating(true)))
              .flatMap(s -> Stream.of(s.reason(), noNumber(kind, s.channel(), null, null)));
      case SEAL ->
          channels()
              .map(c -> suspicion(ReasonKind.LEAK, c, 7))
              .flatMap(s -> Stream.of(s.seal(), s.repeating(true).seal()));
      case POLARITY_BAND -> channels().map(c -> noNumber(kind, c, "30–120 Hz", null));
      default -> channels().flatMap(c -> all(kind, c));
    };
  }

  private static Stream<Reason> all(ReasonKind kind, Channel channel) {
    return Stream.of(
        noNumber(kind, channel, null, null),
        noNumber(kind, channel, "mid", null),
        number(kind, channel, 12.0, 30.0, null),
        number(kind, channel, 12.0, 30.0, "mid"));
  }

  private static SeatingSuspicion suspicion(ReasonKind kind, Channel channel, double size) {
    return new SeatingSuspicion(kind, channel, size, 3, 120.0, false);
  }

  private static Stream<Reason> andGuarded(Reason reason) {
    return Stream.of(
        reason,
        reason.guarded(CheckState.CONDITIONAL_PASS, 0.5),
        reason.guarded(CheckState.CONDITIONAL_FAIL, 0.5));
  }

  private static Stream<Reason> andFolded(Reason reason) {
    return Stream.of(reason, reason.also(List.of("bass", "treble")));
  }

  private static Stream<Channel> channels() {
    return Stream.concat(Stream.of((Channel) null), Stream.of(Channel.values()));
  }

  private static Reason number(
      ReasonKind kind, Channel channel, double measured, double limit, String region) {
    return new Reason(kind, channel, region, 8500.0, measured, limit, List.of());
  }

  private static Reason noNumber(ReasonKind kind, Channel channel, String region, Double hz) {
    return new Reason(kind, channel, region, hz, null, null, List.of());
  }

  @ParameterizedTest
  @MethodSource("reasons")
  void hasASentenceWhosePlaceholdersAllHaveValues(Reason reason) {
    ReasonText text = ReasonText.of(reason);

    assertThat(TABLE).containsKey(text.key());
    assertThat(placeholders(TABLE.get(text.key())))
        .allSatisfy(name -> assertThat(text.values()).containsKey(name));
  }

  private static List<String> placeholders(String template) {
    List<String> names = new ArrayList<>();
    Matcher matcher = PLACEHOLDER.matcher(template);
    while (matcher.find()) {
      names.add(matcher.group(1));
    }
    return names;
  }

  @ParameterizedTest
  @EnumSource(value = ReasonKind.class)
  void tellsTheOperatorWhatToDoUnlessTheUnitFailed(ReasonKind kind) {
    if (kind.verdict() == Verdict.FAIL) {
      return;
    }
    assertThat(TABLE.entrySet())
        .filteredOn(entry -> entry.getKey().matches("reason\\." + kind.word() + "(\\..*)?"))
        .isNotEmpty()
        .allSatisfy(
            entry ->
                assertThat(entry.getValue())
                    .containsPattern(
                        "measure again|mount (it|both) again|Mount both again|Call an engineer"
                            + "|Send (a curve|curves)"));
  }

  @Test
  void everySentenceOfTheTableIsUsed() {
    List<String> used = reasons().map(reason -> ReasonText.of(reason).key()).distinct().toList();

    assertThat(TABLE.keySet()).filteredOn(key -> key.startsWith("reason.")).isSubsetOf(used);
  }

  @Nested
  class TheWindowSentence {
    @Test
    void saysByHowMuchWhereAndWhatWasAllowed() {
      Reason reason = number(ReasonKind.WINDOW, Channel.RIGHT, 4.3, 3.0, "treble");

      ReasonText text = ReasonText.of(reason);

      assertThat(text.key()).isEqualTo("reason.window.above");
      assertThat(TABLE.get(text.key()))
          .isEqualTo(
              "{earpiece|word} is {excess|dB} dB above its {region} window at {frequency|Hz}"
                  + " ({measured|+dB} dB, allowed {limit|+dB} dB).");
      assertThat(text.values())
          .containsEntry("earpiece", "right-earpiece")
          .containsEntry("region", "treble");
      assertThat((double) text.values().get("excess")).isEqualTo(4.3 - 3.0);
    }

    @Test
    void isAnotherBelowTheWindow() {
      assertThat(ReasonText.of(number(ReasonKind.WINDOW, Channel.LEFT, -3.5, -3.0, "bass")).key())
          .isEqualTo("reason.window.below");
      // a window may lie wholly above zero: below it is still told by the numbers' order, not by
      // their sign
      assertThat(ReasonText.of(number(ReasonKind.WINDOW, Channel.LEFT, 0.5, 1.0, "bass")).key())
          .isEqualTo("reason.window.below");
    }
  }
}
