package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeptScreensTests {
  @TempDir Path root;

  @BeforeEach
  void twoScreensAndOneForeignFile() throws IOException {
    write("static/service-worker.js", "// keeps the screens");
    write("static/index.html", "<!doctype html>");
    write("static/js/app.js", "start()");
    write("META-INF/resources/webjars/chart/1/dist/chart.esm.js", "export {}");
    write("META-INF/resources/webjars/chart/1/dist/chart.iife.min.js", "var chart");
    write("META-INF/resources/webjars/chart/1/README.md", "a chart");
  }

  private void write(String file, String text) throws IOException {
    Path path = root.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private String script() {
    String files = root.toUri().toString();
    return new KeptScreens(files + "static/", files + "META-INF/resources/webjars/").script();
  }

  private String version() {
    return script().lines().findFirst().orElseThrow();
  }

  @Test
  void namesEveryFileThatABrowserRunsButTheWorkerItself() {
    assertThat(script().lines().skip(1).findFirst())
        .hasValue(
            "const FILES = [\"/index.html\",\"/js/app.js\",\"/webjars/chart/1/dist/chart.esm.js\"]");
    assertThat(script()).endsWith("// keeps the screens");
  }

  @Test
  void anyChangedFileMakesAnotherVersion() throws IOException {
    String before = version();
    assertThat(version()).isEqualTo(before).matches("const VERSION = \"[0-9a-f]{16}\"");
    write("static/js/app.js", "start(1)");
    String changed = version();
    write("static/js/app.js", "start()");
    write("static/js/more.js", "");
    assertThat(changed).isNotEqualTo(before);
    assertThat(version()).isNotIn(before, changed);
  }

  @Test
  void anotherWorkerIsAnotherVersionToo() throws IOException {
    String before = version();
    write("static/service-worker.js", "// keeps them better");
    assertThat(version()).isNotEqualTo(before);
  }

  @Test
  void withoutAWorkerTheServiceDoesNotStart() throws IOException {
    Files.delete(root.resolve("static/service-worker.js"));
    assertThatThrownBy(this::script).isInstanceOf(StartRefused.class);
  }
}
