package evenpair.web.database;

import evenpair.web.DataFolder;
import evenpair.web.StartRefused;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * PostgreSQL in the data folder, for a plant that gives no server of its own. Every commit is
 * synced to disk before it returns, every connection needs a password, and only this machine can
 * connect. Survives a kill of the JVM, of the server, or of both.
 */
final class EmbeddedServer implements AutoCloseable {
  static final String DATABASE = "evenpair";
  static final String SUPERUSER = "postgres";

  private static final Logger LOG = LoggerFactory.getLogger(EmbeddedServer.class);
  private static final Duration START_PATIENCE = Duration.ofSeconds(60);

  /** Stands in the database folder once it has been set up to the end. */
  private static final String COMPLETE = "evenpair-complete";

  private final FolderLock lock;
  private final EmbeddedPostgres server;
  private final ServerRoles roles;

  private EmbeddedServer(FolderLock lock, EmbeddedPostgres server, ServerRoles roles) {
    this.lock = lock;
    this.server = server;
    this.roles = roles;
  }

  /**
   * @param data holds the database and the superuser's password
   * @param runtime where the server's programs are unpacked; neither it nor a parent of the
   *     database folder
   * @throws StartRefused if another service uses the data folder, or the server does not come up
   */
  static EmbeddedServer start(DataFolder data, Path runtime, Clock clock) {
    FolderLock lock = FolderLock.acquire(data.root());
    try {
      Path database = data.root().resolve("database");
      StaleServer.stop(database);
      setAsideIfIncomplete(database, clock);
      EmbeddedPostgres server = postgres(data, database, runtime);
      return complete(lock, server, database);
    } catch (IOException | SQLException | RuntimeException e) {
      release(lock);
      if (e instanceof StartRefused refused) {
        throw refused;
      }
      throw new StartRefused(
          "The embedded PostgreSQL in " + data.root() + " does not start: " + e.getMessage() + ".",
          "See the lines of the server's own log above, or set spring.datasource.url to a PostgreSQL of your own.",
          e);
    }
  }

  private static EmbeddedPostgres postgres(DataFolder data, Path database, Path runtime)
      throws IOException {
    Path passwordFile = data.folder("keys").resolve("database-superuser");
    String password = SecretFile.readOrMake(passwordFile);
    Files.createDirectories(runtime);
    return EmbeddedPostgres.builder()
        .setDataDirectory(database)
        .setCleanDataDirectory(false)
        .setOverrideWorkingDirectory(runtime.toFile())
        .setRegisterShutdownHook(false) // Spring closes it, after everything that uses it
        .setPGStartupWait(START_PATIENCE)
        .setConnectConfig("password", password)
        // Options of initdb, given behind the library's own "-A trust"; the last one counts.
        .setLocaleConfig("auth", "scram-sha-256")
        .setLocaleConfig("pwfile", passwordFile.toString())
        // Sorting that no update of the operating system changes, which would break indexes.
        .setLocaleConfig("locale", "C")
        .setLocaleConfig("locale-provider", "builtin")
        .setLocaleConfig("builtin-locale", "C.UTF-8")
        .setServerConfig("listen_addresses", "localhost")
        .setServerConfig("unix_socket_directories", "")
        // The library turns both off; given later, these count.
        .setServerConfig("fsync", "on")
        .setServerConfig("synchronous_commit", "on")
        .setServerConfig("timezone", "UTC")
        .start();
  }

  private static EmbeddedServer complete(FolderLock lock, EmbeddedPostgres server, Path database)
      throws IOException, SQLException {
    try {
      ServerRoles roles = ServerRoles.prepare(server.getPostgresDatabase(), DATABASE);
      Path mark = database.resolve(COMPLETE);
      if (!Files.exists(mark)) {
        Files.createFile(mark);
      }
      LOG.info("Embedded PostgreSQL runs on {} at port {}", database, server.getPort());
      return new EmbeddedServer(lock, server, roles);
    } catch (IOException | SQLException | RuntimeException e) {
      server.close();
      throw e;
    }
  }

  /**
   * A kill during the very first set-up leaves a folder that no server can use. Nothing of ours is
   * in it yet; it is kept all the same.
   */
  private static void setAsideIfIncomplete(Path database, Clock clock) throws IOException {
    if (!Files.exists(database) || Files.exists(database.resolve(COMPLETE))) {
      return;
    }
    Path aside = database.resolveSibling("database-incomplete-" + clock.millis());
    Files.move(database, aside);
    LOG.warn("The set-up of {} was cut short; moved it to {} and begin anew", database, aside);
  }

  private static void release(FolderLock lock) {
    try {
      lock.close();
    } catch (IOException e) {
      LOG.warn("The data folder's lock could not be released", e);
    }
  }

  /**
   * @return address of the database for both roles, without user and password
   */
  String url() {
    return "jdbc:postgresql://localhost:" + server.getPort() + "/" + DATABASE;
  }

  ServerRoles roles() {
    return roles;
  }

  EmbeddedPostgres postgres() {
    return server;
  }

  /** Stops the server and waits for it, then frees the data folder. */
  @Override
  public void close() throws IOException {
    try {
      server.close();
    } finally {
      lock.close();
    }
  }
}
