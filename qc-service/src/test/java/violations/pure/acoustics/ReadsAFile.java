package violations.pure.acoustics;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Breaks the rule on purpose. */
class ReadsAFile {
  byte[] read(Path file) throws IOException {
    return Files.readAllBytes(file);
  }
}
