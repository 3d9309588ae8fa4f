package evenpair.access;

import evenpair.web.Refusal;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.sql.Types;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HexFormat;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;

/**
 * Slows attempts to sign in. Each is counted before the secret is looked at, in one statement, so
 * that many at once, or at several processes, gain nothing; success takes the count back. After the
 * free ones the wait doubles with every further failure: 1 s, 2 s, 4 s … up to the scope's longest.
 * A free attempt blocks nobody, not even one whose clock was read a moment earlier at another
 * process.
 */
@Component
class SignInThrottle {
  private static final Duration FORGOTTEN_AFTER = Duration.ofHours(1);

  /** What is counted. A whole plant may come from one address, hence its larger allowance. */
  enum Scope {
    NAME(4, Duration.ofMinutes(15)),
    STATION(8, Duration.ofMinutes(1)),
    ADDRESS(30, Duration.ofMinutes(5));

    private final int free;
    private final Duration longest;

    Scope(int free, Duration longest) {
      this.free = free;
      this.longest = longest;
    }

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  private static final String COUNT =
      """
      insert into sign_in_attempt as known (scope, subject_sha256, failures, last_at, blocked_until)
      values (:scope, :subject, 1, :now, 'epoch')
      on conflict (scope, subject_sha256) do update
         set failures = case when known.last_at < :forgotten then 1 else known.failures + 1 end,
             last_at = :now,
             blocked_until = case
               when known.last_at < :forgotten or known.failures < :free then 'epoch'
               else :now + interval '1 second'
                 * least(:longest, power(2, least(known.failures - :free, 20))) end
       where known.blocked_until <= :now
      returning failures
      """;

  private final JdbcClient jdbc;
  private final Clock clock;

  SignInThrottle(JdbcClient jdbc, Clock clock) {
    this.jdbc = jdbc;
    this.clock = clock;
  }

  /**
   * Counts an attempt as failed until {@link #succeeded} says otherwise.
   *
   * @throws Refusal 429 with the time to wait; whether the subject exists plays no part
   */
  void count(Scope scope, String subject) {
    Instant now = clock.instant();
    boolean free =
        jdbc.sql(COUNT)
            .param("scope", scope.word())
            .param("subject", Secrets.sha256(subject))
            .param("now", at(now), Types.TIMESTAMP_WITH_TIMEZONE)
            .param("forgotten", at(now.minus(FORGOTTEN_AFTER)), Types.TIMESTAMP_WITH_TIMEZONE)
            .param("free", scope.free)
            .param("longest", scope.longest.toSeconds())
            .query(Integer.class)
            .optional()
            .isPresent();
    if (!free) {
      Duration wait = Duration.between(now, blockedUntil(scope, subject));
      throw new Refusal(
              429,
              "too-many-attempts",
              "Too many attempts to sign in; the next one is looked at after a while.")
          .retryAfter(wait);
    }
  }

  /** Forgets the failures of a name or station; takes one back from an address. */
  void succeeded(Scope scope, String subject) {
    if (scope == Scope.ADDRESS) {
      jdbc.sql(
              "update sign_in_attempt set failures = greatest(0, failures - 1), blocked_until = 'epoch'"
                  + " where scope = ? and subject_sha256 = ?")
          .params(scope.word(), Secrets.sha256(subject))
          .update();
    } else {
      jdbc.sql("delete from sign_in_attempt where scope = ? and subject_sha256 = ?")
          .params(scope.word(), Secrets.sha256(subject))
          .update();
    }
  }

  private Instant blockedUntil(Scope scope, String subject) {
    return jdbc.sql(
            "select blocked_until from sign_in_attempt where scope = ? and subject_sha256 = ?")
        .params(scope.word(), Secrets.sha256(subject))
        .query(OffsetDateTime.class)
        .optional()
        .map(OffsetDateTime::toInstant)
        .orElse(clock.instant());
  }

  @Scheduled(fixedDelayString = "PT1H", initialDelayString = "PT10M")
  void forget() {
    jdbc.sql("delete from sign_in_attempt where last_at < ?")
        .param(at(clock.instant().minus(FORGOTTEN_AFTER)))
        .update();
  }

  /**
   * @return what an address is counted by: one household or plant has many of IPv6, all with the
   *     same first 64 bits
   */
  static String subnet(String address) {
    try {
      byte[] bytes = InetAddress.getByName(address).getAddress();
      return bytes.length == 16 ? HexFormat.of().formatHex(Arrays.copyOf(bytes, 8)) : address;
    } catch (UnknownHostException e) {
      return address;
    }
  }

  private static OffsetDateTime at(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }
}
