package evenpair;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What may stand at the top of the project: a stranger finds six rooms there and two pages. */
class TopLevelTests {
  private static final Set<String> ROOMS =
      Set.of(
          "pom.xml",
          "README.md",
          "DEVELOPERS.md",
          "qc-service",
          "qc-station-ui",
          "limits",
          "migrations",
          "demo-units");

  @Test
  void holdsTheRoomsAndPagesThatTheLayoutNamesAndNothingElse() throws IOException {
    assertThat(shown(Path.of("..").toRealPath())).containsExactlyInAnyOrderElementsOf(ROOMS);
  }

  @Test
  void anotherFolderWouldBeSeen(@TempDir Path top) throws IOException {
    for (String room : ROOMS) {
      Files.createDirectory(top.resolve(room));
    }
    Files.createDirectory(top.resolve("scripts"));
    Files.createDirectory(top.resolve(".git"));

    assertThat(shown(top)).contains("scripts").doesNotContain(".git");
  }

  /** Everything but dot-files and what a build leaves. */
  private static Set<String> shown(Path top) throws IOException {
    try (Stream<Path> entries = Files.list(top)) {
      return entries
          .map(path -> path.getFileName().toString())
          .filter(name -> !name.startsWith(".") && !name.equals("target"))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }
}
