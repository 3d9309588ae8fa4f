package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.DropFolderSettings.Folder;
import evenpair.inspections.dropfolder.Sightings.Seen;
import evenpair.web.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One watched folder: looks, takes what is whole, moves it out. */
final class DropFolder implements AutoCloseable {
  /** Our own folder in the watched one; hidden. */
  static final String DESK = ".evenpair";

  private static final Logger LOG = LoggerFactory.getLogger(DropFolder.class);
  private static final long LARGEST_SIDECAR = 1 << 20;

  private final Folder settings;
  private final Surroundings around;
  private final Duration patience;
  private final WatchedFiles files;
  private final Sightings sightings;
  private final SetFinder finder;
  private final SetReader reader;
  private final Handover handover;
  private final WatchLock lock;
  private final Retries retries;
  private final Progress progress;

  /**
   * What all watched folders share.
   *
   * @param largest most bytes of one capture
   * @param locale of the reasons beside refused sets
   */
  record Surroundings(
      DropFolderSettings settings,
      long largest,
      Ingest ingest,
      Reports reports,
      Locale locale,
      Clock clock) {}

  DropFolder(Folder folder, Surroundings around) {
    this(folder, around, step -> {});
  }

  DropFolder(Folder folder, Surroundings around, Handover.Steps steps) {
    Path desk = folder.path().resolve(DESK);
    this.settings = folder;
    this.around = around;
    this.patience = around.settings().patience();
    this.files = new WatchedFiles(folder.path());
    this.sightings = new Sightings(around.settings().quiet());
    this.finder = new SetFinder(folder);
    this.reader = new SetReader(files, around.largest());
    this.handover = new Handover(folder.path(), desk, steps);
    this.lock = new WatchLock(desk.resolve("lock"));
    this.retries = new Retries(around.settings().interval());
    this.progress = new Progress(folder.station());
  }

  DropFolderStates.State state() {
    return progress.state();
  }

  /** One look at the folder. What cannot be done at the moment is left for the next one. */
  void look() {
    try {
      Files.createDirectories(settings.path().resolve(DESK));
      if (lock.hold()) {
        handover.finishInterrupted();
        work();
      } else {
        progress.elsewhere();
      }
    } catch (IOException | RuntimeException e) {
      if (progress.unreachable("The folder cannot be worked with: " + e)) {
        LOG.warn("Drop folder {} cannot be worked with; tried again", settings.path(), e);
      }
    }
  }

  private void work() throws IOException {
    Instant now = around.clock().instant();
    Map<String, Seen> listing = files.list();
    sightings.look(listing, now);
    SetFinder.Found found =
        finder.find(
            listing.keySet(),
            name -> sightings.whole(name, now),
            name -> sidecar(name, listing.get(name)));
    List<String> waiting = new ArrayList<>();
    for (DropSet set : inOrder(found.sets(), listing)) {
      if (!attend(set, listing, now)) {
        waiting.add(set.name());
      }
    }
    for (String stray : found.strays()) {
      attendStray(stray, listing, now);
    }
    retries.keepOnly(waiting);
    progress.looked(waiting.size(), retries.problem());
  }

  private Optional<byte[]> sidecar(String name, Seen seen) throws IOException {
    if (seen.bytes() > LARGEST_SIDECAR) {
      throw Flaws.tooLarge("inspection", name, seen.bytes(), LARGEST_SIDECAR);
    }
    return files.read(name, seen);
  }

  /** As they were written, so that a unit's seatings come in their order. */
  private static List<DropSet> inOrder(List<DropSet> sets, Map<String, Seen> listing) {
    return sets.stream()
        .sorted(
            Comparator.comparing((DropSet set) -> writtenAt(set, listing))
                .thenComparing(DropSet::name))
        .toList();
  }

  /** When the last of its captures was written; of the JSON while there is none. */
  private static Instant writtenAt(DropSet set, Map<String, Seen> listing) {
    return newest(set.files().values(), listing)
        .or(() -> newest(set.names(), listing))
        .orElse(Instant.MAX);
  }

