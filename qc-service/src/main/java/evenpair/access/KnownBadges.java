package evenpair.access;

import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What a bench may know of the badges of those who signed in at it: PBKDF2 (RFC 8018) with
 * HMAC-SHA-256 over the badge's UTF-8 bytes, one salt a bench, so that a scan is derived once and
 * compared with all. Badges have few characters: this slows a search, it does not prevent one.
 */
@Component
class KnownBadges {
  /** Some 0.1 s in a browser: short enough to scan and go on. */
  static final int ITERATIONS = 200_000;

  private final JdbcClient jdbc;
  private final AccessSettings settings;
  private final Clock clock;

  KnownBadges(JdbcClient jdbc, AccessSettings settings, Clock clock) {
    this.jdbc = jdbc;
    this.settings = settings;
    this.clock = clock;
  }

  /**
   * @param salt base64, 16 bytes
   * @param items one a person
   */
  record Known(String kdf, String hash, int iterations, String salt, List<Item> items) {}

  /**
   * @param derived base64, 32 bytes
   * @param name to show, and to send as the operator of what is measured meanwhile
   * @param expiresAt from then on the bench must ask the service again
   */
  record Item(String derived, UUID person, String name, Instant expiresAt) {}

  /** Somebody with a badge signed in at that bench. */
  void note(String station, AccountStore.Person person) {
    if (person.badge() == null) {
      return;
    }
    byte[] derived = derive(person.badge(), salt(station), ITERATIONS);
    jdbc.sql(
            "insert into known_badge (station, person, derived, signed_in_at) values (?, ?, ?, ?)"
                + " on conflict (station, person) do update set derived = excluded.derived, signed_in_at = excluded.signed_in_at")
        .params(station, person.ref(), derived, at(clock.instant()))
        .update();
  }

  /** The badge was taken away or changed, or the person may not sign in any more. */
  void forget(UUID person) {
    jdbc.sql("delete from known_badge where person = ?").param(person).update();
  }

  Known at(String station) {
    Instant since = clock.instant().minus(settings.knownAtBench());
    List<Item> items =
        jdbc.sql(
                """
                select known_badge.derived, person.ref, person.name, known_badge.signed_in_at
                  from known_badge join person on person.ref = known_badge.person
                       join account on account.person = person.ref
                 where known_badge.station = ? and known_badge.signed_in_at > ?
                   and account.active and 'operator' = any(account.roles) and person.name is not null
                 order by known_badge.signed_in_at desc
                """)
            .params(station, at(since))
            .query(this::item)
            .list();
    String salt = Base64.getEncoder().encodeToString(salt(station));
    return new Known("PBKDF2", "SHA-256", ITERATIONS, salt, items);
  }

  private Item item(ResultSet row, int number) throws SQLException {
    Instant signedIn = row.getObject("signed_in_at", OffsetDateTime.class).toInstant();
    return new Item(
        Base64.getEncoder().encodeToString(row.getBytes("derived")),
        row.getObject("ref", UUID.class),
        row.getString("name"),
        signedIn.plus(settings.knownAtBench()));
  }

  private byte[] salt(String station) {
    try {
      jdbc.sql("insert into bench_salt (station, salt) values (?, ?) on conflict do nothing")
          .params(station, Secrets.bytes(16))
          .update();
    } catch (DataIntegrityViolationException e) {
      throw StationTokens.unknownStation(station);
    }
    return jdbc.sql("select salt from bench_salt where station = ?")
        .param(station)
        .query(byte[].class)
        .single();
  }

  /** The first 32 bytes of PBKDF2: one block of HMAC-SHA-256. */
  static byte[] derive(String badge, byte[] salt, int iterations) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(badge.getBytes(StandardCharsets.UTF_8), "HmacSHA256"));
      mac.update(salt);
      byte[] block = mac.doFinal(new byte[] {0, 0, 0, 1});
      byte[] derived = block.clone();
      for (int n = 1; n < iterations; n++) {
        block = mac.doFinal(block);
        for (int i = 0; i < derived.length; i++) {
          derived[i] ^= block[i];
        }
      }
      return derived;
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("every JDK has HMAC-SHA-256", e);
    }
  }

  private static OffsetDateTime at(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }
}
