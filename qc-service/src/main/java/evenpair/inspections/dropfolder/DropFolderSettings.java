package evenpair.inspections.dropfolder;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.regex.PatternSyntaxException;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings of the watched folders; a value out of range stops the start.
 *
 * @param folders none by default: nothing is watched
 * @param interval from one look to the next, 100 ms to 1 h, default 2 s
 * @param quiet for how long a file's size and time must stay the same before it counts as whole; 0
 *     to 1 h, default 3 s
 * @param patience after how long a set that is still not whole is refused; above quiet, default 10
 *     min
 * @param language of the reasons beside refused files; default that of {@code spring.web.locale}
 */
@ConfigurationProperties("evenpair.drop-folder")
record DropFolderSettings(
    @DefaultValue List<Folder> folders,
    @DefaultValue("2s") Duration interval,
    @DefaultValue("3s") Duration quiet,
    @DefaultValue("10m") Duration patience,
    Locale language) {
  private static final Duration HOUR = Duration.ofHours(1);

  DropFolderSettings {
    require(
        interval.compareTo(Duration.ofMillis(100)) >= 0 && interval.compareTo(HOUR) <= 0,
        "interval must be 100ms to 1h",
        interval);
    require(!quiet.isNegative() && quiet.compareTo(HOUR) <= 0, "quiet must be 0s to 1h", quiet);
    require(patience.compareTo(quiet) > 0, "patience must be longer than quiet", patience);
    folders = List.copyOf(folders);
    long different =
        folders.stream()
            .map(folder -> folder.path().toAbsolutePath().normalize())
            .distinct()
            .count();
    require(different == folders.size(), "folders must not name one path twice", folders);
  }

  /**
   * @param path the folder; it must be there
   * @param station in whose name its files are taken
   * @param pattern of file names, with named groups for the fields of an inspection and {@code
   *     side}; null: each set has a JSON
   * @param defaults fields of an inspection that neither JSON nor file name says
   */
  record Folder(Path path, String station, String pattern, @DefaultValue Defaults defaults) {
    Folder {
      require(path != null, "folders[].path must name a folder", null);
      require(
          station != null && !station.isBlank(), "folders[].station must name a station", station);
      if (pattern != null) {
        try {
          NamePattern.of(pattern);
        } catch (PatternSyntaxException e) {
          throw new IllegalArgumentException(
              "evenpair.drop-folder.folders[].pattern is no pattern: " + e.getMessage(), e);
        }
      }
    }
  }

  /** Null where there is no default. */
  record Defaults(String product, String tuning, String batch, String operator, String occasion) {}

  private static void require(boolean holds, String rule, Object value) {
    if (!holds) {
      throw new IllegalArgumentException("evenpair.drop-folder." + rule + ", was " + value);
    }
  }
}