  private static Optional<Instant> newest(Collection<String> names, Map<String, Seen> listing) {
    return names.stream()
        .filter(listing::containsKey)
        .map(name -> listing.get(name).writtenAt())
        .max(Comparator.naturalOrder());
  }

  /**
   * @return false if the set has to wait
   */
  private boolean attend(DropSet set, Map<String, Seen> listing, Instant now) {
    try {
      Optional<Refusal> flaw = flaw(set, now);
      if (flaw.isPresent()) {
        refuse(set, flaw.get(), listing);
        return true;
      }
      boolean whole = missing(set, now).isEmpty();
      return whole && retries.due(set.name(), now) && take(set, listing);
    } catch (IOException e) {
      return later(set, "a file cannot be read or moved: " + e);
    }
  }

  private Optional<Refusal> flaw(DropSet set, Instant now) throws IOException {
    if (set.flaw().isPresent()) {
      return set.flaw();
    }
    List<String> missing = missing(set, now);
    for (String part : missing) {
      Optional<String> name = set.fileOf(part);
      if (name.isPresent() && files.odd(name.get())) {
        return Optional.of(Flaws.noPlainFile(part, name.get()));
      }
    }
    return missing.isEmpty() || now.isBefore(quietSince(set, now).plus(patience))
        ? Optional.empty()
        : Optional.of(Flaws.missing(set, missing.get(0), patience));
  }

  private List<String> missing(DropSet set, Instant now) {
    return set.wanted().stream()
        .filter(part -> set.fileOf(part).filter(name -> sightings.whole(name, now)).isEmpty())
        .toList();
  }

  private Instant quietSince(DropSet set, Instant now) {
    return set.names().stream()
        .map(sightings::unchangedSince)
        .flatMap(Optional::stream)
        .max(Comparator.naturalOrder())
        .orElse(now);
  }

  private void attendStray(String name, Map<String, Seen> listing, Instant now) throws IOException {
    Instant since = sightings.unchangedSince(name).orElse(now);
    if (!now.isBefore(since.plus(patience))) {
      refuse(DropSet.stray(name), Flaws.stray(name, settings.pattern() != null), listing);
    }
  }

  /**
   * @return false if it has to wait
   */
  private boolean take(DropSet set, Map<String, Seen> listing) throws IOException {
    try {
      Optional<List<Ingest.Part>> parts = reader.read(set, listing);
      if (parts.isEmpty()) {
        return false;
      }
      Ingest.Taken taken =
          around
              .ingest()
              .take(set.inspection(), parts.get(), writtenAt(set, listing), around.locale());
      Instant at = around.clock().instant();
      handOver(set, around.reports().done(set, taken, at), listing);
      progress.taken(at);
      return true;
    } catch (Refusal refusal) {
      refuse(set, refusal, listing);
      return true;
    } catch (Ingest.NotNow e) {
      return later(set, e.getMessage());
    }
  }

  private boolean later(DropSet set, String why) {
    if (retries.later(set.name(), around.clock().instant(), why)) {
      LOG.warn("Set {} of drop folder {} waits: {}", set.name(), settings.path(), why);
    }
    return false;
  }

  private void refuse(DropSet set, Refusal refusal, Map<String, Seen> listing) throws IOException {
    LOG.info(
        "Set {} of drop folder {} is refused: {}",
        set.name(),
        settings.path(),
        refusal.getMessage());
    Instant at = around.clock().instant();
    handOver(set, around.reports().refused(set, refusal, settings.station(), at), listing);
    progress.refused();
  }

  private void handOver(DropSet set, Outcome outcome, Map<String, Seen> listing)
      throws IOException {
    Map<String, Seen> members = new LinkedHashMap<>();
    set.names().stream()
        .filter(listing::containsKey)
        .forEach(name -> members.put(name, listing.get(name)));
    handover.handOver(set.name(), members, outcome);
  }

  @Override
  public void close() throws IOException {
    lock.close();
  }
}
