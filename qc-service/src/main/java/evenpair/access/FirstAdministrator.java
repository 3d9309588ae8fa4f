package evenpair.access;

import evenpair.web.Caller;
import java.io.PrintStream;
import java.util.EnumSet;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Where nobody can look after people yet, makes an administrator with a random password. It is
 * printed once, to the console and not to a log that may be kept; of two processes that start at
 * once, one makes it.
 */
@Component
class FirstAdministrator implements ApplicationRunner {
  static final String NAME = "administrator";

  /** Any number that no other advisory lock uses. */
  private static final long LOCK = 0x45_50_41_44L;

  private final JdbcClient jdbc;
  private final TransactionTemplate transaction;
  private final AccountStore accounts;
  private final PrintStream console;

  @org.springframework.beans.factory.annotation.Autowired
  FirstAdministrator(JdbcClient jdbc, TransactionTemplate transaction, AccountStore accounts) {
    this(jdbc, transaction, accounts, System.out);
  }

  FirstAdministrator(
      JdbcClient jdbc,
      TransactionTemplate transaction,
      AccountStore accounts,
      PrintStream console) {
    this.jdbc = jdbc;
    this.transaction = transaction;
    this.accounts = accounts;
    this.console = console;
  }

  @Override
  public void run(ApplicationArguments arguments) {
    String password = Secrets.password();
    boolean made =
        Boolean.TRUE.equals(
            transaction.execute(
                status -> {
                  jdbc.sql("select pg_advisory_xact_lock(?)").param(LOCK).query().singleRow();
                  if (accounts.hasAdministrator()) {
                    return false;
                  }
                  accounts.open(NAME, password, EnumSet.of(Caller.ADMINISTRATOR));
                  return true;
                }));
    if (made) {
      console.printf(
          "%nThe first administrator was made. This is shown once:%n  name      %s%n  password  %s%n"
              + "Sign in with it, change the password, and add the people of the plant.%n%n",
          NAME, password);
    }
  }
}
