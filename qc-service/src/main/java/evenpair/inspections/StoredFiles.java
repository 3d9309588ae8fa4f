package evenpair.inspections;

import evenpair.captures.CaptureStore;
import evenpair.ledger.SealedFiles;
import java.io.IOException;
import java.io.OutputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Reads a stored capture again for the check of the seal. */
@Component
class StoredFiles implements SealedFiles {
  private final CaptureStore store;

  StoredFiles(CaptureStore store) {
    this.store = store;
  }

  @Override
  public Optional<String> problem(String sha256) {
    if (!store.has(sha256)) {
      return Optional.of("is missing from the capture store");
    }
    try (DigestInputStream file = new DigestInputStream(store.open(sha256), digest())) {
      file.transferTo(OutputStream.nullOutputStream());
      String found = HexFormat.of().formatHex(file.getMessageDigest().digest());
      return found.equals(sha256)
          ? Optional.empty()
          : Optional.of("was changed: its bytes give " + found);
    } catch (IOException e) {
      return Optional.of("cannot be read: " + e.getMessage());
    }
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
