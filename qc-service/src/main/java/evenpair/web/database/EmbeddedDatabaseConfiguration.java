package evenpair.web.database;

import evenpair.web.DataFolder;
import java.time.Clock;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

/**
 * Starts the embedded PostgreSQL where {@code spring.datasource.url} is not set. The connection
 * pool is made from these details and so depends on the server bean: Spring closes the pool first
 * and the server last.
 */
@Configuration(proxyBeanMethods = false)
@Conditional(EmbeddedDatabaseConfiguration.NoDatabaseGiven.class)
class EmbeddedDatabaseConfiguration {
  @Bean(destroyMethod = "close")
  EmbeddedServer embeddedServer(DataFolder data, Clock clock) {
    return EmbeddedServer.start(data, data.root().resolve("runtime"), clock);
  }

  @Bean
  JdbcConnectionDetails embeddedConnection(EmbeddedServer server) {
    return new JdbcConnectionDetails() {
      @Override
      public String getUsername() {
        return ServerRoles.SERVICE;
      }

      @Override
      public String getPassword() {
        return server.roles().servicePassword();
      }

      @Override
      public String getJdbcUrl() {
        return server.url();
      }
    };
  }

  @Bean
  FlywayConnectionDetails embeddedOwnerConnection(EmbeddedServer server) {
    return new FlywayConnectionDetails() {
      @Override
      public String getUsername() {
        return ServerRoles.OWNER;
      }

      @Override
      public String getPassword() {
        return server.roles().ownerPassword();
      }

      @Override
      public String getJdbcUrl() {
        return server.url();
      }
    };
  }

  static class NoDatabaseGiven implements Condition {
    @Override
    public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
      return !StringUtils.hasText(context.getEnvironment().getProperty("spring.datasource.url"));
    }
  }
}
