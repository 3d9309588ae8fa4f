package evenpair.batches;

import evenpair.inspections.InspectionStream.StreamedInspection;
import evenpair.inspections.Inspections.RegionView;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One column of an export: its name is its meaning's key in the data dictionary ({@code
 * export.column.<name>}).
 *
 * @param value null where there is none
 */
record ExportColumn(String name, Kind kind, Function<StreamedInspection, Object> value) {

  /** What a column holds. */
  enum Kind {
    TEXT("text"),
    BOOLEAN("boolean"),
    INTEGER("32-bit integer"),
    DOUBLE("64-bit float"),
    INSTANT("UTC instant, microseconds"),
    /** 241 levels on the grid; an absent one is null. */
    CURVE("list of 241 32-bit floats"),
    REASONS("list of reasons"),
    REGIONS("list of region results");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /** Every column, in the order of the files. The person who measured is in none of them. */
  static final List<ExportColumn> ALL =
      List.of(
          new ExportColumn("inspection", Kind.TEXT, row -> row.inspection().toString()),
          new ExportColumn("serial", Kind.TEXT, StreamedInspection::serial),
          new ExportColumn("batch", Kind.TEXT, StreamedInspection::batch),
          new ExportColumn("product", Kind.TEXT, StreamedInspection::product),
          new ExportColumn("tuning", Kind.TEXT, StreamedInspection::tuning),
          new ExportColumn("limit_set_version", Kind.INTEGER, StreamedInspection::limitSetVersion),
          new ExportColumn("limit_set_digest", Kind.TEXT, StreamedInspection::limitSetDigest),
          new ExportColumn("ear_simulator", Kind.TEXT, StreamedInspection::earSimulator),
          new ExportColumn("station", Kind.TEXT, StreamedInspection::station),
          new ExportColumn("occasion", Kind.TEXT, StreamedInspection::occasion),
          new ExportColumn("first_pass", Kind.BOOLEAN, StreamedInspection::firstPass),
          new ExportColumn("verdict", Kind.TEXT, StreamedInspection::verdict),
          new ExportColumn("conditional", Kind.BOOLEAN, StreamedInspection::conditional),
          new ExportColumn("measured_at", Kind.INSTANT, StreamedInspection::measuredAt),
          new ExportColumn("closed_at", Kind.INSTANT, StreamedInspection::closedAt),
          new ExportColumn("valid_seatings", Kind.INTEGER, StreamedInspection::validSeatings),
          new ExportColumn("tries", Kind.INTEGER, StreamedInspection::tries),
          new ExportColumn("left_earpiece", Kind.TEXT, StreamedInspection::leftEarpiece),
          new ExportColumn("right_earpiece", Kind.TEXT, StreamedInspection::rightEarpiece),
          new ExportColumn("left_offset_db", Kind.DOUBLE, StreamedInspection::leftAlignmentDb),
          new ExportColumn("right_offset_db", Kind.DOUBLE, StreamedInspection::rightAlignmentDb),
          new ExportColumn("least_margin_db", Kind.DOUBLE, row -> of(row, RegionView::marginDb)),
          new ExportColumn("least_margin_check", Kind.TEXT, row -> of(row, RegionView::check)),
          new ExportColumn("least_margin_region", Kind.TEXT, row -> of(row, RegionView::name)),
          new ExportColumn("least_margin_channel", Kind.TEXT, row -> of(row, RegionView::channel)),
          new ExportColumn("least_margin_hz", Kind.DOUBLE, row -> of(row, RegionView::atHz)),
          new ExportColumn("reasons", Kind.REASONS, StreamedInspection::reasons),
          new ExportColumn("regions", Kind.REGIONS, StreamedInspection::regions),
          new ExportColumn("software_version", Kind.TEXT, StreamedInspection::softwareVersion),
          new ExportColumn("left_level_db", Kind.CURVE, StreamedInspection::leftDb),
          new ExportColumn("right_level_db", Kind.CURVE, StreamedInspection::rightDb));

  Object of(StreamedInspection row) {
    return value.apply(row);
  }

  /** Of the check in dB that came nearest to its limit, or went farthest beyond it. */
  private static Object of(StreamedInspection row, Function<RegionView, Object> part) {
    Optional<RegionView> nearest =
        row.regions().stream()
            .filter(region -> region.marginDb() != null && "dB".equals(region.unit()))
            .min(Comparator.comparing(RegionView::marginDb));
    return nearest.map(part).orElse(null);
  }
}
