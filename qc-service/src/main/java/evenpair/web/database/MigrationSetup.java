package evenpair.web.database;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import javax.sql.DataSource;
import org.springframework.boot.flyway.autoconfigure.FlywayConfigurationCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Tells the migrations which role the service works as, whoever gave the database. */
@Configuration(proxyBeanMethods = false)
class MigrationSetup {
  @Bean
  FlywayConfigurationCustomizer serviceRolePlaceholder(DataSource service) {
    return flyway -> flyway.placeholders(Map.of("serviceRole", currentRole(service)));
  }

  /**
   * Asked of the server: the user may stand in the address, in a setting, or come from the
   * operating system.
   */
  private static String currentRole(DataSource service) {
    try (Connection connection = service.getConnection();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select current_user")) {
      row.next();
      return row.getString(1);
    } catch (SQLException e) {
      throw new IllegalStateException("The database does not answer: " + e.getMessage(), e);
    }
  }
}
