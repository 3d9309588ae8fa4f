package evenpair.inspections;

import evenpair.inspections.RecordedUnits.Which;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/** The question for recorded units as SQL. */
final class UnitQuery {
  /** Of {@code inspection i}; an empty array and a null leave a condition out. */
  static final String CLOSED =
      """
      i.state = 'CLOSED' and i.product = ? and i.tuning = ?
      and (cardinality(?::text[]) = 0 or i.batch = any(?::text[]))
      and (cardinality(?::text[]) = 0 or i.station = any(?::text[]))
      and (?::timestamptz is null or i.started_at >= ?::timestamptz)
      and (?::timestamptz is null or i.started_at < ?::timestamptz)
      and (?::integer is null or i.limit_set_version = ?::integer)
      """;

  private UnitQuery() {}

  static Object[] values(Which which) {
    String[] batches = which.batches().toArray(String[]::new);
    String[] stations = which.stations().toArray(String[]::new);
    OffsetDateTime from = time(which.from());
    OffsetDateTime to = time(which.to());
    return new Object[] {
      which.product(),
      which.tuning(),
      batches,
      batches,
      stations,
      stations,
      from,
      from,
      to,
      to,
      which.limitSet(),
      which.limitSet()
    };
  }

  private static OffsetDateTime time(Instant at) {
    return at == null ? null : at.atOffset(ZoneOffset.UTC);
  }
}
