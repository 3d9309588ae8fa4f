package evenpair.inspections.dropfolder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.web.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class DropFolderTests {
  private static final String JSON =
      "{\"serial\": \"FE-1\", \"tuning\": \"plain\", \"left\": \"a.wav\", \"right\": \"b.wav\"}";

  @TempDir Path folder;
  private final Recording ingest = new Recording();
  private TestDropFolder drop;

  /** Remembers what came, and answers equal content with the first answer. */
  private static final class Recording implements Ingest {
    private record Came(JsonNode inspection, Map<String, String> parts, Instant writtenAt) {}

    private final List<Came> recorded = new ArrayList<>();
    private final Map<String, Taken> answers = new LinkedHashMap<>();
    private Optional<Refusal> refusal = Optional.empty();
    private boolean down;
    private int calls;

    @Override
    public Taken take(byte[] inspection, List<Part> files, Instant writtenAt, Locale locale)
        throws NotNow {
      calls++;
      if (down) {
        throw new NotNow("the database does not answer", new IOException("refused"));
      }
      if (refusal.isPresent()) {
        throw refusal.get();
      }
      Map<String, String> parts = new LinkedHashMap<>();
      files.forEach(
          file -> parts.put(file.name(), new String(file.bytes(), StandardCharsets.UTF_8)));
      String content = new String(inspection, StandardCharsets.UTF_8) + parts;
      Taken before = answers.get(content);
      if (before != null) {
        return new Taken(before.inspection(), true, before.json());
      }
      recorded.add(new Came(JsonMapper.builder().build().readTree(inspection), parts, writtenAt));
      String answer =
          "{\"serial\":\"FE-1\",\"state\":\"closed\",\"verdict\":\"FAIL\",\"next\":\"done\",\"reasons\":[{\"kind\":\"match\",\"text\":\"Left and right differ.\"}]}";
      Taken taken = new Taken(new UUID(7, recorded.size()), false, answer);
      answers.put(content, taken);
      return taken;
    }
  }

  @BeforeEach
  void open() {
    drop = new TestDropFolder(folder, ingest, "rig-1", null);
  }

  @AfterEach
  void close() {
    drop.close();
  }

  private void usePattern() {
    drop.close();
    drop = new TestDropFolder(folder, ingest, "rig-1", TestDropFolder.PATTERN);
  }

  private void putPair() {
    drop.put("a.wav", "LEFT");
    drop.put("b.wav", "RIGHT");
    drop.put("one.json", JSON);
  }

  @Nested
  class Taking {
    @Test
    void takesAPairThatAJsonNamesAndMovesItToDoneWithWhatItCameTo() {
      putPair();
      drop.lookUntilQuiet();

      assertThat(ingest.recorded).hasSize(1);
      assertThat(ingest.recorded.get(0).parts())
          .containsExactly(Map.entry("left", "LEFT"), Map.entry("right", "RIGHT"));
      assertThat(drop.files())
          .containsExactly(
              "done/one/a.wav", "done/one/b.wav", "done/one/one.json", "done/one/result.json");
      JsonNode result = drop.json("done/one/result.json");
      assertThat(result.path("inspection").asString()).isEqualTo(new UUID(7, 1).toString());
      assertThat(result.path("verdict").asString()).isEqualTo("FAIL");
      assertThat(result.path("reasons").path(0).path("text").asString())
          .isEqualTo("Left and right differ.");
      assertThat(drop.leftOnTheDesk()).isEmpty();
    }

    @Test
    void actsAsTheFoldersStationAndFillsInWhatTheSettingsSay() {
      putPair();
      drop.lookUntilQuiet();
      JsonNode inspection = ingest.recorded.get(0).inspection();
      assertThat(inspection.path("station").asString()).isEqualTo("rig-1");
      assertThat(inspection.path("product").asString()).isEqualTo("fern-1");
      assertThat(inspection.path("batch").asString()).isEqualTo("FB-1");
      assertThat(inspection.path("operator").asString()).isEqualTo("op-17");
      assertThat(inspection.has("left")).as("names of files are no fields").isFalse();
    }

    @Test
    void leavesWhatTheJsonSaysAsItIs() {
      drop.put("a.wav", "LEFT");
      drop.put("b.wav", "RIGHT");
      drop.put("one.json", JSON.replace("{", "{\"batch\": \"FB-9\", \"station\": \"rig-1\", "));
      drop.lookUntilQuiet();
      assertThat(ingest.recorded.get(0).inspection().path("batch").asString()).isEqualTo("FB-9");
    }

    @Test
    void takesATwoChannelFileWithIdleRecordings() {
      drop.put("pair.WAV", "BOTH");
      drop.put("idle-l.wav", "IL");
      drop.put("idle-r.wav", "IR");
      drop.put(
          "one.json",
          "{\"serial\": \"FE-1\", \"both\": \"pair.WAV\", \"idleLeft\": \"idle-l.wav\", \"idleRight\": \"idle-r.wav\"}");
      drop.lookUntilQuiet();
      assertThat(ingest.recorded.get(0).parts()).containsOnlyKeys("both", "idleLeft", "idleRight");
    }

    @Test
    void readsFieldsAndSideFromNamesThatFitThePattern() {
      usePattern();
      drop.put("FE-2_plain_R.wav", "RIGHT");
      drop.put("FE-2_plain_L.wav", "LEFT");
      drop.put("FE-3_plain_L.csv", "1000,90");
      drop.lookUntilQuiet();
      assertThat(ingest.recorded).hasSize(1);
      assertThat(ingest.recorded.get(0).inspection().path("serial").asString()).isEqualTo("FE-2");
      assertThat(ingest.recorded.get(0).inspection().path("tuning").asString()).isEqualTo("plain");
      assertThat(ingest.recorded.get(0).parts())
          .containsExactlyInAnyOrderEntriesOf(Map.of("left", "LEFT", "right", "RIGHT"));
      assertThat(drop.files()).contains("FE-3_plain_L.csv", "done/FE-2_plain_L/result.json");
    }

    @Test
    void saysWhenTheCapturesWereWritten() throws IOException {
      putPair();
      drop.look();
      Instant written = Files.getLastModifiedTime(folder.resolve("b.wav")).toInstant();
      drop.pass(Duration.ofHours(9));
      drop.look();
      assertThat(ingest.recorded.get(0).writtenAt()).isEqualTo(written);
    }

    @Test
    void takesSetsInTheOrderInWhichTheyWereWritten() throws IOException {
      usePattern();
      for (String serial : List.of("FE-A", "FE-B")) {
        drop.put(serial + "_plain_L.wav", "L" + serial);
        drop.put(serial + "_plain_R.wav", "R" + serial);
      }
      for (String side : List.of("L", "R")) {
        Files.setLastModifiedTime(
            folder.resolve("FE-B_plain_" + side + ".wav"),
            java.nio.file.attribute.FileTime.from(Instant.parse("2026-01-01T00:00:00Z")));
      }
      drop.lookUntilQuiet();
      assertThat(ingest.recorded)
          .extracting(came -> came.inspection().path("serial").asString())
          .containsExactly("FE-B", "FE-A");
    }

    @Test
    void givesASecondSetOfTheSameNameASuffix() {
      putPair();
      drop.lookUntilQuiet();
      drop.put("a.wav", "LEFT2");
      drop.put("b.wav", "RIGHT2");
      drop.put("one.json", JSON);
      drop.lookUntilQuiet();
      assertThat(drop.files()).contains("done/one/a.wav", "done/one-2/a.wav");
      assertThat(drop.text("done/one/a.wav")).isEqualTo("LEFT");
      assertThat(drop.text("done/one-2/a.wav")).isEqualTo("LEFT2");
    }

    @Test
    void neverWritesAReportOverAFileOfTheSet() {
      drop.put("a.wav", "LEFT");
      drop.put("b.wav", "RIGHT");
      drop.put("result.json", JSON);
      drop.lookUntilQuiet();
      assertThat(drop.text("done/result/result.json")).isEqualTo(JSON);
      assertThat(drop.json("done/result/evenpair-result.json").path("verdict").asString())
          .isEqualTo("FAIL");
    }
  }

  @Nested
  class Waiting {
    @Test
    void waitsWhileAFileGrows() {
      putPair();
      for (int look = 0; look < 5; look++) {
        drop.put("b.wav", "RIGHT".repeat(look + 2));
        drop.look();
        drop.pass(TestDropFolder.QUIET);
      }
      assertThat(ingest.calls).isZero();
      drop.look();
      assertThat(ingest.recorded).hasSize(1);
    }

    @Test
    void doesNotTakeAFileThatIsAsOldAsItIsButWasNeverSeenQuiet() {
      putPair();
      drop.look();
      drop.pass(TestDropFolder.QUIET.minusMillis(1));
      drop.look();
      assertThat(ingest.calls).isZero();
    }

    @Test
    void waitsForTheFilesOfAJsonAndThenRefusesItWithASentence() {
      drop.put("a.wav", "LEFT");
      drop.put("one.json", JSON);
      drop.lookUntilQuiet();
      assertThat(drop.files()).containsExactly("a.wav", "one.json");
      assertThat(drop.state().waiting()).isEqualTo(1);

      drop.pass(TestDropFolder.PATIENCE);
      drop.look();
      assertThat(drop.files())
          .containsExactly(
              "refused/one/a.wav",
              "refused/one/one.json",
              "refused/one/problem.json",
              "refused/one/reason.txt");
      assertThat(drop.text("refused/one/reason.txt"))
          .contains(
              "The file 'b.wav' (right) is not there, or is empty; waited for it for 10 min.");
      assertThat(ingest.calls).isZero();
    }

    @Test
    void takesTheSetIfTheMissingFileComesInTime() {
      drop.put("a.wav", "LEFT");
      drop.put("one.json", JSON);
      drop.lookUntilQuiet();
      drop.pass(TestDropFolder.PATIENCE.minusSeconds(4));
      drop.put("b.wav", "RIGHT");
      drop.lookUntilQuiet();
      assertThat(ingest.recorded).hasSize(1);
    }

    @Test
    void refusesHalfAPairByNameAfterTheSameTime() {
      usePattern();
      drop.put("FE-2_plain_L.wav", "LEFT");
      drop.lookUntilQuiet();
      drop.pass(TestDropFolder.PATIENCE);
      drop.look();
      assertThat(drop.text("refused/FE-2_plain_L/reason.txt"))
          .contains("The right side is not there");
    }

    @Test
    void waitsForTheDatabaseAndTakesTheSetOnceItIsBack() {
      ingest.down = true;
      putPair();
      drop.lookUntilQuiet();
      assertThat(drop.files()).containsExactly("a.wav", "b.wav", "one.json");
      assertThat(drop.state().problem()).contains("does not answer");
      ingest.down = false;
      drop.pass(Duration.ofMinutes(1));
      drop.look();
      assertThat(ingest.recorded).hasSize(1);
      drop.look();
      assertThat(drop.state().problem()).isNull();
    }

    @Test
    void asksADatabaseThatIsDownLessAndLessOften() {
      ingest.down = true;
      putPair();
      drop.lookUntilQuiet();
      for (int look = 0; look < 150; look++) {
        drop.pass(Duration.ofSeconds(2));
        drop.look();
      }
      // five minutes: after 2, 6, 14, 30, 62 s, then each minute
      assertThat(ingest.calls).isBetween(8, 10);
    }
  }

  @Nested
  class Refusing {
    @Test
    void saysWhichFileWhereAndWhatWouldBeRight() {
      ingest.refusal =
          Optional.of(
              new Refusal(
                      422,
                      "unreadable-capture",
                      "The part 'right' cannot be decoded: no fmt chunk.")
                  .with("part", "right")
                  .with("place", "byte 12")
                  .with("expected", "a RIFF file"));
      putPair();
      drop.lookUntilQuiet();
      assertThat(drop.text("refused/one/reason.txt"))
          .contains(
              "cannot be decoded: no fmt chunk",
              "File: b.wav",
              "Place: byte 12",
              "What would be right: a RIFF file.",
              "station rig-1");
      assertThat(drop.json("refused/one/problem.json").path("type").asString())
          .isEqualTo("unreadable-capture");
      assertThat(drop.state().refused()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(
        strings = {"../secret.wav", "/etc/a.wav", "..", "sub/a.wav", ".hidden.wav", "a.exe", ""})
    void refusesAJsonThatNamesNoPlainFileOfTheFolder(String name) {
      drop.put(
          "one.json", "{\"serial\": \"FE-1\", \"left\": \"" + name + "\", \"right\": \"b.wav\"}");
      drop.lookUntilQuiet();
      assertThat(drop.text("refused/one/reason.txt")).contains("Field: left", "File: one.json");
      assertThat(ingest.calls).isZero();
    }

    @Test
    void refusesABrokenJsonAndSaysWhere() {
      drop.put("one.json", "{\"serial\": \"FE-1\",\n \"left\": }");
      drop.lookUntilQuiet();
      assertThat(drop.text("refused/one/reason.txt")).contains("not valid JSON", "Place: line 2");
    }

    @Test
    void refusesAJsonThatSpeaksForAnotherStation() {
      drop.put("a.wav", "LEFT");
      drop.put("b.wav", "RIGHT");
      drop.put("one.json", JSON.replace("{", "{\"station\": \"rig-2\", "));
      drop.lookUntilQuiet();
      assertThat(drop.text("refused/one/reason.txt")).contains("Field: station", "rig-1");
      assertThat(ingest.calls).isZero();
    }

    @Test
    void refusesOneFileForTwoParts() {
      drop.put("a.wav", "LEFT");
      drop.put("one.json", JSON.replace("b.wav", "a.wav"));
      drop.lookUntilQuiet();
      assertThat(drop.text("refused/one/reason.txt")).contains("names one file twice");
    }

    @Test
    void refusesACaptureThatNothingSpeaksOfButOnlyAfterAWhile() {
      drop.put("lost.wav", "LEFT");
      drop.lookUntilQuiet();
      assertThat(drop.files()).containsExactly("lost.wav");
      drop.pass(TestDropFolder.PATIENCE);
      drop.look();
      assertThat(drop.text("refused/lost/reason.txt"))
          .contains("Nothing says what 'lost.wav' is of");
    }

    @Test
    void leavesOtherFilesHiddenOnesAndFoldersAlone() throws IOException {
      for (String name : List.of("Thumbs.db", ".one.wav", "one.wav.part", "tab\t.wav")) {
        drop.put(name, "x");
      }
      Files.createDirectory(folder.resolve("folder.wav"));
      drop.lookUntilQuiet();
      drop.pass(TestDropFolder.PATIENCE.multipliedBy(2));
      drop.look();
      assertThat(drop.files())
          .containsExactlyInAnyOrder("Thumbs.db", ".one.wav", "one.wav.part", "tab\t.wav");
      assertThat(folder.resolve("folder.wav")).isDirectory();
    }

    @Test
    void neverFollowsALinkOutOfTheFolder(@TempDir Path outside) throws IOException {
      Path secret = Files.writeString(outside.resolve("secret.wav"), "SECRET");
      Files.createSymbolicLink(folder.resolve("a.wav"), secret);
      drop.put("b.wav", "RIGHT");
      drop.put("one.json", JSON);
      drop.lookUntilQuiet();
      assertThat(drop.text("refused/one/reason.txt")).contains("'a.wav' is a link");
      assertThat(ingest.calls).isZero();
      assertThat(secret).hasContent("SECRET");
    }
  }

  @Nested
  class Restarting {
    /** Every step at which a kill can hit, in their order. */
    @ParameterizedTest
    @ValueSource(
        strings = {"note", "move one.json", "move a.wav", "move b.wav", "report", "show", "forget"})
    void neitherLosesNorRepeatsWhateverStepAKillHits(String step) {
      putPair();
      drop.restartKilledBefore(step);
      drop.look();
      drop.pass(TestDropFolder.QUIET);
      assertThatThrownBy(drop::look).isInstanceOf(TestDropFolder.Killed.class);

      drop.restart();
      drop.lookUntilQuiet();
      assertThat(ingest.recorded).as("recorded once").hasSize(1);
      assertThat(drop.files())
          .containsExactly(
              "done/one/a.wav", "done/one/b.wav", "done/one/one.json", "done/one/result.json");
      assertThat(drop.json("done/one/result.json").path("inspection").asString())
          .isEqualTo(new UUID(7, 1).toString());
      assertThat(drop.leftOnTheDesk()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"note", "move a.wav", "show", "forget"})
    void doesNotTakeALaterFileOfTheSameNameForTheOldOne(String step) throws IOException {
      putPair();
      drop.restartKilledBefore(step);
      drop.look();
      drop.pass(TestDropFolder.QUIET);
      assertThatThrownBy(drop::look).isInstanceOf(TestDropFolder.Killed.class);

      drop.put("a.wav", "A LATER LEFT");
      drop.put("b.wav", "A LATER RIGHT");
      drop.put("one.json", JSON.replace("FE-1", "FE-2"));
      drop.restart();
      drop.lookUntilQuiet();
      assertThat(ingest.recorded).hasSize(2);
      assertThat(ingest.recorded.get(1).parts().get("left")).isEqualTo("A LATER LEFT");
      assertThat(drop.files()).noneMatch(name -> !name.contains("/"));
    }

    @Test
    void recordsEqualFilesThatComeAgainOnlyOnce() {
      putPair();
      drop.lookUntilQuiet();
      putPair();
      drop.lookUntilQuiet();
      assertThat(ingest.recorded).hasSize(1);
      assertThat(drop.json("done/one-2/result.json").path("takenBefore").asBoolean()).isTrue();
    }

    @Test
    void letsOneOfTwoProcessesWatchAndTheOtherTakeOver() throws IOException {
      putPair();
      drop.look();
      try (DropFolder second = drop.another()) {
        second.look();
        assertThat(second.state().watching()).isFalse();
        drop.pass(TestDropFolder.QUIET);
        second.look();
        assertThat(ingest.calls).isZero();

        drop.close();
        second.look();
        drop.pass(TestDropFolder.QUIET);
        second.look();
        assertThat(second.state().watching()).isTrue();
        assertThat(ingest.recorded).hasSize(1);
      }
    }
  }

  @Nested
  class Names {
    @Test
    void refusesAPatternWithAGroupThatIsNoField() {
      assertThatThrownBy(() -> NamePattern.of("(?<serial>.+)_(?<colour>.+)\\.wav"))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("colour")
          .hasMessageContaining("side");
    }

    @Test
    void refusesAPatternWithoutASerialNumber() {
      assertThatThrownBy(() -> NamePattern.of("(?<side>L|R)\\.wav"))
          .hasMessageContaining("(?<serial>");
    }

    @Test
    void readsATwoChannelFileWhereTheNameTellsNoSide() {
      var named = NamePattern.of("(?<serial>[^_]+)_(?<seating>\\d)\\.wav").read("FE-1_2.wav");
      assertThat(named)
          .hasValueSatisfying(
              found -> {
                assertThat(found.part()).isEqualTo("both");
                assertThat(found.fields())
                    .containsExactlyEntriesOf(orderly("serial", "FE-1", "seating", "2"));
              });
    }

    private static Map<String, String> orderly(String... pairs) {
      Map<String, String> map = new LinkedHashMap<>();
      for (int i = 0; i < pairs.length; i += 2) {
        map.put(pairs[i], pairs[i + 1]);
      }
      return map;
    }
  }
}
