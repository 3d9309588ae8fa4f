package evenpair.web.database;

import evenpair.web.StartRefused;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One service process a data folder. The operating system lets go of the lock when the process
 * dies, so a kill leaves nothing to clear by hand.
 */
final class FolderLock implements AutoCloseable {
  /**
   * Far behind the file's content, so that the holder's process number can be read where locks are
   * mandatory.
   */
  private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;

  /**
   * Folders that this process holds. Asked first: merely opening and closing a locked file a second
   * time would release the lock on POSIX systems.
   */
  private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

  private final Path folder;
  private final FileChannel channel;
  private final FileLock lock;

  private FolderLock(Path folder, FileChannel channel, FileLock lock) {
    this.folder = folder;
    this.channel = channel;
    this.lock = lock;
  }

  /**
   * @throws StartRefused if a service already uses the folder; names its process
   */
  static FolderLock acquire(Path folder) {
    if (!HELD_HERE.add(folder)) {
      throw refusal(folder, Long.toString(ProcessHandle.current().pid()));
    }
    try {
      return lock(folder);
    } catch (IOException e) {
      HELD_HERE.remove(folder);
      throw new StartRefused(
          "The lock of the data folder " + folder + " cannot be taken: " + e.getMessage() + ".",
          "Set evenpair.data to a folder on a local disk that this user may write.",
          e);
    } catch (RuntimeException e) {
      HELD_HERE.remove(folder);
      throw e;
    }
  }

  private static FolderLock lock(Path folder) throws IOException {
    Path file = folder.resolve("lock");
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
    if (lock == null) {
      channel.close();
      throw refusal(folder, Files.readString(file, StandardCharsets.UTF_8).strip());
    }
    channel.truncate(0);
    channel.write(
        ByteBuffer.wrap((ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.UTF_8)));
    return new FolderLock(folder, channel, lock);
  }

  private static StartRefused refusal(Path folder, String process) {
    return new StartRefused(
        "Another Evenpair service (process "
            + process
            + ") already uses the data folder "
            + folder
            + ".",
        "Stop that process, or set evenpair.data to another folder.");
  }

  @Override
  public void close() throws IOException {
    try (channel) {
      lock.release();
    } finally {
      HELD_HERE.remove(folder);
    }
  }
}
