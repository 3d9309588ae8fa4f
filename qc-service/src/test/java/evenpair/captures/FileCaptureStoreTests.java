package evenpair.captures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileCaptureStoreTests {
  /** FIPS 180-2, appendix B.1: SHA-256 of "abc". */
  private static final byte[] ABC = "abc".getBytes(StandardCharsets.US_ASCII);

  private static final String SHA_OF_ABC =
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  @TempDir Path root;

  private FileCaptureStore store() {
    return new FileCaptureStore(root, FileOperations.ofTheSystem());
  }

  private List<String> everythingInTheStore() throws IOException {
    try (Stream<Path> paths = Files.walk(root)) {
      return paths
          .filter(path -> !path.equals(root))
          .map(path -> root.relativize(path).toString())
          .sorted()
          .toList();
    }
  }

  @Nested
  class Keeping {
    @Test
    void namesAFileByItsDigestInFoldersOfTwoLetters() throws IOException {
      assertThat(store().keep(ABC)).isEqualTo(SHA_OF_ABC);
      assertThat(root.resolve("ba/78/" + SHA_OF_ABC)).hasBinaryContent(ABC);
    }

    @Test
    void givesBackTheSameBytes() throws IOException {
      FileCaptureStore store = store();
      String sha256 = store.keep(ABC);
      assertThat(store.has(sha256)).isTrue();
      assertThat(store.open(sha256)).hasBinaryContent(ABC);
    }

    @Test
    void storesTheSameBytesOnce() throws IOException {
      store().keep(ABC);
      store().keep(ABC);
      assertThat(everythingInTheStore()).containsExactly("ba", "ba/78", "ba/78/" + SHA_OF_ABC);
    }

    @Test
    void storesTheSameBytesOnceWhenManyBringThemAtOnce() throws Exception {
      FileCaptureStore store = store();
      ExecutorService pool = Executors.newFixedThreadPool(8);
      try {
        List<Callable<String>> jobs =
            Stream.generate(() -> (Callable<String>) () -> store.keep(ABC)).limit(64).toList();
        for (Future<String> job : pool.invokeAll(jobs)) {
          assertThat(job.get()).isEqualTo(SHA_OF_ABC);
        }
      } finally {
        pool.shutdownNow();
      }
      assertThat(everythingInTheStore()).containsExactly("ba", "ba/78", "ba/78/" + SHA_OF_ABC);
      assertThat(root.resolve("ba/78/" + SHA_OF_ABC)).hasBinaryContent(ABC);
    }

    @Test
    void writesAFileAnewThatTheDiskCutShort() throws IOException {
      store().keep(ABC);
      Files.writeString(root.resolve("ba/78/" + SHA_OF_ABC), "ab");
      store().keep(ABC);
      assertThat(root.resolve("ba/78/" + SHA_OF_ABC)).hasBinaryContent(ABC);
    }
  }

  @Nested
  class Asking {
    @Test
    void hasNothingThatWasNotStored() {
      assertThat(store().has(SHA_OF_ABC)).isFalse();
      assertThatThrownBy(() -> store().open(SHA_OF_ABC)).isInstanceOf(NoSuchFileException.class);
    }

    @Test
    void takesNoPathForADigest() {
      assertThatIllegalArgumentException().isThrownBy(() -> store().open("../../keys/ledger.key"));
      assertThatIllegalArgumentException()
          .isThrownBy(() -> store().has(SHA_OF_ABC.toUpperCase(Locale.ROOT)));
    }
  }

  /** Without power loss to test with, the order of the calls is what can be asserted. */
  @Nested
  class Syncing {
    @Test
    void syncsTheFileBeforeItGetsItsNameAndTheFoldersBeforeItAnswers() {
      Recording files = new Recording();
      new FileCaptureStore(root, files).keep(ABC);
      assertThat(files.calls)
          .containsExactly(
              "make ba",
              "sync folder .",
              "make ba/78",
              "sync folder ba",
              "create",
              "write 3",
              "sync file",
              "move to ba/78/" + SHA_OF_ABC,
              "sync folder ba/78");
    }

    @Test
    void syncsTheFolderAlsoForBytesThatAreThereAlready() {
      store().keep(ABC);
      Recording files = new Recording();
      new FileCaptureStore(root, files).keep(ABC);
      assertThat(files.calls).containsExactly("sync folder ba/78");
    }
  }

  @Nested
  class AFullDisk {
    private void assertNothingStays(String failing) throws IOException {
      Recording files = new Recording();
      files.failing = failing;
      assertThatThrownBy(() -> new FileCaptureStore(root, files).keep(ABC))
          .isInstanceOf(StorageFailure.class)
          .hasMessageContaining(root.toString())
          .hasMessageContaining("No space left on device")
          .hasMessageContaining("evenpair.data");
      assertThat(everythingInTheStore()).isEmpty();
    }

    @Test
    void leavesNothingBehindWhenItFillsInTheMiddleOfAFile() throws IOException {
      assertNothingStays("write 3");
    }

    @Test
    void leavesNothingBehindWhenItFillsWhileSyncing() throws IOException {
      assertNothingStays("sync file");
    }

    @Test
    void leavesNothingBehindWhenNoFolderCanBeMade() throws IOException {
      assertNothingStays("make ba/78");
    }

    @Test
    void leavesOtherCapturesAlone() throws IOException {
      store().keep(ABC);
      Recording files = new Recording();
      files.failing = "sync file";
      byte[] other = "another capture".getBytes(StandardCharsets.US_ASCII);
      assertThatThrownBy(() -> new FileCaptureStore(root, files).keep(other))
          .isInstanceOf(StorageFailure.class);
      assertThat(everythingInTheStore()).containsExactly("ba", "ba/78", "ba/78/" + SHA_OF_ABC);
    }
  }

  /**
   * Does what it is asked, writes it down, and fails at one chosen step as a full disk does: half
   * of the bytes arrive.
   */
  private final class Recording implements FileOperations {
    private final FileOperations real = FileOperations.ofTheSystem();
    private final List<String> calls = new ArrayList<>();
    private String failing = "";

    private void step(String call) throws IOException {
      calls.add(call);
      if (call.equals(failing)) {
        throw new IOException("No space left on device");
      }
    }

    private String name(Path path) {
      return path.equals(root) ? "." : root.relativize(path).toString();
    }

    @Override
    public boolean createFolder(Path folder) throws IOException {
      step("make " + name(folder));
      return real.createFolder(folder);
    }

    @Override
    public NewFile create(Path file) throws IOException {
      step("create");
      NewFile opened = real.create(file);
      return new NewFile() {
        @Override
        public void write(byte[] bytes) throws IOException {
          if (failing.startsWith("write")) {
            opened.write(Arrays.copyOf(bytes, bytes.length / 2));
          }
          step("write " + bytes.length);
          opened.write(bytes);
        }

        @Override
        public void sync() throws IOException {
          step("sync file");
          opened.sync();
        }

        @Override
        public void close() throws IOException {
          opened.close();
        }
      };
    }

    @Override
    public void moveAtomically(Path from, Path to) throws IOException {
      assertThat(from.getParent())
          .as("beside its final place, so that the move is atomic")
          .isEqualTo(to.getParent());
      step("move to " + name(to));
      real.moveAtomically(from, to);
    }

    @Override
    public void syncFolder(Path folder) throws IOException {
      step("sync folder " + name(folder));
      real.syncFolder(folder);
    }

    @Override
    public void delete(Path path) throws IOException {
      real.delete(path);
    }
  }
}
