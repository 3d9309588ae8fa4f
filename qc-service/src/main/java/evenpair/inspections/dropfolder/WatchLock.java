package evenpair.inspections.dropfolder;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One process a folder. The operating system lets go of the lock when the process dies. Where two
 * processes on one database got hold of a folder all the same (a network share without locks),
 * equal content still gets one answer, and a file can be moved once only.
 */
final class WatchLock implements AutoCloseable {
  /**
   * Files that this process holds. Asked first: opening and closing a locked file a second time
   * would release its lock on POSIX systems.
   */
  private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

  private final Path file;
  private FileChannel channel;
  private FileLock lock;

  WatchLock(Path file) {
    this.file = file.toAbsolutePath().normalize();
  }

  /**
   * @return true if this holds the folder, from now on or already
   */
  boolean hold() throws IOException {
    if (lock != null) {
      return true;
    }
    if (!HELD_HERE.add(file)) {
      return false;
    }
    try {
      channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      lock = channel.tryLock();
    } finally {
      if (lock == null) {
        letGo();
      }
    }
    return lock != null;
  }

  @Override
  public void close() throws IOException {
    if (lock != null) {
      letGo();
    }
  }

  private void letGo() throws IOException {
    FileChannel open = channel;
    channel = null;
    lock = null;
    try {
      if (open != null) {
        open.close();
      }
    } finally {
      HELD_HERE.remove(file);
    }
  }
}
