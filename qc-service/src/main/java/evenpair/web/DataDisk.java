package evenpair.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;

/** The disk that the data folder lies on. */
@Component
public class DataDisk {
  private final DataFolder data;
  private final DataSize warnBelow;

  /**
   * @param warnBelow free space below which people are warned; above 0, default 2 GB: a day of a
   *     busy line's captures
   */
  DataDisk(DataFolder data, @Value("${evenpair.disk.warn-below:2GB}") DataSize warnBelow) {
    if (warnBelow.toBytes() <= 0) {
      throw new IllegalArgumentException(
          "evenpair.disk.warn-below must be above 0, was " + warnBelow);
    }
    this.data = data;
    this.warnBelow = warnBelow;
  }

  /**
   * @param freeBytes that this user may still write
   * @param warnBelowBytes the setting
   */
  public record Space(long freeBytes, long totalBytes, long warnBelowBytes) {
    public boolean low() {
      return freeBytes < warnBelowBytes;
    }
  }

  /**
   * @throws UncheckedIOException if the disk cannot be asked
   */
  public Space space() {
    try {
      FileStore store = Files.getFileStore(data.root());
      return new Space(store.getUsableSpace(), store.getTotalSpace(), warnBelow.toBytes());
    } catch (IOException e) {
      throw new UncheckedIOException("The data folder cannot be asked for its space", e);
    }
  }
}
