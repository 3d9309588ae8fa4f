package evenpair;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.postgresql.ds.PGSimpleDataSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.MapPropertySource;
import org.springframework.util.FileSystemUtils;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;

/**
 * The one place where tests get PostgreSQL from: Testcontainers' where a container engine runs, the
 * embedded one where none does; the log says which, once. One server a JVM, one database a call,
 * each with the owner's and the service's role as in a plant.
 */
public final class TestDatabase {
  private static final Logger LOG = LoggerFactory.getLogger(TestDatabase.class);
  private static final String OWNER = "evenpair_owner";
  private static final String SERVICE = "evenpair_service";
  private static final String PASSWORD = "for-tests-only";

  /** Many cached contexts, each with a small pool. */
  private static final String CONNECTIONS = "300";

  private static final AtomicInteger COUNT = new AtomicInteger();

  private TestDatabase() {}

  /** How to get at a test's database as either role, or as one who is above all rules. */
  public record Access(String url, String superuserName) {
    /**
     * @return connections as the tables' owner
     */
    public DataSource owner() {
      return as(OWNER);
    }

    /**
     * @return connections as the role that the service works as
     */
    public DataSource service() {
      return as(SERVICE);
    }

    /**
     * @return connections as the superuser, who can switch triggers off
     */
    public DataSource superuser() {
      return as(superuserName);
    }

    private DataSource as(String role) {
      return TestDatabase.dataSource(url, role);
    }
  }

  /** Hands the context a database and a data folder of its own. */
  static final class Initializer
      implements ApplicationContextInitializer<ConfigurableApplicationContext> {
    @Override
    public void initialize(ConfigurableApplicationContext context) {
      Access access = fresh();
      Map<String, Object> settings =
          Map.of(
              "spring.datasource.url",
              access.url(),
              "spring.datasource.username",
              SERVICE,
              "spring.datasource.password",
              PASSWORD,
              "spring.datasource.hikari.maximum-pool-size",
              "6",
              "spring.datasource.hikari.minimum-idle",
              "0",
              "spring.flyway.user",
              OWNER,
              "spring.flyway.password",
              PASSWORD,
              "evenpair.print.first-page",
              "false",
              "evenpair.data",
              temporaryFolder().toString());
      context
          .getEnvironment()
          .getPropertySources()
          .addFirst(new MapPropertySource("test database", settings));
      context.getBeanFactory().registerSingleton("testDatabaseAccess", access);
    }
  }

  /**
   * @return a new, empty database owned by the owner's role; no migration has run
   */
  public static Access fresh() {
    String name = "test_" + COUNT.incrementAndGet();
    try (Connection connection =
            dataSource(Server.ONLY.url("postgres"), Server.ONLY.superuser()).getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("create database " + name + " owner " + OWNER);
      statement.execute("revoke all on database " + name + " from public");
      statement.execute("grant connect on database " + name + " to " + SERVICE);
      return new Access(Server.ONLY.url(name), Server.ONLY.superuser());
    } catch (SQLException e) {
      throw new IllegalStateException("no test database", e);
    }
  }

  private static DataSource dataSource(String url, String role) {
    PGSimpleDataSource source = new PGSimpleDataSource();
    source.setUrl(url);
    source.setUser(role);
    source.setPassword(PASSWORD);
    return source;
  }

  private static Path temporaryFolder() {
    try {
      Path folder = Files.createTempDirectory("evenpair-test");
      atTheEnd(() -> delete(folder));
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * When every Spring context has been closed; a hook of the JVM's own would run at the same time
   * as their closing.
   */
  private static void atTheEnd(Runnable task) {
    SpringApplication.getShutdownHandlers().add(task);
  }

  private static void close(EmbeddedPostgres server) {
    try {
      server.close();
    } catch (IOException e) {
      LOG.warn("The test database did not stop", e);
    }
  }

  private static void delete(Path folder) {
    try {
      FileSystemUtils.deleteRecursively(folder);
    } catch (IOException e) {
      LOG.warn("{} stays behind: {}", folder, e.getMessage());
    }
  }

  /** Started when first asked for. */
  private record Server(String address, String superuser) {
    static final Server ONLY = start();

    String url(String database) {
      return "jdbc:postgresql://" + address + "/" + database;
    }

    private static Server start() {
      Server server = DockerClientFactory.instance().isDockerAvailable() ? container() : embedded();
      try (Connection connection =
              dataSource(server.url("postgres"), server.superuser()).getConnection();
          Statement statement = connection.createStatement()) {
        for (String role : new String[] {OWNER, SERVICE}) {
          statement.execute("create role " + role + " login password '" + PASSWORD + "'");
        }
      } catch (SQLException e) {
        throw new IllegalStateException("no roles for the tests", e);
      }
      return server;
    }

    private static Server container() {
      LOG.info("Database tests run on PostgreSQL in a container");
      PostgreSQLContainer container =
          new PostgreSQLContainer(DockerImageName.parse("postgres:17-alpine"))
              .withUsername("postgres")
              .withPassword(PASSWORD)
              .withCommand("postgres", "-c", "fsync=off", "-c", "max_connections=" + CONNECTIONS);
      container.start(); // Testcontainers removes it when the JVM ends
      return new Server(
          container.getHost() + ":" + container.getMappedPort(PostgreSQLContainer.POSTGRESQL_PORT),
          "postgres");
    }

    private static Server embedded() {
      LOG.info("Database tests run on the embedded PostgreSQL: no container engine runs here");
      try {
        Path passwordFile = Files.writeString(temporaryFolder().resolve("password"), PASSWORD);
        EmbeddedPostgres server =
            EmbeddedPostgres.builder()
                .setConnectConfig("password", PASSWORD)
                .setLocaleConfig("auth", "scram-sha-256")
                .setLocaleConfig("pwfile", passwordFile.toString())
                .setServerConfig("max_connections", CONNECTIONS)
                .setServerConfig("listen_addresses", "localhost")
                .setServerConfig("unix_socket_directories", "")
                .setRegisterShutdownHook(false)
                .start(); // not synced: these data are thrown away
        atTheEnd(() -> close(server));
        return new Server("localhost:" + server.getPort(), "postgres");
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
