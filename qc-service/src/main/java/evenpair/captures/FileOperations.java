package evenpair.captures;

import evenpair.web.DurableFiles;
import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * What the capture store asks of a file system, each as one step, so that their order and their
 * failures can be tested.
 */
interface FileOperations {
  /** A file being written. */
  interface NewFile extends Closeable {
    void write(byte[] bytes) throws IOException;

    /** Returns when content and length are on the disk. */
    void sync() throws IOException;
  }

  /** Makes one folder whose parent is there. @return false if it was there already */
  boolean createFolder(Path folder) throws IOException;

  NewFile create(Path file) throws IOException;

  void moveAtomically(Path from, Path to) throws IOException;

  /** Returns when the names in the folder are on the disk. */
  void syncFolder(Path folder) throws IOException;

  /** Removes a file or an empty folder, if it is there. */
  void delete(Path path) throws IOException;

  /** The real ones. */
  static FileOperations ofTheSystem() {
    return new FileOperations() {
      @Override
      public boolean createFolder(Path folder) throws IOException {
        try {
          Files.createDirectory(folder);
          return true;
        } catch (FileAlreadyExistsException e) {
          return false;
        }
      }

      @Override
      public NewFile create(Path file) throws IOException {
        FileChannel channel =
            FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        return new NewFile() {
          @Override
          public void write(byte[] bytes) throws IOException {
            DurableFiles.writeAll(channel, bytes);
          }

          @Override
          public void sync() throws IOException {
            channel.force(true);
          }

          @Override
          public void close() throws IOException {
            channel.close();
          }
        };
      }

      @Override
      public void moveAtomically(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      }

      @Override
      public void syncFolder(Path folder) throws IOException {
        DurableFiles.syncFolder(folder);
      }

      @Override
      public void delete(Path path) throws IOException {
        Files.deleteIfExists(path);
      }
    };
  }
}
