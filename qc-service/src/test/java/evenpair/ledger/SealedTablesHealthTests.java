package evenpair.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairDatabaseTest;
import evenpair.TestDatabase;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

@EvenpairDatabaseTest
class SealedTablesHealthTests {
  @Autowired TestDatabase.Access database;

  @Test
  void saysThatTwoRolesGuardTheSealedTables() {
    assertThat(guard(JdbcClient.create(database.service()))).startsWith("two database roles");
  }

  @Test
  void saysThatOneRoleLeavesTheTriggersOnly() {
    assertThat(guard(JdbcClient.create(database.owner())))
        .isEqualTo("one database role: sealed tables guarded by triggers only");
    assertThat(guard(JdbcClient.create(database.superuser()))).startsWith("one database role");
  }

  private static String guard(JdbcClient jdbc) {
    return new SealedTablesHealth(new LedgerFigures(jdbc))
        .health()
        .getDetails()
        .get("guard")
        .toString();
  }
}
