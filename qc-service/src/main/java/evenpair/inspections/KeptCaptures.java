package evenpair.inspections;

import evenpair.captures.CaptureStore;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Reads an attempt's files again, as what they were sent as. */
@Component
class KeptCaptures {
  private final CaptureStore store;

  KeptCaptures(CaptureStore store) {
    this.store = store;
  }

  /**
   * @throws IOException if a file is gone or cannot be read
   */
  SentPair read(AttemptRow attempt) throws IOException {
    Map<String, SentFile> files = new HashMap<>();
    boolean together =
        switch (attempt.left().format()) {
          case WAV_LEFT_OF_TWO, WAV_LEFT_WITH_DRIVE -> true;
          default -> false;
        };
    if (together) {
      put(files, "both", attempt.left().sha256(), false);
    } else {
      put(files, "left", attempt.left().sha256(), curve(attempt.left()));
      put(files, "right", attempt.right().sha256(), curve(attempt.right()));
    }
    put(files, "idleLeft", attempt.idleLeftSha256(), false);
    put(files, "idleRight", attempt.idleRightSha256(), false);
    return CaptureDecoder.decode(part -> Optional.ofNullable(files.get(part)));
  }

  private static boolean curve(AttemptRow.File file) {
    return file.format() == SentChannel.Format.CURVE;
  }

  private void put(Map<String, SentFile> files, String part, String sha256, boolean curve)
      throws IOException {
    if (sha256 != null) {
      try (InputStream file = store.open(sha256)) {
        files.put(part, SentFile.of(part, curve, file.readAllBytes()));
      }
    }
  }
}
