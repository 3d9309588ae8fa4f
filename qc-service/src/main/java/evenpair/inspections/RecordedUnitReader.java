package evenpair.inspections;

import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.products.Products;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.RegionResult;
import evenpair.tolerance.Uncertainty;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * From rows to recorded units. Units judged with the same uncertainty share one object of it, so
 * that a hundred thousand of them cost a few kilobytes.
 */
final class RecordedUnitReader {
  static final String SELECT =
      """
      select i.id, i.serial, i.batch, i.station, i.occasion, i.started_at, v.verdict, v.conditional, i.limit_set_id,
        exists (select 1 from attempt a where a.inspection_id = i.id and a.valid), v.reasons, v.regions,
        v.uncertainty_study_ids, v.level_uncertainty_db, v.match_uncertainty_db, v.offset_uncertainty_db, v.balance_uncertainty_db
      from inspection i join inspection_verdict v on v.inspection_id = i.id where
      """;

  /** Checks that work on the two level curves alone, and are never left undecided. */
  private static final Set<ReasonKind> OF_THE_LEVELS =
      EnumSet.of(ReasonKind.LEVEL, ReasonKind.BALANCE, ReasonKind.WINDOW, ReasonKind.MATCH);

  private final Products products;
  private final Map<List<Object>, Uncertainty> shared = new HashMap<>();

  RecordedUnitReader(Products products) {
    this.products = products;
  }

  RecordedUnit unit(ResultSet row) throws SQLException {
    UUID limitSet = row.getObject(9, UUID.class);
    return new RecordedUnit(
        row.getObject(1, UUID.class),
        row.getString(2),
        row.getString(3),
        row.getString(4),
        Occasion.valueOf(row.getString(5)).word(),
        row.getObject(6, OffsetDateTime.class).toInstant(),
        row.getString(7),
        row.getBoolean(8),
        limitSet,
        row.getBoolean(10),
        RecordJson.read(row.getString(11)),
        undecided(RecordJson.readRegions(row.getString(12)), limitSet),
        uncertainty(row));
  }

  /** A polarity that the set does not require may stay open; every other open check counts. */
  private boolean undecided(List<RegionResult> results, UUID limitSet) {
    LimitSet set = products.limitSet(limitSet).set();
    return results.stream()
        .filter(result -> !result.judged() && !OF_THE_LEVELS.contains(result.check()))
        .anyMatch(result -> set.polarity().required() || !ofPolarity(result.check()));
  }

  private static boolean ofPolarity(ReasonKind kind) {
    return kind == ReasonKind.POLARITY || kind == ReasonKind.POLARITY_BAND;
  }

  private Optional<Uncertainty> uncertainty(ResultSet row) throws SQLException {
    if (row.getArray(13) == null) {
      return Optional.empty();
    }
    List<Object> key = new ArrayList<>(List.of(row.getDouble(16), row.getDouble(17)));
    float[] level = floats(row, 14);
    float[] match = floats(row, 15);
    key.add(Arrays.hashCode(level));
    key.add(Arrays.hashCode(match));
    key.addAll(List.of((UUID[]) row.getArray(13).getArray()));
    UsedUncertainty used =
        new UsedUncertainty(
            List.of((UUID[]) row.getArray(13).getArray()),
            level,
            match,
            row.getDouble(16),
            row.getDouble(17));
    return Optional.of(shared.computeIfAbsent(key, k -> used.toUncertainty()));
  }

  private static float[] floats(ResultSet row, int column) throws SQLException {
    Float[] boxed = (Float[]) row.getArray(column).getArray();
    float[] values = new float[boxed.length];
    for (int i = 0; i < boxed.length; i++) {
      values[i] = boxed[i];
    }
    return values;
  }
}
