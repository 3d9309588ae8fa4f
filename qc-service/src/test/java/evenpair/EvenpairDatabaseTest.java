package evenpair;

import evenpair.access.TestCallers;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.AliasFor;
import org.springframework.test.context.ContextConfiguration;

/**
 * The whole service on a fresh database: put it on a test class, nothing else is needed.
 *
 * <pre>{@code
 * @EvenpairDatabaseTest
 * class LimitSetStoreTests {
 *   @Autowired Products products;        // any bean
 *   @Autowired JdbcClient jdbc;          // as the service's role: no UPDATE or DELETE on sealed tables
 *   @Autowired MockMvc mvc;              // HTTP without a socket, through all filters
 *   @LocalServerPort int port;           // HTTP through a real socket on http://127.0.0.1:port
 *   @Autowired TestDatabase.Access database;   // database.superuser(), database.owner(): to tamper with sealed tables
 * }
 * }</pre>
 *
 * <p>Test classes with the same properties share one Spring context and so one database and one
 * {@code evenpair.data} folder: use serials, batches and names of your own, and count nothing that
 * others may add to. For a context and database of your own give a property that nobody else gives:
 * {@code @EvenpairDatabaseTest(properties = "test.own=limit-sets")}. A {@code @Transactional} test
 * is rolled back and is not seen by requests that go through the socket.
 *
 * <p>Requests without credentials are signed in as an engineer who also measures; headers name
 * another person, other roles, or nobody: see {@link TestCallers}.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@SpringBootTest(classes = EvenpairApplication.class)
@AutoConfigureMockMvc
@Import(TestCallers.class)
@ContextConfiguration(initializers = TestDatabase.Initializer.class)
public @interface EvenpairDatabaseTest {
  /** {@code RANDOM_PORT} unless said otherwise, so that most classes share one context. */
  @AliasFor(annotation = SpringBootTest.class, attribute = "webEnvironment")
  WebEnvironment webEnvironment() default WebEnvironment.RANDOM_PORT;

  /** Settings as {@code key=value}. */
  @AliasFor(annotation = SpringBootTest.class, attribute = "properties")
  String[] properties() default {};
}
