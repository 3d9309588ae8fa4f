package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/** The files of a batch, from recordings over HTTP; lives here for the line's tools. */
@InspectionTest
class BatchExportTests {
  private static final String STATION = "bench-export";
  private static String first;

  @LocalServerPort private int port;
  private TestLine line;

  @BeforeEach
  void aBatchOfTwoUnits() {
    line = new TestLine(port);
    if (first == null) {
      line.makeStation(STATION);
      first = inspect("FE-EXPORT-1", "plain", 81).text("id");
      inspect("FE-EXPORT-2", "plain", 83);
      inspect("FE-EXPORT-1", "warm", 85);
    }
  }

  private Reply inspect(String serial, String tuning, long seed) {
    Reply reply =
        line.inspect(
            TestLine.inspection(serial, tuning, STATION).replace("FB-1", "EB-1"),
            TestSound.wav(TestSound.capture(seed, TestSound.peak(3000, 6))),
            TestSound.wav(TestSound.capture(seed + 1, TestSound.peak(3000, 6))));
    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("PASS");
    return reply;
  }

  @Test
  void csvHoldsTheStoredLevelsOfEachUnitOnALine() {
    Reply reply = line.get("/api/batches/EB-1/export.csv?tuning=plain");

    assertThat(reply.status()).isEqualTo(200);
    assertThat(reply.raw().headers().firstValue("Content-Disposition"))
        .hasValueSatisfying(name -> assertThat(name).contains("EB-1-fern-1-plain-v3.csv"));
    String[] lines = new String(reply.raw().body(), StandardCharsets.UTF_8).split("\r\n");
    assertThat(lines).hasSize(3);
    // no field of a PASS but its regions needs quotes, and they come before the levels
    List<String> titles = List.of(lines[0].split(","));
    List<String> levels = List.of(lines[1].split(","));
    int fromTheEnd = titles.size() - titles.indexOf("left_level_db_1000hz");
    JsonNode stored =
        line.get("/api/inspections/" + first + "/curves?smoothing=none").json().path("left");
    assertThat(Double.parseDouble(levels.get(levels.size() - fromTheEnd)))
        .as("the same 32-bit float, written in each way")
        .isEqualTo(
            Double.parseDouble(
                Float.toString((float) stored.path("levelDb").path(136).doubleValue())));
  }

  @Test
  void parquetComesAsAFileOfItsOwnType() {
    Reply reply = line.get("/api/batches/EB-1/export.parquet?tuning=plain&limitSet=3");

    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.raw().headers().firstValue("Content-Type"))
        .hasValue("application/vnd.apache.parquet");
    byte[] file = reply.raw().body();
    // the format's mark stands at both ends
    assertThat(new String(file, 0, 4, StandardCharsets.US_ASCII)).isEqualTo("PAR1");
    assertThat(new String(file, file.length - 4, 4, StandardCharsets.US_ASCII)).isEqualTo("PAR1");
  }

  @Test
  void theDictionaryExplainsEveryColumn() {
    JsonNode dictionary = line.get("/api/batches/EB-1/export-dictionary?tuning=plain").json();

    assertThat(dictionary.path("frequencyHz").size()).isEqualTo(241);
    assertThat(dictionary.path("goldenDb").size()).isEqualTo(241);
    String titles =
        new String(
            line.get("/api/batches/EB-1/export.csv?tuning=plain").raw().body(),
            StandardCharsets.UTF_8);
    dictionary
        .path("columns")
        .forEach(
            column -> {
              assertThat(titles).contains(column.path("name").stringValue());
              assertThat(column.path("text").stringValue()).isNotBlank();
            });
  }

  @Test
  void offersThePartsOfAMixedBatch() {
    Reply reply = line.get("/api/batches/EB-1/export.csv");

    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.json().path("choices").size()).isEqualTo(2);
    assertThat(line.get("/api/batches/EB-1/export.parquet?tuning=bright").status()).isEqualTo(422);
    assertThat(line.get("/api/batches/EB-NONE/export.csv").status()).isEqualTo(404);
  }
}
