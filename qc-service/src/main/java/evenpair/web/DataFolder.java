package evenpair.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * The folder {@code evenpair.data}: embedded database, captures, keys, signed heads. Everything in
 * it is for its owner only.
 */
@Component
public class DataFolder {
  private final Path root;

  /**
   * @param root made if missing, readable by its owner only where the file system knows owners
   */
  public DataFolder(@Value("${evenpair.data}") Path root) {
    this.root = privateFolder(root.toAbsolutePath().normalize());
  }

  /**
   * @return the folder itself, absolute
   */
  public Path root() {
    return root;
  }

  /**
   * @return the folder of that name below it, made if missing
   */
  public Path folder(String name) {
    return privateFolder(root.resolve(name));
  }

  private static Path privateFolder(Path folder) {
    try {
      if (Files.isDirectory(folder)) {
        return folder;
      }
      Files.createDirectories(folder);
      if (Files.getFileStore(folder).supportsFileAttributeView("posix")) {
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
      }
      DurableFiles.syncFolder(folder.getParent());
      return folder;
    } catch (IOException e) {
      throw new StartRefused(
          "The data folder " + folder + " cannot be made: " + e.getMessage() + ".",
          "Set evenpair.data to a folder that this user may write.",
          e);
    }
  }
}
