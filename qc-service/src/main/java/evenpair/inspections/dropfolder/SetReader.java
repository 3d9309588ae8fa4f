package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.Sightings.Seen;
import evenpair.web.Refusal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads the captures of a whole set. */
final class SetReader {
  private final WatchedFiles files;
  private final long largest;

  /**
   * @param largest most bytes of one file
   */
  SetReader(WatchedFiles files, long largest) {
    this.files = files;
    this.largest = largest;
  }

  /**
   * @return empty if a file is gone or written again
   * @throws Refusal 413 naming the part
   */
  Optional<List<Ingest.Part>> read(DropSet set, Map<String, Seen> listing) throws IOException {
    List<Ingest.Part> parts = new ArrayList<>();
    for (Map.Entry<String, String> file : set.files().entrySet()) {
      String name = file.getValue();
      Seen seen = listing.get(name);
      if (seen.bytes() > largest) {
        throw Flaws.tooLarge(file.getKey(), name, seen.bytes(), largest);
      }
      Optional<byte[]> bytes = files.read(name, seen);
      if (bytes.isEmpty()) {
        return Optional.empty();
      }
      parts.add(new Ingest.Part(file.getKey(), FileNames.curve(name), bytes.get()));
    }
    return Optional.of(parts);
  }
}
