package evenpair.products;

import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * A product with its limit sets as they stand in one folder.
 *
 * @param sets by tuning, then by version, rising
 */
record FileLimits(ProductDefinition product, List<FileSet> sets) {
  private static final String PRODUCT = "product.yaml";

  /**
   * @param path the file, such as {@code limits/sedge-2/plain.yaml}
   */
  record FileSet(String path, LimitSet set, String goldenPath, GoldenResponse golden) {}

  /**
   * @param problems gets what is wrong in any file of the folder
   * @return empty if there was a problem
   */
  static Optional<FileLimits> read(LimitsFolder folder, List<LimitsProblem> problems) {
    int before = problems.size();
    Optional<ProductDefinition> product = product(folder, problems);
    Map<String, GoldenResponse> goldens = goldens(folder, problems);
    List<FileSet> sets = product.map(p -> sets(folder, p, goldens, problems)).orElse(List.of());
    return problems.size() > before ? Optional.empty() : product.map(p -> new FileLimits(p, sets));
  }

  /**
   * @return the sets of tunings that are derived from another
   */
  Stream<FileSet> derived() {
    return sets.stream()
        .filter(file -> product.tuning(file.set().tuning()).flatMap(t -> t.from()).isPresent());
  }

  private static Optional<ProductDefinition> product(
      LimitsFolder folder, List<LimitsProblem> problems) {
    String path = folder.path(PRODUCT);
    byte[] bytes = folder.files().get(PRODUCT);
    if (bytes == null) {
      problems.add(
          new LimitsProblem(path, 1, 1, "", "no such file", PRODUCT + " in each folder of limits"));
      return Optional.empty();
    }
    try {
      ProductDefinition product = ProductReader.read(path, bytes);
      if (!product.key().equals(folder.name())) {
        String expected = folder.name() + ", as the folder is named";
        problems.add(
            new LimitsProblem(path, 1, 1, "product", Problems.quoted(product.key()), expected));
      }
      return Optional.of(product);
    } catch (UnreadableLimits e) {
      problems.addAll(e.problems());
      return Optional.empty();
    }
  }

  private static Map<String, GoldenResponse> goldens(
      LimitsFolder folder, List<LimitsProblem> problems) {
    Map<String, GoldenResponse> goldens = new TreeMap<>();
    folder
        .files()
        .forEach(
            (file, bytes) -> {
              if (file.endsWith(".csv")) {
                try {
                  goldens.put(file, GoldenCsv.read(folder.path(file), bytes));
                } catch (UnreadableLimits e) {
                  problems.addAll(e.problems());
                }
              }
            });
    return goldens;
  }

  private static List<FileSet> sets(
      LimitsFolder folder,
      ProductDefinition product,
      Map<String, GoldenResponse> goldens,
      List<LimitsProblem> problems) {
    List<FileSet> sets = new ArrayList<>();
    Surroundings surroundings = surroundings(folder, product);
    folder
        .files()
        .forEach(
            (file, bytes) -> {
              if (file.endsWith(".yaml") && !file.equals(PRODUCT)) {
                try {
                  LimitSet set = LimitSetReader.read(folder.path(file), bytes, surroundings);
                  Optional.ofNullable(goldens.get(set.golden()))
                      .ifPresent(
                          g ->
                              sets.add(
                                  new FileSet(
                                      folder.path(file), set, folder.path(set.golden()), g)));
                } catch (UnreadableLimits e) {
                  problems.addAll(e.problems());
                }
              }
            });
    sets.sort(
        Comparator.comparing((FileSet s) -> s.set().tuning())
            .thenComparing(s -> s.set().version()));
    noteRepeated(sets, problems);
    return sets;
  }

  private static Surroundings surroundings(LimitsFolder folder, ProductDefinition product) {
    Set<String> tunings = new TreeSet<>();
    product.tunings().forEach(tuning -> tunings.add(tuning.key()));
    Set<String> csv = new TreeSet<>(folder.files().keySet());
    csv.removeIf(file -> !file.endsWith(".csv"));
    return new Surroundings(product.key(), tunings, product.earSimulator(), csv);
  }

  private static void noteRepeated(List<FileSet> sets, List<LimitsProblem> problems) {
    Set<String> seen = new HashSet<>();
    for (FileSet set : sets) {
      String version = set.set().tuning() + " version " + set.set().version();
      if (!seen.add(version)) {
        problems.add(
            new LimitsProblem(
                set.path(), 1, 1, "version", version + " in a second file", "one file a version"));
      }
    }
  }
}
