package evenpair.inspections.dropfolder;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Since when each file has not changed, by our own clock: that of a network share may be off. A
 * file counts as whole once it has been quiet for long enough.
 */
final class Sightings {
  /** A file as a listing shows it. */
  record Seen(long bytes, Instant writtenAt) {}

  private record Sighting(Seen seen, Instant unchangedSince) {}

  private final Duration quiet;
  private Map<String, Sighting> known = new HashMap<>();

  Sightings(Duration quiet) {
    this.quiet = quiet;
  }

  /** Takes in a listing; what is no longer there is forgotten. */
  void look(Map<String, Seen> listing, Instant now) {
    Map<String, Sighting> next = new HashMap<>();
    listing.forEach((name, seen) -> next.put(name, sighting(known.get(name), seen, now)));
    known = next;
  }

  private static Sighting sighting(Sighting before, Seen seen, Instant now) {
    return before != null && before.seen().equals(seen) ? before : new Sighting(seen, now);
  }

  /**
   * @return true if the file is there and has not changed for the quiet time; an empty one may
   *     still be written
   */
  boolean whole(String name, Instant now) {
    Sighting sighting = known.get(name);
    return sighting != null
        && sighting.seen().bytes() > 0
        && !now.isBefore(sighting.unchangedSince().plus(quiet));
  }

  /**
   * @return since when the file has been there unchanged; empty if it is not there
   */
  Optional<Instant> unchangedSince(String name) {
    return Optional.ofNullable(known.get(name)).map(Sighting::unchangedSince);
  }
}
