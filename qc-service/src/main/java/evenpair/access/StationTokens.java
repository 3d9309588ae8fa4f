package evenpair.access;

import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Tokens by which rigs and benches are known; of each only the digest is kept. */
@Component
class StationTokens {
  /** Not written with every request. */
  private static final Duration USED_WITHIN = Duration.ofMinutes(1);

  private final JdbcClient jdbc;
  private final Ids ids;
  private final Clock clock;

  StationTokens(JdbcClient jdbc, Ids ids, Clock clock) {
    this.jdbc = jdbc;
    this.ids = ids;
    this.clock = clock;
  }

  /** A token that can be shown: everything but itself. */
  record Token(
      UUID id,
      String station,
      String name,
      Instant madeAt,
      UUID madeBy,
      Instant lastUsedAt,
      Instant revokedAt) {}

  /** A token in the only moment in which it is known. */
  record Made(Token token, String secret) {}

  /**
   * @throws Refusal 404 for an unknown station
   */
  Made make(String station, String name, UUID by) {
    String secret = Secrets.token();
    Instant now = clock.instant();
    Token token = new Token(ids.next(), station, name, now, by, null, null);
    try {
      jdbc.sql(
              "insert into station_token (id, station, name, token_sha256, made_at, made_by) values (?, ?, ?, ?, ?, ?)")
          .params(token.id(), station, name, Secrets.sha256(secret), at(now), by)
          .update();
    } catch (DataIntegrityViolationException e) {
      throw unknownStation(station);
    }
    return new Made(token, secret);
  }

  static Refusal unknownStation(String station) {
    return new Refusal(404, "unknown-station", "There is no station \"" + station + "\".");
  }

  /**
   * @return the station that the token stands for; empty if it is not known or was revoked
   */
  Optional<String> stationOf(String secret) {
    record Found(UUID id, String station, OffsetDateTime lastUsedAt) {}
    Instant now = clock.instant();
    return jdbc.sql(
            "select id, station, last_used_at from station_token where token_sha256 = ? and revoked_at is null")
        .param(Secrets.sha256(secret))
        .query(
            (row, number) ->
                new Found(
                    row.getObject("id", UUID.class),
                    row.getString("station"),
                    row.getObject("last_used_at", OffsetDateTime.class)))
        .optional()
        .map(
            found -> {
              if (found.lastUsedAt() == null
                  || found.lastUsedAt().toInstant().isBefore(now.minus(USED_WITHIN))) {
                jdbc.sql("update station_token set last_used_at = ? where id = ?")
                    .params(at(now), found.id())
                    .update();
              }
              return found.station();
            });
  }

  /**
   * @return the newest first, revoked ones included
   */
  List<Token> list(String station) {
    return jdbc.sql(
            "select * from station_token where station = ? order by made_at desc, id desc limit 500")
        .param(station)
        .query(StationTokens::read)
        .list();
  }

  /**
   * Revoked once is revoked for good; again changes nothing.
   *
   * @throws Refusal 404 if the station has no such token
   */
  void revoke(String station, UUID id, UUID by) {
    int changed =
        jdbc.sql(
                "update station_token set revoked_at = coalesce(revoked_at, ?), revoked_by = coalesce(revoked_by, ?) where id = ? and station = ?")
            .params(at(clock.instant()), by, id, station)
            .update();
    if (changed == 0) {
      throw new Refusal(
          404, "unknown-token", "Station \"" + station + "\" has no token " + id + ".");
    }
  }

  private static Token read(ResultSet row, int number) throws SQLException {
    return new Token(
        row.getObject("id", UUID.class),
        row.getString("station"),
        row.getString("name"),
        instant(row, "made_at"),
        row.getObject("made_by", UUID.class),
        instant(row, "last_used_at"),
        instant(row, "revoked_at"));
  }

  private static Instant instant(ResultSet row, String column) throws SQLException {
    OffsetDateTime time = row.getObject(column, OffsetDateTime.class);
    return time == null ? null : time.toInstant();
  }

  private static OffsetDateTime at(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }
}
