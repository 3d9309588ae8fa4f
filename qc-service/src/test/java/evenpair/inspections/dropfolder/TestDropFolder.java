package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.DropFolderSettings.Defaults;
import evenpair.inspections.dropfolder.DropFolderSettings.Folder;
import evenpair.web.TestTexts;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A watched folder with a clock that is moved by hand, and somebody who puts files into it. */
public final class TestDropFolder implements AutoCloseable {
  public static final Duration QUIET = Duration.ofSeconds(3);
  public static final Duration PATIENCE = Duration.ofMinutes(10);

  /** By this pattern a name says serial number, tuning and side. */
  public static final String PATTERN =
      "(?<serial>[A-Z0-9-]+)_(?<tuning>[a-z]+)_(?<side>L|R)\\.(?:wav|csv)";

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final Path folder;
  private final Ingest ingest;
  private final String station;
  private final String pattern;
  private Instant now = Instant.now();
  private DropFolder watched;

  /**
   * @param pattern null: each set has a JSON
   */
  public TestDropFolder(Path folder, Ingest ingest, String station, String pattern) {
    this.folder = folder;
    this.ingest = ingest;
    this.station = station;
    this.pattern = pattern;
    restart(step -> {});
  }

  /** Thrown where a kill would end the process. */
  public static final class Killed extends Error {
    Killed(String step) {
      super("killed before: " + step);
    }
  }

  /** A new process, which is killed before the first step whose name begins so. */
  public void restartKilledBefore(String beginning) {
    restart(
        step -> {
          if (step.startsWith(beginning)) {
            throw new Killed(step);
          }
        });
  }

  /** A new process. The operating system has let go of the old one's lock. */
  public void restart() {
    restart(step -> {});
  }

  private void restart(Handover.Steps steps) {
    close();
    watched = open(steps);
  }

  /** A second process on the same folder. */
  DropFolder another() {
    return open(step -> {});
  }

  private DropFolder open(Handover.Steps steps) {
    Folder one =
        new Folder(folder, station, pattern, new Defaults("fern-1", null, "FB-1", "op-17", null));
    DropFolderSettings settings =
        new DropFolderSettings(
            List.of(one), Duration.ofSeconds(2), QUIET, PATIENCE, Locale.ENGLISH);
    Reports reports = new Reports(TestTexts.real(), TestDropFolder::problem, JSON, Locale.ENGLISH);
    return new DropFolder(
        one,
        new DropFolder.Surroundings(
            settings, 32 << 20, ingest, reports, Locale.ENGLISH, new HandClock()),
        steps);
  }

  private static Map<String, Object> problem(evenpair.web.Refusal refusal) {
    Map<String, Object> document = new LinkedHashMap<>();
    document.put("type", refusal.type());
    document.putAll(refusal.members());
    return document;
  }

  private final class HandClock extends Clock {
    @Override
    public ZoneOffset getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(java.time.ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  public void put(String name, byte[] content) {
    try {
      Files.write(folder.resolve(name), content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public void put(String name, String content) {
    put(name, content.getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  public void look() {
    watched.look();
  }

  /** Looks, waits for the quiet time, and looks again: whatever is whole has been taken then. */
  public void lookUntilQuiet() {
    look();
    pass(QUIET);
    look();
  }

  public void pass(Duration time) {
    now = now.plus(time);
  }

  public DropFolderStates.State state() {
    return watched.state();
  }

  /**
   * @return every file below the folder, but for our own desk
   */
  public List<String> files() {
    try (Stream<Path> all = Files.walk(folder)) {
      return List.copyOf(
          new TreeSet<>(
              all.filter(file -> !Files.isDirectory(file))
                  .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                  .filter(name -> !name.startsWith(DropFolder.DESK))
                  .toList()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * @return notes and half-moved sets on our own desk: none once everything is done
   */
  public List<String> leftOnTheDesk() {
    try (Stream<Path> all = Files.list(folder.resolve(DropFolder.DESK))) {
      return all.map(file -> file.getFileName().toString())
          .filter(name -> !name.equals("lock"))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public String text(String file) {
    try {
      return Files.readString(folder.resolve(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public JsonNode json(String file) {
    return JSON.readTree(text(file));
  }

  @Override
  public void close() {
    try {
      if (watched != null) {
        watched.close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
