package evenpair.products;

import evenpair.acoustics.Curve;
import evenpair.products.Products.Provenance;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.products.VersionRows.SignOff;
import evenpair.tolerance.GoldenResponse;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** From rows of the products' tables to what they mean. */
final class VersionReading {
  private VersionReading() {}

  /** A query's row. */
  static ProductDefinition product(ResultSet row, int n) throws SQLException {
    try {
      return ProductReader.read(
          "product " + row.getString("key"), Canonical.bytes(row.getString("definition")));
    } catch (UnreadableLimits e) {
      throw new IllegalStateException("a stored product cannot be read", e);
    }
  }

  static Golden golden(ResultSet row) throws SQLException {
    return new Golden(
        row.getObject("id", UUID.class),
        row.getString("product"),
        row.getString("tuning"),
        row.getInt("version"),
        row.getString("name"),
        response(row),
        row.getString("digest"),
        row.getObject("author", UUID.class),
        instant(row, "made_at"),
        provenance(row),
        signOff(row));
  }

  private static GoldenResponse response(ResultSet row) throws SQLException {
    Optional<double[]> phase =
        Optional.ofNullable(row.getArray("phase_deg"))
            .map(RealArrays::floats)
            .map(RealArrays::widened);
    return new GoldenResponse(Curve.ofFloats(RealArrays.floats(row.getArray("level_db"))), phase);
  }

  private static Provenance provenance(ResultSet row) throws SQLException {
    int units = row.getInt("units");
    return row.wasNull()
        ? null
        : new Provenance(
            units,
            Curve.ofFloats(RealArrays.floats(row.getArray("spread_db"))),
            List.of((UUID[]) row.getArray("inspections").getArray()),
            List.of((UUID[]) row.getArray("left_out").getArray()));
  }

  static Limits limits(ResultSet row) throws SQLException {
    return new Limits(
        row.getObject("id", UUID.class),
        row.getString("product"),
        row.getString("tuning"),
        row.getInt("version"),
        row.getObject("golden_id", UUID.class),
        row.getString("definition"),
        row.getString("digest"),
        row.getObject("author", UUID.class),
        instant(row, "made_at"),
        signOff(row));
  }

  private static SignOff signOff(ResultSet row) throws SQLException {
    return row.getTimestamp("signed_at") == null
        ? null
        : new SignOff(
            row.getObject("approver", UUID.class),
            row.getString("reason"),
            instant(row, "signed_at"));
  }

  static Instant instant(ResultSet row, String column) throws SQLException {
    return row.getTimestamp(column).toInstant();
  }
}
