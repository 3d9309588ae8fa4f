package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The schemas beside the files and the reader agree on what a schema can say. */
class SchemaTests {

  @Test
  void everyPackedFileKeepsToItsSchema() {
    List<LimitsFolder> folders = LimitsFolder.all(null);

    assertThat(folders).extracting(LimitsFolder::name).contains("sedge-2", "reed-1");
    for (LimitsFolder folder : folders) {
      folder
          .files()
          .forEach(
              (file, bytes) -> {
                String text = new String(bytes, StandardCharsets.UTF_8);
                if (file.endsWith(".yaml")) {
                  String schema =
                      file.equals("product.yaml") ? "product.schema.json" : "limit-set.schema.json";
                  assertThat(schema(schema).validate(text, InputFormat.YAML))
                      .as(folder.path(file))
                      .isEmpty();
                }
              });
    }
  }

  @Test
  void everyPackedFileIsTakenByTheReaders() {
    for (LimitsFolder folder : LimitsFolder.all("")) {
      List<LimitsProblem> problems = new ArrayList<>();
      assertThat(FileLimits.read(folder, problems)).as(problems::toString).isPresent();
    }
  }

  private static JsonSchema schema(String name) {
    InputStream in = SchemaTests.class.getResourceAsStream("/limits/" + name);
    assertThat(in).as(name).isNotNull();
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
  }

  @Nested
  class OfALimitSet {
    final JsonSchema schema = schema("limit-set.schema.json");

    @Test
    void takesTheExamples() {
      assertThat(schema.validate(Examples.LIMIT_SET, InputFormat.YAML)).isEmpty();
      assertThat(schema.validate(Examples.judgeable("plain", 1), InputFormat.YAML)).isEmpty();
      String polarity = "polarity: {same: true, required: false, bands-hz: [[30, 120]]}";
      assertThat(
              schema.validate(
                  LimitSetReaderTests.changed("polarity: same", polarity), InputFormat.YAML))
          .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            version: 3                 | version: 0
            version: 3                 | version: three
            product: sedge-2           | product: Sedge 2
            product: sedge-2           | produkt: sedge-2
            golden: plain-golden.csv   | golden: ../plain-golden.csv
            {mv-rms: 180}              | {mv-rms: 180, dbfs: -12}
            {mv-rms: 180}              | {dbfs: 3}
            {mv-rms: 180}              | {}
            smoothing: 1/12 octave     | smoothing: 1/24 octave
            ear-simulator: IEC 60318-4 | ear-simulator: IEC 60711
            balance-db: 1.0            | balance-db: 0
            tolerance-db: [-1.5, 1.5]  | tolerance-db: [-1.5]
            hz: [20, 200]              | hz: [10, 200]
            match-db: [2.5, 4.0]       | match-db: [2.5, 0]
            match-db: 1.0              | macht-db: 1.0
            [[-3.0, 3.0], [-6.0, 6.0]] | [[-3.0, 3.0], -6.0]
            required: false            | required: maybe
            orders: [2, 5]             | orders: [1, 5]
            orders: [2, 5], thd        | thd
            polarity: same             | polarity: reversed
            polarity: same             | polarity: {same: false}
            polarity: same             | polarity: {same: true, bands-hz: []}
            polarity: same             | polarity: {same: true, bands-hz: [[30]]}
            orders: [2, 5]             | orders: [2, 6]
            signal-to-noise-db: 30     | signal-to-noise-db: 1
            leak-db: 3                 | leak-db: -3
            rule: guarded              | rule: simple
            guard: 1.0                 | guard: 0
            guard: 1.0,                | ''
            conditional-pass: accept   | conditional-pass: maybe
            """)
    void refusesWhatTheReaderRefuses(String from, String to) {
      String changed = LimitSetReaderTests.changed(from, to);

      assertThat(LimitSetReaderTests.problems(changed)).isNotEmpty();
      assertThat(schema.validate(changed, InputFormat.YAML)).isNotEmpty();
    }
  }

  @Nested
  class OfAProduct {
    final JsonSchema schema = schema("product.schema.json");

    @Test
    void takesTheExample() {
      assertThat(schema.validate(Examples.PRODUCT, InputFormat.YAML)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            maker: Saltmarsh Works        | maker: ''
            maker: Saltmarsh Works        | made-by: Saltmarsh Works
            {name: plain, required: true} | {name: plain}
            kind: peak                    | kind: notch
            q: 0.71                       | q: 0
            hz: 105                       | hz: 0
            gain-db: 4                    | gain-db: 41
            sample-rate-hz: 48000         | sample-rate-hz: 32000
            sample-rate-hz: 48000         | sample-rate-hz: 0
            sample-rate-hz: 48000         | ''
            from: plain                   | ''
            """)
    void refusesWhatTheReaderRefuses(String from, String to) {
      assertThat(Examples.PRODUCT).contains(from);
      String changed = Examples.PRODUCT.replace(from, to);

      assertThat(ProductReaderTests.problems(changed)).isNotEmpty();
      assertThat(schema.validate(changed, InputFormat.YAML)).isNotEmpty();
    }
  }
}
