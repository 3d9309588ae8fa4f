package evenpair.captures;

import evenpair.web.DataFolder;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HexFormat;
import java.util.UUID;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/**
 * Captures as files {@code captures/ab/cd/<sha256>} in the data folder. A file gets its name only
 * when it is whole and on the disk, and the call returns only when the name is on the disk too; the
 * row that names it commits after that.
 */
@Component
class FileCaptureStore implements CaptureStore {
  private static final Logger LOG = LoggerFactory.getLogger(FileCaptureStore.class);
  private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

  private final Path root;
  private final FileOperations files;

  @Autowired
  FileCaptureStore(DataFolder data) {
    this(data.folder("captures"), FileOperations.ofTheSystem());
  }

  FileCaptureStore(Path root, FileOperations files) {
    this.root = root;
    this.files = files;
  }

  @Override
  public String keep(byte[] bytes) {
    String sha256 = sha256(bytes);
    Path target = pathOf(sha256);
    Deque<Path> made = new ArrayDeque<>();
    try {
      if (isWhole(target, bytes.length)) {
        files.syncFolder(target.getParent()); // whoever stored it may not have come that far
      } else {
        makeFolders(target.getParent(), made);
        write(bytes, target, made);
      }
      return sha256;
    } catch (IOException e) {
      clear(made);
      throw new StorageFailure(
          "The capture store "
              + root
              + " cannot keep a file of "
              + bytes.length
              + " bytes ("
              + e.getMessage()
              + "). Nothing was stored. Free space there, or give it a larger disk (setting evenpair.data), and send it again.",
          e);
    }
  }

  /** A file of another length under this name is damaged, and is written anew. */
  private static boolean isWhole(Path target, long length) throws IOException {
    try {
      long found = Files.size(target);
      if (found != length) {
        LOG.error(
            "{} has {} bytes and should have {}; the disk lost some. It is written again",
            target,
            found,
            length);
      }
      return found == length;
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  /**
   * @param made gets every folder that was not there before, innermost first
   */
  private void makeFolders(Path folder, Deque<Path> made) throws IOException {
    Path parent = folder.getParent();
    if (!parent.equals(root)) {
      makeFolders(parent, made);
    }
    if (files.createFolder(folder)) {
      made.push(folder);
      files.syncFolder(parent);
    } else if (!Files.isDirectory(folder)) {
      throw new IOException(folder + " is no folder");
    }
  }

  private void write(byte[] bytes, Path target, Deque<Path> made) throws IOException {
    Path unfinished =
        target.resolveSibling(target.getFileName() + "." + UUID.randomUUID() + ".unfinished");
    made.push(unfinished);
    try (FileOperations.NewFile file = files.create(unfinished)) {
      file.write(bytes);
      file.sync();
    }
    files.moveAtomically(unfinished, target);
    files.syncFolder(target.getParent());
  }

  /** Innermost first. A folder that has got another capture meanwhile is not empty and stays. */
  private void clear(Deque<Path> made) {
    for (Path path : made) {
      try {
        files.delete(path);
      } catch (IOException e) {
        LOG.info("{} stays behind: {}", path, e.getMessage());
      }
    }
  }

  @Override
  public InputStream open(String sha256) throws IOException {
    return Files.newInputStream(pathOf(sha256));
  }

  @Override
  public boolean has(String sha256) {
    return Files.isRegularFile(pathOf(sha256));
  }

  private Path pathOf(String sha256) {
    if (!SHA_256.matcher(sha256).matches()) {
      throw new IllegalArgumentException("not a SHA-256 in lower-case hex: " + sha256);
    }
    return root.resolve(sha256.substring(0, 2)).resolve(sha256.substring(2, 4)).resolve(sha256);
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
