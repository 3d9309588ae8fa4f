package evenpair.demo.screens;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@link ServiceProcess} on a port and a folder that stay the same over its deaths. */
final class KillableService implements AutoCloseable {
  /** A start takes some 20 s, several times that on a busy machine. */
  private static final long PATIENCE_MS = 240_000;

  private final Path folder;
  private final int port;
  private Process process;

  KillableService() throws IOException {
    this.folder = Files.createTempDirectory("evenpair-killed");
    try (ServerSocket free = new ServerSocket(0)) {
      this.port = free.getLocalPort();
    }
    start();
  }

  URI address() {
    return URI.create("http://localhost:" + port);
  }

  /** Starts it, again if it was killed, and waits until it answers. */
  void start() throws IOException {
    Files.deleteIfExists(folder.resolve(ServiceProcess.READY));
    process =
        new ProcessBuilder(
                List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-Xmx512m",
                    "-cp",
                    System.getProperty("java.class.path"),
                    ServiceProcess.class.getName(),
                    String.valueOf(port),
                    folder.toString()))
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("log").toFile()))
            .start();
    for (long waited = 0; !Files.exists(folder.resolve(ServiceProcess.READY)); waited += 100) {
      if (!process.isAlive() || waited > PATIENCE_MS) {
        throw new IllegalStateException(
            "did not start:\n" + Files.readString(folder.resolve("log")));
      }
      pause();
    }
  }

  /** As power or the kernel would: nothing is told. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  /** The token of the station. */
  String token() {
    return secrets().path("token of " + ServiceProcess.STATION).asString();
  }

  /** What the operator signs in with. */
  String password(String person) {
    return secrets().path(person).asString();
  }

  Path capture(int place, String side) {
    return folder
        .resolve("demo")
        .resolve(ServiceProcess.PAIRS.name())
        .resolve(serial(place))
        .resolve("plain-" + side + ".wav");
  }

  /**
   * @param place 1 upwards
   */
  static String serial(int place) {
    return ServiceProcess.PAIRS.units().get(place - 1).serial();
  }

  private JsonNode secrets() {
    try {
      return JsonMapper.builder()
          .build()
          .readTree(Files.readString(folder.resolve("demo").resolve("sign-in.json")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void pause() {
    try {
      TimeUnit.MILLISECONDS.sleep(100);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() throws IOException, InterruptedException {
    process.destroy();
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      process.destroyForcibly().waitFor();
    }
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(java.io.File::delete);
    }
  }
}
