package evenpair.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Grid;
import evenpair.demo.earpiece.Design;
import evenpair.demo.line.Cable;
import evenpair.demo.line.Golden;
import evenpair.demo.line.ProductFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GoldenWriterTests {
  @Nested
  class TheFilesInLimits {
    @Test
    void areWhatTheWriterWrites() throws IOException {
      for (Map.Entry<String, String> file : GoldenWriter.files().entrySet()) {
        assertThat(packed(file.getKey())).as(file.getKey()).isEqualTo(file.getValue());
      }
    }

    @Test
    void areOneForEachTuning() {
      assertThat(GoldenWriter.files().keySet())
          .containsExactlyInAnyOrder(
              "sedge-2/plain-golden.csv",
              "sedge-2/level-golden.csv",
              "sedge-2/warm-golden.csv",
              "sedge-2/lively-golden.csv",
              "reed-1/plain-golden.csv");
    }

    @Test
    void areWrittenWhereTheWriterIsTold(@TempDir Path limits) throws IOException {
      Files.createDirectories(limits.resolve("sedge-2"));
      Files.createDirectories(limits.resolve("reed-1"));

      GoldenWriter.main(new String[] {limits.toString()});

      assertThat(limits.resolve("reed-1/plain-golden.csv"))
          .hasContent(packed("reed-1/plain-golden.csv"));
    }

    private String packed(String path) throws IOException {
      try (InputStream file = getClass().getResourceAsStream("/limits/" + path)) {
        return new String(file.readAllBytes(), StandardCharsets.UTF_8);
      }
    }
  }

  @Nested
  class AGoldenResponse {
    @Test
    void isTheDesignsLevelAtItsDrive() {
      Golden golden = Golden.of(Design.SEDGE_2, ProductFile.read("sedge-2").cable("plain"));

      // 97 dB SPL at 1 kHz by design; the mean over a band 2.9 % wide differs by less than 0.01 dB
      // on a gentle slope.
      assertThat(golden.levelDb()[Grid.nearest(1000)]).isCloseTo(97, within(0.01));
    }

    @ParameterizedTest
    @ValueSource(strings = {"level", "warm", "lively"})
    void ofATuningIsThePlainOnePlusItsFilters(String tuning) {
      ProductFile product = ProductFile.read("sedge-2");
      Cable cable = product.cable(tuning);
      Golden plain = Golden.of(Design.SEDGE_2, product.cable("plain"));

      Golden golden = Golden.of(Design.SEDGE_2, cable);

      for (int i = 0; i < Grid.POINTS; i++) {
        double gain = cable.filters().orElseThrow().gainDb(Grid.hz(i));
        // The filters' mean over the band against their gain at its middle: below 0.01 dB for these
        // gentle ones.
        assertThat(golden.levelDb()[i] - plain.levelDb()[i]).isCloseTo(gain, within(0.01));
      }
    }
  }
}
