package evenpair.web;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/** Small files that must survive a power cut whole or not at all. */
public final class DurableFiles {
  private static final boolean WINDOWS = System.getProperty("os.name").startsWith("Windows");

  private DurableFiles() {}

  /**
   * Writes a file that only its owner can read from its first moment on. After a crash there is the
   * whole file or none.
   *
   * @param file in an existing folder; replaced if it is there
   */
  public static void writePrivate(Path file, byte[] content) throws IOException {
    Path unfinished = file.resolveSibling(file.getFileName() + ".unfinished");
    Files.deleteIfExists(unfinished);
    createPrivate(unfinished);
    try (FileChannel channel = FileChannel.open(unfinished, StandardOpenOption.WRITE)) {
      writeAll(channel, content);
      channel.force(true);
    }
    Files.move(
        unfinished, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    syncFolder(file.getParent());
  }

  private static void createPrivate(Path file) throws IOException {
    if (Files.getFileStore(file.getParent()).supportsFileAttributeView("posix")) {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    } else {
      Files.createFile(file);
    }
  }

  /** Writes every byte; one call of a channel may write fewer. */
  public static void writeAll(FileChannel channel, byte[] content) throws IOException {
    ByteBuffer rest = ByteBuffer.wrap(content);
    while (rest.hasRemaining()) {
      channel.write(rest);
    }
  }

  /**
   * Makes names that were added to a folder durable. Windows has no such call and needs none: it
   * logs names itself.
   */
  public static void syncFolder(Path folder) throws IOException {
    if (WINDOWS) {
      return;
    }
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }
}
