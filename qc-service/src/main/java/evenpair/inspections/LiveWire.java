package evenpair.inspections;

import evenpair.inspections.plant.OtherProcesses;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Properties;
import java.util.UUID;
import org.postgresql.Driver;
import org.postgresql.PGConnection;
import org.postgresql.PGNotification;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.SmartLifecycle;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Carries live events to screens on other service processes of the same database, by its LISTEN and
 * NOTIFY. A notification is sent in the transaction of the record and so goes out when that commits
 * and never else. It is best effort like the streams themselves: after a break in the connection
 * every screen is let go, comes back, and reads the lists again.
 */
@Component
class LiveWire implements SmartLifecycle, OtherProcesses {
  static final String CHANNEL = "evenpair_live";
  static final String CONNECTION = "evenpair live events";

  private static final Logger LOG = LoggerFactory.getLogger(LiveWire.class);
  private static final Duration LOOK = Duration.ofSeconds(10);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(200);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(30);

  /** Where what other processes tell goes. */
  interface Sink {
    /**
     * @param json the event's data as it goes to the screens
     */
    void send(String event, Object json);

    /** Events may have been missed. */
    void missed();
  }

  private final JdbcConnectionDetails database;
  private final Sink sink;
  private final String origin = UUID.randomUUID().toString();
  private volatile boolean running;
  private volatile Connection connection;
  private Thread thread;

  LiveWire(JdbcConnectionDetails database, Sink sink) {
    this.database = database;
    this.sink = sink;
  }

  /**
   * To be called in the transaction that the events tell of.
   *
   * @param events names, such as {@code attempt}
   * @param json their common data, one line; all in all less than 8000 bytes
   */
  void tell(JdbcClient jdbc, List<String> events, String json) {
    jdbc.sql("select pg_notify(?, ?)")
        .params(CHANNEL, origin + '\n' + String.join(",", events) + '\n' + json)
        .query((row, number) -> true)
        .single();
  }

  @Override
  public boolean heard() {
    return connection != null;
  }

  @Override
  public synchronized void start() {
    running = true;
    thread = new Thread(this::run, "live-wire");
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    Duration pause = FIRST_PAUSE;
    boolean again = false;
    while (running) {
      try (Connection open = open()) {
        connection = open;
        if (again) {
          sink.missed();
        }
        again = true;
        pause = FIRST_PAUSE;
        listen(open);
      } catch (SQLException e) {
        if (running) {
          LOG.warn("Live events of other processes are not heard, tried again: {}", e.getMessage());
        }
      } finally {
        connection = null;
      }
      pause = rest(pause);
    }
  }

  private Connection open() throws SQLException {
    Properties properties = new Properties();
    properties.setProperty("ApplicationName", CONNECTION);
    properties.setProperty("tcpKeepAlive", "true");
    if (database.getUsername() != null) {
      properties.setProperty("user", database.getUsername());
    }
    if (database.getPassword() != null) {
      properties.setProperty("password", database.getPassword());
    }
    Connection open = new Driver().connect(database.getJdbcUrl(), properties);
    try (Statement statement = open.createStatement()) {
      statement.execute("listen " + CHANNEL);
      return open;
    } catch (SQLException e) {
      open.close();
      throw e;
    }
  }

  private void listen(Connection open) throws SQLException {
    PGConnection wire = open.unwrap(PGConnection.class);
    while (running) {
      PGNotification[] notifications = wire.getNotifications((int) LOOK.toMillis());
      if (notifications == null || notifications.length == 0) {
        probe(open);
        continue;
      }
      for (PGNotification notification : notifications) {
        deliver(notification.getParameter());
      }
    }
  }

  /** A connection that died without a word is found out by asking. */
  private static void probe(Connection open) throws SQLException {
    try (Statement statement = open.createStatement()) {
      statement.setQueryTimeout((int) LOOK.toSeconds());
      statement.execute("select 1");
    }
  }

  private void deliver(String payload) {
    String[] lines = payload.split("\n", 3);
    if (lines.length < 3 || lines[0].equals(origin)) {
      return;
    }
    for (String event : lines[1].split(",")) {
      sink.send(event, lines[2]);
    }
  }

  private Duration rest(Duration pause) {
    try {
      if (running) {
        Thread.sleep(pause.toMillis());
      }
    } catch (InterruptedException e) {
      running = false;
    }
    Duration twice = pause.multipliedBy(2);
    return twice.compareTo(LONGEST_PAUSE) > 0 ? LONGEST_PAUSE : twice;
  }

  @Override
  public synchronized void stop() {
    running = false;
    Connection open = connection;
    if (open != null) {
      try {
        open.abort(Runnable::run);
      } catch (SQLException e) {
        LOG.debug("The wire was down already", e);
      }
    }
    if (thread != null) {
      thread.interrupt();
    }
  }

  @Override
  public boolean isRunning() {
    return running;
  }
}
