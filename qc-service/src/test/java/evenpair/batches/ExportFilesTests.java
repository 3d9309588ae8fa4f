package evenpair.batches;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Grid;
import evenpair.inspections.InspectionStream.StreamedInspection;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionView;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.apache.parquet.ParquetReadOptions;
import org.apache.parquet.column.page.PageReadStore;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.example.data.simple.convert.GroupRecordConverter;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.io.ColumnIOFactory;
import org.apache.parquet.io.LocalInputFile;
import org.apache.parquet.io.RecordReader;
import org.apache.parquet.schema.MessageType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ExportFilesTests {
  private static final Instant AT = Instant.parse("2026-11-25T07:00:00.123456Z");

  @TempDir Path folder;

  private static float[] curve(long seed) {
    Random random = new Random(seed);
    float[] levels = new float[Grid.POINTS];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = 90 + 20 * random.nextFloat();
    }
    levels[Grid.POINTS - 1] = Float.NaN;
    return levels;
  }

  private static StreamedInspection row(int n, float[] left, float[] right) {
    boolean sealed = left != null;
    return new StreamedInspection(
        new UUID(1, n),
        "SG2-Ünit-" + n,
        "SW-2647",
        "sedge-2",
        "plain",
        3,
        "d".repeat(64),
        new UUID(2, 2),
        "IEC 60318-4",
        "bench-1",
        "production",
        true,
        "FAIL",
        false,
        AT.plusSeconds(n),
        AT.plusSeconds(n + 9),
        sealed ? 1 : 0,
        1,
        null,
        "R-" + n,
        sealed ? (Double) 0.25 : null,
        sealed ? (Double) (-1.0 / 3) : null,
        List.of(
            new ReasonView(
                "window",
                "right",
                "treble",
                8413.95,
                4.3,
                3.0,
                List.of("bass"),
                "Too \"much\", there.")),
        List.of(
            new RegionView("bass", "window", "left", true, 0.7, 100.0, 1.3, 2.0),
            new RegionView("treble", "window", "right", true, -1.3, 8413.95, 4.3, 3.0),
            new RegionView(
                "100–3000 Hz", "thd", "left", true, -5.0, 200.0, 6.0, 1.0, "fail", "%", null),
            new RegionView("treble", "match", null, false, null, null, null, null)),
        left,
        right,
        "0.1.0");
  }

  private static final List<StreamedInspection> ROWS =
      List.of(row(1, curve(1), curve(2)), row(2, null, null), row(3, curve(3), curve(4)));

  private List<Group> parquet(Map<String, String> metadata) throws IOException {
    Path file = folder.resolve("export.parquet");
    try (ParquetExport out = new ParquetExport(file, metadata)) {
      ROWS.forEach(out::add);
    }
    List<Group> rows = new ArrayList<>();
    try (ParquetFileReader reader = open(file)) {
      MessageType schema = reader.getFooter().getFileMetaData().getSchema();
      PageReadStore pages = reader.readNextRowGroup();
      RecordReader<Group> records =
          new ColumnIOFactory()
              .getColumnIO(schema)
              .getRecordReader(pages, new GroupRecordConverter(schema));
      for (long i = 0; i < pages.getRowCount(); i++) {
        rows.add(records.read());
      }
    }
    return rows;
  }

  private static ParquetFileReader open(Path file) throws IOException {
    return ParquetFileReader.open(
        new LocalInputFile(file),
        ParquetReadOptions.builder(new PlainParquetConfiguration())
            .withCodecFactory(new SnappyCodecs())
            .build());
  }

  private static float[] curveOf(Group row, String column) {
    Group list = row.getGroup(column, 0);
    float[] levels = new float[list.getFieldRepetitionCount("list")];
    for (int i = 0; i < levels.length; i++) {
      Group element = list.getGroup("list", i);
      levels[i] =
          element.getFieldRepetitionCount("element") == 0
              ? Float.NaN
              : element.getFloat("element", 0);
    }
    return levels;
  }

  @Test
  void parquetHoldsTheVeryFloatsAndScalars() throws IOException {
    List<Group> read = parquet(Map.of());

    assertThat(read).hasSize(3);
    assertThat(curveOf(read.get(0), "left_level_db")).isEqualTo(ROWS.get(0).leftDb());
    assertThat(curveOf(read.get(2), "right_level_db")).isEqualTo(ROWS.get(2).rightDb());
    Group first = read.get(0);
    assertThat(first.getString("serial", 0)).isEqualTo("SG2-Ünit-1");
    assertThat(first.getDouble("right_offset_db", 0)).isEqualTo(-1.0 / 3);
    assertThat(first.getBoolean("first_pass", 0)).isTrue();
    assertThat(first.getInteger("limit_set_version", 0)).isEqualTo(3);
    assertThat(first.getFieldRepetitionCount("left_earpiece")).isZero();
    // by hand: 2026-11-25T07:00:01.123456Z
    assertThat(first.getLong("measured_at", 0)).isEqualTo(1_795_590_001_123_456L);
  }

  @Test
  void parquetHoldsReasonsAndRegionsAsLists() throws IOException {
    Group first = parquet(Map.of()).get(0);

    Group reason = first.getGroup("reasons", 0).getGroup("list", 0).getGroup("element", 0);
    assertThat(reason.getString("text", 0)).isEqualTo("Too \"much\", there.");
    assertThat(reason.getDouble("at_hz", 0)).isEqualTo(8413.95);
    assertThat(reason.getGroup("also_regions", 0).getGroup("list", 0).getString("element", 0))
        .isEqualTo("bass");
    Group regions = first.getGroup("regions", 0);
    assertThat(regions.getFieldRepetitionCount("list")).isEqualTo(4);
    Group notJudged = regions.getGroup("list", 3).getGroup("element", 0);
    assertThat(notJudged.getBoolean("judged", 0)).isFalse();
    assertThat(notJudged.getFieldRepetitionCount("margin")).isZero();
  }

  @Test
  void aUnitThatNeverSealedHasARowWithoutCurves() throws IOException {
    Group second = parquet(Map.of()).get(1);

    assertThat(second.getFieldRepetitionCount("left_level_db")).isZero();
    assertThat(second.getString("serial", 0)).isEqualTo("SG2-Ünit-2");
  }

  @Test
  void theLeastMarginIsThatOfTheChecksInDecibels() throws IOException {
    Group first = parquet(Map.of()).get(0);

    assertThat(first.getDouble("least_margin_db", 0)).isEqualTo(-1.3);
    assertThat(first.getString("least_margin_region", 0)).isEqualTo("treble");
  }

  @Test
  void parquetCarriesTheDictionary() throws IOException {
    parquet(Map.of("evenpair.dictionary", "{\"row\": \"one\"}"));

    try (ParquetFileReader reader = open(folder.resolve("export.parquet"))) {
      assertThat(reader.getFooter().getFileMetaData().getKeyValueMetaData())
          .containsEntry("evenpair.dictionary", "{\"row\": \"one\"}");
    }
  }

  @Test
  void csvReadsBackToTheVeryFloats() throws IOException {
    Path file = folder.resolve("export.csv");
    try (CsvExport out = new CsvExport(file)) {
      ROWS.forEach(out::add);
    }
    List<List<String>> lines = parsed(Files.readString(file, StandardCharsets.UTF_8));

    List<String> titles = lines.get(0);
    assertThat(lines).hasSize(4).allSatisfy(line -> assertThat(line).hasSameSizeAs(titles));
    assertThat(titles).doesNotHaveDuplicates().contains("left_level_db_1000hz");
    int from = titles.indexOf("left_level_db_" + CsvExport.point(0) + "hz");
    float[] levels = new float[Grid.POINTS];
    for (int i = 0; i < levels.length; i++) {
      String field = lines.get(1).get(from + i);
      levels[i] = field.isEmpty() ? Float.NaN : Float.parseFloat(field);
    }
    assertThat(levels).isEqualTo(ROWS.get(0).leftDb());
    assertThat(lines.get(2).subList(from, from + Grid.POINTS)).containsOnly("");
    assertThat(lines.get(1).get(titles.indexOf("measured_at")))
        .isEqualTo("2026-11-25T07:00:01.123456Z");
    JsonNode reasons =
        JsonMapper.builder().build().readTree(lines.get(1).get(titles.indexOf("reasons")));
    assertThat(reasons.path(0).path("text").stringValue()).isEqualTo("Too \"much\", there.");
  }

  @Test
  void noFileHoldsAColumnOfAPerson() {
    assertThat(CsvExport.titles()).noneMatch(title -> title.contains("operator"));
    assertThat(ParquetRows.schema().getFields())
        .noneMatch(field -> field.getName().contains("operator"));
    assertThat(Arrays.stream(StreamedInspection.class.getRecordComponents()))
        .noneMatch(part -> part.getName().toLowerCase(java.util.Locale.ROOT).contains("operator"));
  }

  /** RFC 4180 by hand: a field in quotes may hold commas, line ends and doubled quotes. */
  private static List<List<String>> parsed(String text) {
    List<List<String>> lines = new ArrayList<>();
    List<String> line = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quoted) {
        if (c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
          field.append('"');
          i++;
        } else if (c == '"') {
          quoted = false;
        } else {
          field.append(c);
        }
      } else if (c == '"') {
        quoted = true;
      } else if (c == ',') {
        line.add(field.toString());
        field.setLength(0);
      } else if (c == '\r' && text.charAt(i + 1) == '\n') {
        line.add(field.toString());
        lines.add(line);
        line = new ArrayList<>();
        field.setLength(0);
        i++;
      } else {
        field.append(c);
      }
    }
    return lines;
  }
}
