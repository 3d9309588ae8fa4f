package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.inspections.dropfolder.Ingest;
import evenpair.inspections.dropfolder.TestDropFolder;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Watched folders through the real ingest, with the real idempotency keys. */
@InspectionTest
class DropIngestTests {
  private static final String STATION = "rig-d";

  @TempDir Path folder;
  @LocalServerPort private int port;
  @Autowired private Ingest ingest;
  @Autowired private JdbcClient jdbc;
  @Autowired private SwitchableStore store;
  private TestLine line;
  private byte[] left;
  private byte[] right;
  private TestDropFolder drop;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
    left = TestSound.wav(TestSound.capture(11, TestSound.peak(3000, 6)));
    right = TestSound.wav(TestSound.capture(12, TestSound.peak(3000, 6)));
  }

  @BeforeEach
  void open() {
    drop = new TestDropFolder(folder, ingest, STATION, TestDropFolder.PATTERN);
  }

  @AfterEach
  void close() {
    store.freeSpace();
    drop.close();
  }

  private void putPair(String serial) {
    drop.put("l.wav", left);
    drop.put("r.wav", right);
    drop.put(
        serial + ".json",
        "{\"serial\": \"%s\", \"tuning\": \"plain\", \"left\": \"l.wav\", \"right\": \"r.wav\"}"
            .formatted(serial));
  }

  @Test
  void judgesAPairAsIfItHadComeOverHttp() {
    putPair("FE-DROP-1");
    drop.lookUntilQuiet();
    var result = drop.json("done/FE-DROP-1/result.json");
    assertThat(result.path("verdict").asString()).isEqualTo("PASS");
    var record = line.get("/api/inspections/" + result.path("inspection").asString());
    assertThat(record.text("serial")).isEqualTo("FE-DROP-1");
    assertThat(record.text("station")).isEqualTo(STATION);
    assertThat(Recorded.of(jdbc, "FE-DROP-1")).isEqualTo(new Recorded(1, 1, 1, 2));
  }

  @Test
  void judgesCurvesOfAnotherDialect() {
    drop.put("FE-DROP-2_plain_L.csv", curve(105));
    drop.put("FE-DROP-2_plain_R.csv", curve(105.2));
    drop.lookUntilQuiet();
    assertThat(drop.json("done/FE-DROP-2_plain_L/result.json").path("lastAttempt").asString())
        .isIn("PASS", "FAIL", "RESEAT");
    assertThat(Recorded.of(jdbc, "FE-DROP-2").attempts()).isEqualTo(1);
  }

  /** Semicolons and decimal commas, as other rigs write them. */
  private static String curve(double level) {
    return IntStream.rangeClosed(0, 300)
        .mapToObj(i -> 20 * Math.pow(1000, i / 300.0))
        .map(hz -> String.format(Locale.GERMANY, "%.3f;%.2f", hz, level))
        .collect(Collectors.joining("\r\n"));
  }

  @Test
  void refusesWhatCannotBeDecodedAndStoresNothing() {
    putPair("FE-DROP-3");
    drop.put("r.wav", "this is no sound");
    drop.lookUntilQuiet();
    assertThat(drop.text("refused/FE-DROP-3/reason.txt")).contains("File: r.wav", "Place: ");
    assertThat(drop.json("refused/FE-DROP-3/problem.json").path("part").asString())
        .isEqualTo("right");
    assertThat(Recorded.of(jdbc, "FE-DROP-3")).isEqualTo(Recorded.NOTHING);
  }

  @Test
  void keepsASetThatTheDiskHasNoRoomFor() {
    store.fillUpAfter(1);
    putPair("FE-DROP-4");
    drop.lookUntilQuiet();
    assertThat(drop.files()).containsExactly("FE-DROP-4.json", "l.wav", "r.wav");
    assertThat(drop.state().problem()).contains("No space left");
    store.freeSpace();
    drop.pass(Duration.ofMinutes(1));
    drop.look();
    assertThat(Recorded.of(jdbc, "FE-DROP-4")).isEqualTo(new Recorded(1, 1, 1, 2));
  }

  /** A kill between the commit and each later step. */
  @ParameterizedTest
  @CsvSource({"note, 5", "move l.wav, 6", "show, 7", "forget, 8"})
  void neitherLosesNorRepeatsAfterAKill(String step, int number) {
    String serial = "FE-DROP-" + number;
    putPair(serial);
    drop.restartKilledBefore(step);
    drop.look();
    drop.pass(TestDropFolder.QUIET);
    assertThatThrownBy(drop::look).isInstanceOf(TestDropFolder.Killed.class);
    assertThat(Recorded.of(jdbc, serial))
        .as("committed before")
        .isEqualTo(new Recorded(1, 1, 1, 2));

    drop.restart();
    drop.lookUntilQuiet();
    assertThat(Recorded.of(jdbc, serial)).isEqualTo(new Recorded(1, 1, 1, 2));
    assertThat(drop.files())
        .containsExactly(
            "done/" + serial + "/" + serial + ".json",
            "done/" + serial + "/l.wav",
            "done/" + serial + "/r.wav",
            "done/" + serial + "/result.json");
    assertThat(drop.json("done/" + serial + "/result.json").path("verdict").asString())
        .isEqualTo("PASS");
  }

  @Test
  void countsTheTimeWhenTheCapturesWereWrittenAsThatOfMeasurement() throws Exception {
    putPair("FE-DROP-9");
    Instant written =
        Instant.now().minusSeconds(2).truncatedTo(java.time.temporal.ChronoUnit.SECONDS);
    for (String name : new String[] {"l.wav", "r.wav"}) {
      java.nio.file.Files.setLastModifiedTime(
          folder.resolve(name), java.nio.file.attribute.FileTime.from(written));
    }
    drop.lookUntilQuiet();
    assertThat(
            jdbc.sql(
                    "select a.measured_at from attempt a join inspection i on i.id = a.inspection_id where i.serial = 'FE-DROP-9'")
                .query(OffsetDateTime.class)
                .single()
                .toInstant())
        .isEqualTo(written);
  }
}
