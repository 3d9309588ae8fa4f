package evenpair.certificates;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Certificates of a batch that are printed together: rows of {@code certificate_bundle…}. */
@Component
class Bundles {
  private final JdbcClient jdbc;

  Bundles(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  void add(Bundle bundle, List<String> serials, Instant now) {
    jdbc.sql(
            """
            insert into certificate_bundle (id, job, batch, product, paper, language, created_at)
            values (?, ?, ?, ?, ?, ?, ?)
            """)
        .params(
            bundle.id(),
            bundle.job(),
            bundle.batch(),
            bundle.product(),
            bundle.paper(),
            bundle.language(),
            now.atOffset(ZoneOffset.UTC))
        .update();
    jdbc.sql(
            """
            insert into certificate_bundle_unit (bundle, place, serial)
            select ?, place - 1, serial from unnest(?) with ordinality as pinned (serial, place)
            """)
        .params(bundle.id(), serials.toArray(String[]::new))
        .update();
  }

  Optional<Bundle> find(UUID id) {
    return jdbc.sql(
            "select id, job, batch, product, paper, language from certificate_bundle where id = ?")
        .param(id)
        .query(Bundle.class)
        .optional();
  }

  /** Holds until the transaction ends: two who ask for the same at once get one bundle. */
  void lock(String batch, String product) {
    jdbc.sql("select pg_advisory_xact_lock(hashtextextended(?, 0))")
        .param("certificate-bundle " + product + " " + batch)
        .query((row, index) -> 0)
        .list();
  }

  /**
   * @return the bundle of that kind whose job is not over yet
   */
  Optional<Bundle> unfinished(Bundle like) {
    return jdbc.sql(
            """
            select b.id, b.job, b.batch, b.product, b.paper, b.language
            from certificate_bundle b join job j on j.id = b.job
            where b.batch = ? and b.product = ? and b.paper = ? and b.language = ?
              and j.state in ('waiting', 'running')
            order by b.created_at desc limit 1
            """)
        .params(like.batch(), like.product(), like.paper(), like.language())
        .query(Bundle.class)
        .optional();
  }

  int units(UUID bundle) {
    return jdbc.sql("select count(*) from certificate_bundle_unit where bundle = ?")
        .param(bundle)
        .query(Integer.class)
        .single();
  }

  List<Unit> units(UUID bundle, int from, int count) {
    return jdbc.sql(
            """
            select place, serial, left_out from certificate_bundle_unit
            where bundle = ? and place >= ? and place < ? order by place
            """)
        .params(bundle, from, from + count)
        .query(Unit.class)
        .list();
  }

  List<Unit> leftOut(UUID bundle) {
    return jdbc.sql(
            """
            select place, serial, left_out from certificate_bundle_unit
            where bundle = ? and left_out is not null order by place
            """)
        .param(bundle)
        .query(Unit.class)
        .list();
  }

  void leaveOut(UUID bundle, int place, String why) {
    jdbc.sql("update certificate_bundle_unit set left_out = ? where bundle = ? and place = ?")
        .params(why, bundle, place)
        .update();
  }

  void addPart(UUID bundle, int part, int pages, byte[] pdf) {
    jdbc.sql("insert into certificate_bundle_part (bundle, part, pages, pdf) values (?, ?, ?, ?)")
        .params(bundle, part, pages, pdf)
        .update();
  }

  int pages(UUID bundle) {
    return jdbc.sql("select coalesce(sum(pages), 0) from certificate_bundle_part where bundle = ?")
        .param(bundle)
        .query(Integer.class)
        .single();
  }

  List<Integer> parts(UUID bundle) {
    return jdbc.sql("select part from certificate_bundle_part where bundle = ? order by part")
        .param(bundle)
        .query(Integer.class)
        .list();
  }

  byte[] part(UUID bundle, int part) {
    return jdbc.sql("select pdf from certificate_bundle_part where bundle = ? and part = ?")
        .params(bundle, part)
        .query((row, index) -> row.getBytes(1))
        .single();
  }

  int forgetBefore(Instant oldest) {
    return jdbc.sql("delete from certificate_bundle where created_at < ?")
        .param(oldest.atOffset(ZoneOffset.UTC))
        .update();
  }

  /**
   * @param paper word of a paper size
   * @param language language tag
   */
  record Bundle(UUID id, UUID job, String batch, String product, String paper, String language) {
    Locale locale() {
      return Locale.forLanguageTag(language);
    }
  }

  /**
   * @param leftOut why it has no certificate; null if it has one, or its turn has not come
   */
  record Unit(int place, String serial, String leftOut) {}
}
