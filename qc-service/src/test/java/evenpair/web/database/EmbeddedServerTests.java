package evenpair.web.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.type;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import evenpair.web.DataFolder;
import evenpair.web.StartRefused;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A real server in a folder of its own: started, stopped, abandoned, started again. */
class EmbeddedServerTests {
  /**
   * Unpacked once for all tests of the JVM; not below the data folder, which each test has for
   * itself.
   */
  @TempDir static Path runtime;

  @TempDir Path folder;

  private EmbeddedServer start() {
    return EmbeddedServer.start(new DataFolder(folder), runtime, Clock.systemUTC());
  }

  private static Connection as(EmbeddedServer server, String role, String password)
      throws SQLException {
    return DriverManager.getConnection(server.url(), role, password);
  }

  private static Connection owner(EmbeddedServer server) throws SQLException {
    return as(server, ServerRoles.OWNER, server.roles().ownerPassword());
  }

  private static Connection service(EmbeddedServer server) throws SQLException {
    return as(server, ServerRoles.SERVICE, server.roles().servicePassword());
  }

  private static String ask(Connection connection, String query) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      assertThat(row.next()).isTrue();
      return row.getString(1);
    }
  }

  private static void tell(Connection connection, String... statements) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  @Nested
  class Running {
    @Test
    void syncsEveryCommitAndListensToThisMachineOnly() throws Exception {
      try (EmbeddedServer server = start();
          Connection connection = service(server)) {
        assertThat(ask(connection, "show fsync")).isEqualTo("on");
        assertThat(ask(connection, "show synchronous_commit")).isEqualTo("on");
        assertThat(ask(connection, "show full_page_writes")).isEqualTo("on");
        assertThat(ask(connection, "show listen_addresses")).isEqualTo("localhost");
        try (Connection superuser = server.postgres().getPostgresDatabase().getConnection()) {
          assertThat(ask(superuser, "show unix_socket_directories")).isEmpty();
        }
      }
    }

    @Test
    void trustsNobodyWithoutAPassword() throws Exception {
      try (EmbeddedServer server = start()) {
        List<String> rules =
            Files.readAllLines(folder.resolve("database/pg_hba.conf")).stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .toList();
        assertThat(rules).isNotEmpty().allMatch(rule -> rule.endsWith("scram-sha-256"));
        for (String role :
            List.of(ServerRoles.OWNER, ServerRoles.SERVICE, EmbeddedServer.SUPERUSER)) {
          assertThatThrownBy(() -> as(server, role, "wrong").close())
              .hasMessageContaining("password authentication failed");
        }
      }
    }

    @Test
    void keepsTheSuperusersPasswordFromOthers() throws Exception {
      start().close();
      Path file = folder.resolve("keys/database-superuser");
      assertThat(Files.readString(file).strip()).hasSize(64);
      FileStore store = Files.getFileStore(file);
      assumeTrue(store.supportsFileAttributeView("posix"));
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
          .isEqualTo("rw-------");
    }

    @Test
    void letsTheServicesRoleOwnNothing() throws Exception {
      try (EmbeddedServer server = start();
          Connection service = service(server)) {
        assertThatThrownBy(() -> tell(service, "create table mine (id integer)"))
            .hasMessageContaining("permission denied");
        assertThat(
                ask(
                    service,
                    "select rolsuper or rolcreatedb or rolcreaterole from pg_roles where rolname = current_user"))
            .isEqualTo("f");
      }
    }
  }

  @Nested
  class StartedAgain {
    @Test
    void findsItsDataAfterAnOrderlyEnd() throws Exception {
      try (EmbeddedServer server = start();
          Connection owner = owner(server)) {
        tell(owner, "create table kept (word text)", "insert into kept values ('sedge')");
      }
      assertThat(folder.resolve("database/postmaster.pid")).doesNotExist();
      try (EmbeddedServer server = start();
          Connection owner = owner(server)) {
        assertThat(ask(owner, "select word from kept")).isEqualTo("sedge");
      }
    }

    @Test
    void givesNewPasswordsToItsRoles() throws Exception {
      String before;
      try (EmbeddedServer server = start()) {
        before = server.roles().servicePassword();
      }
      try (EmbeddedServer server = start()) {
        assertThatThrownBy(() -> as(server, ServerRoles.SERVICE, before).close())
            .hasMessageContaining("password authentication");
        service(server).close();
      }
    }

    @Test
    void endsAServerThatAKilledServiceLeftBehind() throws Exception {
      Process killed = ServiceProcess.start(folder, runtime);
      long abandoned = ServiceProcess.serverPid(killed);
      killed.destroyForcibly().waitFor();
      assertThat(ProcessHandle.of(abandoned)).as("the server outlives its service").isPresent();

      try (EmbeddedServer server = start();
          Connection owner = owner(server)) {
        assertThat(ProcessHandle.of(abandoned)).isEmpty();
        assertThat(ask(owner, "select word from kept")).isEqualTo("committed just before the kill");
      }
    }

    @Test
    void recoversWhatWasCommittedWhenServiceAndServerWereKilled() throws Exception {
      Process killed = ServiceProcess.start(folder, runtime);
      ProcessHandle server = ProcessHandle.of(ServiceProcess.serverPid(killed)).orElseThrow();
      killed.destroyForcibly().waitFor();
      server.destroyForcibly();
      server.onExit().get();

      try (EmbeddedServer again = start();
          Connection owner = owner(again)) {
        assertThat(ask(owner, "select word from kept")).isEqualTo("committed just before the kill");
      }
    }

    @Test
    void leavesAloneAProcessThatHasGotTheNumberOfAnOldServer() throws Exception {
      start().close();
      // This very JVM stands for the stranger: it lives, and its command line does not name the
      // folder.
      Files.writeString(
          folder.resolve("database/postmaster.pid"),
          ProcessHandle.current().pid() + "\n" + folder + "\n");
      assertThat(StaleServer.runningOn(folder.resolve("database"))).isEmpty();
    }

    @Test
    void setsAsideADatabaseThatWasNeverSetUpToTheEnd() throws Exception {
      Path database = Files.createDirectories(folder.resolve("database"));
      Files.writeString(database.resolve("postgresql.conf"), "# cut short");
      try (EmbeddedServer server = start();
          Connection service = service(server)) {
        assertThat(ask(service, "select 1")).isEqualTo("1");
      }
      try (Stream<Path> entries = Files.list(folder)) {
        List<Path> aside =
            entries
                .filter(entry -> entry.getFileName().toString().startsWith("database-incomplete-"))
                .toList();
        assertThat(aside).hasSize(1);
        assertThat(aside.get(0).resolve("postgresql.conf")).hasContent("# cut short");
      }
    }
  }

  @Nested
  class ASecondService {
    @Test
    void isRefusedWithTheNumberOfTheProcessThatRuns() throws Exception {
      Process first = ServiceProcess.start(folder, runtime);
      long server = ServiceProcess.serverPid(first);
      try {
        assertThatThrownBy(EmbeddedServerTests.this::start)
            .isInstanceOf(StartRefused.class)
            .hasMessageContaining("process " + first.pid())
            .hasMessageContaining(folder.toString());
        assertThat(ProcessHandle.of(server)).as("the first one's server is left alone").isPresent();
      } finally {
        first.getOutputStream().close(); // tells it to end in order
        first.waitFor();
      }
    }

    @Test
    void isRefusedInTheSameProcessToo() throws Exception {
      try (EmbeddedServer server = start()) {
        for (int attempt = 1;
            attempt <= 2;
            attempt++) { // the first refusal must not have let go of the lock
          assertThatThrownBy(EmbeddedServerTests.this::start)
              .asInstanceOf(type(StartRefused.class))
              .satisfies(refusal -> assertThat(refusal.action()).contains("evenpair.data"))
              .satisfies(
                  refusal ->
                      assertThat(refusal)
                          .hasMessageContaining("process " + ProcessHandle.current().pid()));
        }
        service(server).close();
      }
    }
  }

  /** A service in a JVM of its own, which a test can kill. */
  static final class ServiceProcess {
    private ServiceProcess() {}

    static Process start(Path folder, Path runtime) throws IOException {
      String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
      return new ProcessBuilder(
              java,
              "-Xmx256m",
              "-cp",
              System.getProperty("java.class.path"),
              ServiceProcess.class.getName(),
              folder.toString(),
              runtime.toString())
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start();
    }

    /** Waits until the server is up. */
    static long serverPid(Process process) throws IOException {
      StringBuilder output = new StringBuilder();
      InputStream in = process.getInputStream();
      for (int next = in.read(); next >= 0; next = in.read()) {
        output.append((char) next);
        int at = output.indexOf("SERVER=");
        if (at >= 0 && next == '\n') {
          return Long.parseLong(output.substring(at + "SERVER=".length()).strip());
        }
      }
      throw new IllegalStateException("the service did not start: " + output);
    }

    public static void main(String[] arguments) throws Exception {
      Path folder = Path.of(arguments[0]);
      try (EmbeddedServer server =
              EmbeddedServer.start(
                  new DataFolder(folder), Path.of(arguments[1]), Clock.systemUTC());
          Connection owner = owner(server)) {
        tell(
            owner,
            "create table kept (word text)",
            "insert into kept values ('committed just before the kill')");
        String pid =
            Files.readAllLines(folder.resolve("database/postmaster.pid"), StandardCharsets.UTF_8)
                .get(0)
                .strip();
        System.out.println("\nSERVER=" + pid);
        System.out.flush();
        System.in.read(); // until the test closes it
      }
    }
  }
}
