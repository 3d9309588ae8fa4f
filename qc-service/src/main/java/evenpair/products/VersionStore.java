package evenpair.products;

import evenpair.products.Products.Provenance;
import evenpair.products.VersionRows.Activation;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.products.VersionRows.SignOff;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The products' tables, by plain JDBC: rows are only added (a product's definition apart), and read
 * all at once.
 */
@Component
class VersionStore {
  /**
   * Names the one lock under which products and versions are written; any number that nothing else
   * here uses.
   */
  private static final long ADVISORY_LOCK = 0x4C494D4954534554L;

  private static final String SIGN_OFF_COLUMNS = "s.approver, s.reason, s.signed_at";

  private final JdbcClient jdbc;

  VersionStore(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /**
   * Waits until no other transaction, of any process, writes versions. Held until the transaction
   * ends.
   */
  void lock() {
    jdbc.sql("select pg_advisory_xact_lock(?)").param(ADVISORY_LOCK).query((row, n) -> 1).list();
  }

  /**
   * @return the number that grows with every change
   */
  long changeNumber() {
    return jdbc.sql("select number from limits_change").query(Long.class).single();
  }

  /** To be called in each transaction that writes. */
  void changed() {
    jdbc.sql("update limits_change set number = number + 1").update();
  }

  List<ProductDefinition> products() {
    return jdbc.sql("select key, definition from product order by key")
        .query(VersionReading::product)
        .list();
  }

  Optional<String> productDigest(String key) {
    return jdbc.sql("select digest from product where key = ?")
        .param(key)
        .query(String.class)
        .optional();
  }

  /**
   * Adds the product or takes over its new definition; tunings that it no longer lists stay,
   * unlisted.
   */
  void put(ProductDefinition product, Instant now) {
    jdbc.sql(
            """
            insert into product (key, name, maker, serial_pattern, ear_simulator, definition, digest, changed_at)
            values (?, ?, ?, ?, ?, ?, ?, ?)
            on conflict (key) do update set name = excluded.name, maker = excluded.maker,
              serial_pattern = excluded.serial_pattern, ear_simulator = excluded.ear_simulator,
              definition = excluded.definition, digest = excluded.digest, changed_at = excluded.changed_at\
            """)
        .params(
            product.key(),
            product.name(),
            product.maker(),
            product.serialPattern(),
            product.earSimulator().label(),
            Canonical.text(product),
            Canonical.digest(product),
            Timestamp.from(now))
        .update();
    jdbc.sql("update tuning set listed = false, required = false where product = ?")
        .param(product.key())
        .update();
    for (int place = 0; place < product.tunings().size(); place++) {
      put(product.key(), product.tunings().get(place), place);
    }
  }

  private void put(String product, ProductDefinition.TuningDefinition tuning, int place) {
    jdbc.sql(
            """
            insert into tuning (product, key, place, required, listed) values (?, ?, ?, ?, true)
            on conflict (product, key) do update set place = excluded.place, required = excluded.required, listed = true\
            """)
        .params(product, tuning.key(), place, tuning.required())
        .update();
  }

  List<Golden> goldens() {
    return jdbc.sql(
            "select g.*, "
                + SIGN_OFF_COLUMNS
                + " from golden_response g left join golden_response_sign_off s on s.golden_id ="
                + " g.id order by g.product, g.tuning, g.version")
        .query((row, n) -> VersionReading.golden(row))
        .list();
  }

  void add(Golden golden) {
    Optional<Provenance> from = Optional.ofNullable(golden.provenance());
    jdbc.sql(
            """
            insert into golden_response (id, product, tuning, version, name, level_db, phase_deg, digest, author, made_at,
              units, spread_db, inspections, left_out)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)\
            """)
        .params(
            golden.id(),
            golden.product(),
            golden.tuning(),
            golden.version(),
            golden.name(),
            golden.response().level().toFloats(),
            golden.response().phaseDeg().map(RealArrays::narrowed).orElse(null),
            golden.digest(),
            golden.author(),
            Timestamp.from(golden.madeAt()),
            from.map(Provenance::units).orElse(null),
            from.map(p -> p.spreadDb().toFloats()).orElse(null),
            from.map(p -> p.inspections().toArray(UUID[]::new)).orElse(null),
            from.map(p -> p.leftOut().toArray(UUID[]::new)).orElse(null))
        .update();
  }

  void signGolden(UUID golden, SignOff signOff) {
    jdbc.sql(
            "insert into golden_response_sign_off (golden_id, approver, reason, signed_at) values"
                + " (?, ?, ?, ?)")
        .params(golden, signOff.approver(), signOff.reason(), Timestamp.from(signOff.at()))
        .update();
  }

  List<Limits> limitSets() {
    return jdbc.sql(
            "select l.*, "
                + SIGN_OFF_COLUMNS
                + " from limit_set l left join limit_set_sign_off s on s.limit_set_id = l.id"
                + " order by l.product, l.tuning, l.version")
        .query((row, n) -> VersionReading.limits(row))
        .list();
  }

  void add(Limits limits) {
    jdbc.sql(
            """
            insert into limit_set (id, product, tuning, version, golden_id, definition, digest, author, made_at)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?)\
            """)
        .params(
            limits.id(),
            limits.product(),
            limits.tuning(),
            limits.version(),
            limits.goldenId(),
            limits.definition(),
            limits.digest(),
            limits.author(),
            Timestamp.from(limits.madeAt()))
        .update();
  }

  void signLimits(UUID limitSet, SignOff signOff) {
    jdbc.sql(
            "insert into limit_set_sign_off (limit_set_id, approver, reason, signed_at) values (?,"
                + " ?, ?, ?)")
        .params(limitSet, signOff.approver(), signOff.reason(), Timestamp.from(signOff.at()))
        .update();
  }

  /**
   * @return those of limit sets and of golden responses together, in the order set; ids tell them
   *     apart
   */
  List<Activation> activations() {
    return jdbc.sql(
            """
            select limit_set_id as version, active_from, set_at, id from limit_set_activation
            union all select golden_id, active_from, set_at, id from golden_response_activation
            order by set_at, id\
            """)
        .query(
            (row, n) ->
                new Activation(
                    row.getObject("version", UUID.class),
                    VersionReading.instant(row, "active_from"),
                    VersionReading.instant(row, "set_at")))
        .list();
  }

  void activateLimits(UUID id, Activation activation) {
    activate(
        "insert into limit_set_activation (id, limit_set_id, active_from, set_at) values (?, ?, ?,"
            + " ?)",
        id,
        activation);
  }

  void activateGolden(UUID id, Activation activation) {
    activate(
        "insert into golden_response_activation (id, golden_id, active_from, set_at) values (?, ?,"
            + " ?, ?)",
        id,
        activation);
  }

  private void activate(String insert, UUID id, Activation activation) {
    jdbc.sql(insert)
        .params(
            id,
            activation.version(),
            Timestamp.from(activation.from()),
            Timestamp.from(activation.setAt()))
        .update();
  }
}
