package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.Sightings.Seen;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** The files of a watched folder. Links are never followed, folders in it never entered. */
final class WatchedFiles {
  private static final Set<OpenOption> READ =
      Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS);

  private final Path folder;

  WatchedFiles(Path folder) {
    this.folder = folder;
  }

  /**
   * @return what is there of the kinds that are taken, by name
   */
  Map<String, Seen> list() throws IOException {
    Map<String, Seen> listing = new TreeMap<>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
      for (Path entry : entries) {
        String name = entry.getFileName().toString();
        if (FileNames.taken(name)) {
          seen(entry).ifPresent(seen -> listing.put(name, seen));
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return listing;
  }

  private static Optional<Seen> seen(Path file) throws IOException {
    try {
      BasicFileAttributes attributes =
          Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      return attributes.isRegularFile()
          ? Optional.of(new Seen(attributes.size(), attributes.lastModifiedTime().toInstant()))
          : Optional.empty();
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  /**
   * @return true if something of that name is there that is no plain file: a link, a folder
   */
  boolean odd(String name) throws IOException {
    Path file = folder.resolve(name);
    return Files.exists(file, LinkOption.NOFOLLOW_LINKS) && seen(file).isEmpty();
  }

  /**
   * @return the bytes; empty if the file is gone, or is no longer as it was seen: then somebody
   *     still writes it
   */
  Optional<byte[]> read(String name, Seen expected) throws IOException {
    Path file = folder.resolve(name);
    try (SeekableByteChannel channel = Files.newByteChannel(file, READ);
        InputStream in = Channels.newInputStream(channel)) {
      byte[] bytes = in.readNBytes(Math.toIntExact(expected.bytes()) + 1);
      boolean same =
          bytes.length == expected.bytes() && seen(file).filter(expected::equals).isPresent();
      return same ? Optional.of(bytes) : Optional.empty();
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }
}
