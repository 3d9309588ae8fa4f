package evenpair.web.database;

import evenpair.web.StartRefused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A database server that outlived its service: a JVM that is killed leaves it running. To be called
 * with the folder's lock held, so that it can belong to no living service.
 */
final class StaleServer {
  private static final Logger LOG = LoggerFactory.getLogger(StaleServer.class);

  /**
   * Time for a server to end by itself: its clients died with their JVM, so it only has to write
   * what it holds.
   */
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private StaleServer() {}

  /**
   * Ends the server that runs on the folder, if there is one, and waits until it has gone.
   *
   * @throws StartRefused if it does not go
   */
  static void stop(Path database) throws IOException {
    Optional<ProcessHandle> server = runningOn(database);
    if (server.isEmpty()) {
      return;
    }
    ProcessHandle process = server.get();
    LOG.warn(
        "A database server (process {}) of a service that was killed still runs on {}; stopping it",
        process.pid(),
        database);
    process.destroy();
    if (!gone(process)) {
      LOG.warn(
          "Process {} did not end in {} s; killing it, the next start recovers",
          process.pid(),
          PATIENCE.toSeconds());
      process.destroyForcibly();
      if (!gone(process)) {
        throw new StartRefused(
            "A database server (process "
                + process.pid()
                + ") runs on "
                + database
                + " and cannot be ended.",
            "End that process, then start again.");
      }
    }
  }

  /**
   * The process that postmaster.pid names counts only if its command line names the folder: numbers
   * are used again.
   */
  static Optional<ProcessHandle> runningOn(Path database) throws IOException {
    Path pidFile = database.resolve("postmaster.pid");
    if (!Files.exists(pidFile)) {
      return Optional.empty();
    }
    List<String> lines = Files.readAllLines(pidFile);
    if (lines.isEmpty() || !lines.get(0).strip().matches("\\d{1,18}")) {
      return Optional.empty();
    }
    return ProcessHandle.of(Long.parseLong(lines.get(0).strip()))
        .filter(process -> names(process, database));
  }

  private static boolean names(ProcessHandle process, Path database) {
    String folder = database.toString();
    Optional<String[]> arguments = process.info().arguments();
    if (arguments.isPresent()) {
      return Arrays.asList(arguments.get()).contains(folder);
    }
    return process.info().commandLine().filter(line -> line.contains(folder)).isPresent();
  }

  private static boolean gone(ProcessHandle process) {
    try {
      process.onExit().get(PATIENCE.toMillis(), TimeUnit.MILLISECONDS);
      return true;
    } catch (TimeoutException | ExecutionException e) {
      return !process.isAlive();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return !process.isAlive();
    }
  }
}
