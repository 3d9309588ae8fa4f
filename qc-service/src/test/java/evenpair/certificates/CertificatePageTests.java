package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.print.PaperSize;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class CertificatePageTests {
  @Test
  void draft() throws Exception {
    Files.write(Path.of("/tmp/h-a4.pdf"), Paper.print(PassedPair.inspection(), PassedPair.REGIONS, List.of(), PaperSize.A4));
    byte[] again = Paper.print(PassedPair.inspection(), PassedPair.REGIONS, List.of(), PaperSize.A4);
    assertThat(again).isEqualTo(Files.readAllBytes(Path.of("/tmp/h-a4.pdf")));
    Files.write(Path.of("/tmp/h-letter.pdf"), Paper.print(PassedPair.inspection(), PassedPair.REGIONS, List.of(), PaperSize.LETTER));
  }
}
