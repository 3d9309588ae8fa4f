package evenpair.inspections.dropfolder;

import evenpair.web.DurableFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import tools.jackson.databind.json.JsonMapper;

/**
 * Moves a finished set out of the watched folder, into a folder of its own in done/ or refused/
 * with the reports beside it; seen from outside, the whole set appears there at once. What is to be
 * moved is written down and synced first. A kill before that leaves the set where it was, to be
 * taken again with the same answer; a kill after it leaves a note that the next start works off.
 */
final class Handover {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final Path folder;
  private final Path desk;
  private final Steps steps;

  /** Lets a test break off before a step, as a kill would. */
  interface Steps {
    void before(String step) throws IOException;
  }

  /**
   * @param folder the watched one
   * @param desk our own folder in it, for notes and half-moved sets
   */
  Handover(Path folder, Path desk, Steps steps) {
    this.folder = folder;
    this.desk = desk;
    this.steps = steps;
  }

  /** Size and time tell a file from a later one of the same name. */
  private record Member(String name, long bytes, long writtenAtMillis) {}

  private record Note(String to, String name, List<Member> members, Map<String, String> reports) {}

  /**
   * @param seen the set's files as they were read
   */
  void handOver(String setName, Map<String, Sightings.Seen> seen, Outcome outcome)
      throws IOException {
    List<Member> members =
        seen.entrySet().stream()
            .map(
                file ->
                    new Member(
                        file.getKey(),
                        file.getValue().bytes(),
                        file.getValue().writtenAt().toEpochMilli()))
            .toList();
    Path target = folder.resolve(outcome.folder());
    Files.createDirectories(target);
    Note note = new Note(outcome.folder(), freeName(target, setName), members, outcome.reports());
    Path written = desk.resolve(UUID.randomUUID() + ".json");
    steps.before("note");
    DurableFiles.writePrivate(written, JSON.writeValueAsBytes(note));
    workOff(written, note);
  }

  /** Brings to an end what a kill has broken off. */
  void finishInterrupted() throws IOException {
    try (DirectoryStream<Path> notes = Files.newDirectoryStream(desk, "*.json")) {
      for (Path written : notes) {
        workOff(written, JSON.readValue(Files.readAllBytes(written), Note.class));
      }
    }
  }

  private static String freeName(Path target, String wanted) {
    String name = wanted;
    for (int number = 2; Files.exists(target.resolve(name), LinkOption.NOFOLLOW_LINKS); number++) {
      name = wanted + "-" + number;
    }
    return name;
  }

  private void workOff(Path written, Note note) throws IOException {
    Path finished = folder.resolve(note.to()).resolve(note.name());
    if (!Files.exists(finished, LinkOption.NOFOLLOW_LINKS)) {
      Path staging = desk.resolve(FileNames.stem(written.getFileName().toString()));
      gather(staging, note);
      steps.before("show");
      Files.createDirectories(finished.getParent());
      Files.move(staging, finished, StandardCopyOption.ATOMIC_MOVE);
      DurableFiles.syncFolder(finished.getParent());
    }
    steps.before("forget");
    Files.deleteIfExists(written);
    DurableFiles.syncFolder(desk);
  }

  private void gather(Path staging, Note note) throws IOException {
    Files.createDirectories(staging);
    for (Member member : note.members()) {
      steps.before("move " + member.name());
      Path from = folder.resolve(member.name());
      Path to = staging.resolve(member.name());
      if (!Files.exists(to, LinkOption.NOFOLLOW_LINKS) && isStill(from, member)) {
        move(from, to);
      }
    }
    for (Map.Entry<String, String> report : named(note).entrySet()) {
      steps.before("report " + report.getKey());
      Files.writeString(
          staging.resolve(report.getKey()), report.getValue(), StandardCharsets.UTF_8);
    }
    DurableFiles.syncFolder(staging);
    DurableFiles.syncFolder(folder);
  }

  /** A report never takes the place of a file of the set that has the same name. */
  private static Map<String, String> named(Note note) {
    List<String> taken = note.members().stream().map(Member::name).toList();
    Map<String, String> reports = new LinkedHashMap<>();
    note.reports()
        .forEach(
            (name, text) -> reports.put(taken.contains(name) ? "evenpair-" + name : name, text));
    return reports;
  }

  private static boolean isStill(Path file, Member member) throws IOException {
    try {
      return Files.size(file) == member.bytes()
          && Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toMillis()
              == member.writtenAtMillis();
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (NoSuchFileException e) {
      if (Files.exists(from, LinkOption.NOFOLLOW_LINKS)) {
        throw e;
      }
      // somebody took it out of the folder meanwhile; it has been read, so nothing is lost
    }
  }
}
