package evenpair.web.database;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.postgresql.PGConnection;

/**
 * The two roles of the embedded server. Their passwords are new at every start and stand in no
 * file: nobody but this process needs them.
 *
 * @param ownerPassword of {@link #OWNER}, who owns the tables and runs the migrations
 * @param servicePassword of {@link #SERVICE}, as whom the service works
 */
record ServerRoles(String ownerPassword, String servicePassword) {
  static final String OWNER = "evenpair_owner";
  static final String SERVICE = "evenpair_service";

  /**
   * Makes the roles and the database where they are missing, and gives both roles new passwords.
   */
  static ServerRoles prepare(DataSource superuser, String database) throws SQLException {
    ServerRoles roles = new ServerRoles(SecretFile.random(), SecretFile.random());
    try (Connection connection = superuser.getConnection();
        Statement statement = connection.createStatement()) {
      login(connection, OWNER, roles.ownerPassword());
      login(connection, SERVICE, roles.servicePassword());
      if (!exists(connection, "select 1 from pg_database where datname = ?", database)) {
        statement.execute("create database " + database + " owner " + OWNER);
      }
      statement.execute("revoke all on database " + database + " from public");
      statement.execute("grant connect on database " + database + " to " + SERVICE);
    }
    return roles;
  }

  private static void login(Connection connection, String role, String password)
      throws SQLException {
    if (!exists(connection, "select 1 from pg_roles where rolname = ?", role)) {
      try (Statement statement = connection.createStatement()) {
        statement.execute("create role " + role + " login nosuperuser nocreatedb nocreaterole");
      }
    }
    // Sends the scram verifier, so that the password itself can stand in no log.
    connection
        .unwrap(PGConnection.class)
        .alterUserPassword(role, password.toCharArray(), "scram-sha-256");
  }

  private static boolean exists(Connection connection, String query, String name)
      throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(query)) {
      statement.setString(1, name);
      try (ResultSet rows = statement.executeQuery()) {
        return rows.next();
      }
    }
  }
}
