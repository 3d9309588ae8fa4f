package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.DropFolderSettings.Folder;
import evenpair.inspections.dropfolder.NamePattern.Named;
import evenpair.web.Refusal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * Tells which files belong together: those that a JSON names, and of the others those whose names
 * say the same but for the side.
 */
final class SetFinder {
  private final InspectionFields fields;
  private final Optional<NamePattern> pattern;

  SetFinder(Folder folder) {
    this.fields = new InspectionFields(folder);
    this.pattern = Optional.ofNullable(folder.pattern()).map(NamePattern::of);
  }

  /**
   * @param sets whole or not
   * @param strays captures that belong to none
   */
  record Found(List<DropSet> sets, List<String> strays) {}

  /** Reads a JSON. */
  interface SidecarReader {
    /**
     * @return empty if it is gone
     * @throws Refusal if it cannot be one
     */
    Optional<byte[]> read(String name) throws IOException;
  }

  /**
   * @param names files of the folder, of kinds that are taken
   * @param whole which of them are no longer written; a JSON that is not says nothing yet
   */
  Found find(Set<String> names, Predicate<String> whole, SidecarReader reader) throws IOException {
    SortedSet<String> rest = new TreeSet<>(names);
    List<DropSet> sets = new ArrayList<>();
    for (String name : new TreeSet<>(names)) {
      if (FileNames.sidecar(name)) {
        rest.remove(name);
        if (whole.test(name)) {
          sidecar(name, reader).ifPresent(sets::add);
        }
      }
    }
    sets.forEach(set -> rest.removeAll(set.files().values()));
    sets.addAll(named(rest));
    Set<String> claimed = new HashSet<>();
    sets.forEach(set -> claimed.addAll(set.names()));
    return new Found(sets, rest.stream().filter(name -> !claimed.contains(name)).toList());
  }

  private Optional<DropSet> sidecar(String name, SidecarReader reader) throws IOException {
    try {
      return reader.read(name).map(fields::sidecar).map(read -> set(name, read));
    } catch (Refusal flaw) {
      return Optional.of(DropSet.flawed(name, flaw));
    }
  }

  private static DropSet set(String name, InspectionFields.Sidecar read) {
    return new DropSet(
        FileNames.stem(name), Optional.of(name), read.files(), read.inspection(), Optional.empty());
  }

  private List<DropSet> named(Set<String> names) {
    Map<Map<String, String>, Map<String, String>> bySaying = new LinkedHashMap<>();
    for (String name : names) {
      Optional<Named> named = pattern.flatMap(known -> known.read(name));
      named.ifPresent(
          saying ->
              bySaying
                  .computeIfAbsent(saying.fields(), said -> new LinkedHashMap<>())
                  .putIfAbsent(saying.part(), name));
    }
    List<DropSet> sets = new ArrayList<>();
    bySaying.forEach((said, files) -> sets.add(named(said, files)));
    return sets;
  }

  private DropSet named(Map<String, String> said, Map<String, String> files) {
    String first = files.getOrDefault("left", files.values().iterator().next());
    return new DropSet(
        FileNames.stem(first), Optional.empty(), files, fields.named(said), Optional.empty());
  }
}
