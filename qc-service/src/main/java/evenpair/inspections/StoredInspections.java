package evenpair.inspections;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The module's facade. */
@Service
@Transactional(readOnly = true)
class StoredInspections implements Inspections {
  private final InspectionRows rows;
  private final InspectionFiles files;
  private final ReasonViews views;
  private final CurveDesk curves;
  private final BatchReader batches;

  StoredInspections(
      InspectionRows rows,
      InspectionFiles files,
      ReasonViews views,
      CurveDesk curves,
      BatchReader batches) {
    this.rows = rows;
    this.files = files;
    this.views = views;
    this.curves = curves;
    this.batches = batches;
  }

  @Override
  public Optional<Inspection> find(UUID id) {
    return files.find(id).map(this::plain);
  }

  @Override
  public List<Inspection> ofUnit(String serial) {
    return Names.accept(serial).map(files::ofUnit).orElse(List.of()).stream()
        .map(this::plain)
        .toList();
  }

  @Override
  public Optional<JudgedCurves> curves(UUID id) {
    return rows.findById(id).flatMap(row -> curves.of(row, true)).map(CurveDesk.Drawn::curves);
  }

  @Override
  public List<BatchSummary> batches() {
    return batches.summaries();
  }

  @Override
  public BatchCurves batchCurves(
      String batch, String product, String tuning, Integer limitSetVersion) {
    return batches.read(batch, product, tuning, limitSetVersion);
  }

  private Inspection plain(InspectionFile file) {
    InspectionRow row = file.row();
    Locale locale = LocaleContextHolder.getLocale();
    return new Inspection(
        row.id(),
        row.serial(),
        row.batch(),
        row.product(),
        file.product().name(),
        file.product().maker(),
        row.tuning(),
        row.station(),
        row.operatorRef(),
        row.occasion().word(),
        row.state().word(),
        InspectionJsons.name(row.verdict()),
        InspectionJsons.lastAttempt(row),
        row.next(),
        row.limitSetVersion(),
        row.limitSetId(),
        row.earSimulator(),
        row.startedAt(),
        row.closedAt(),
        row.softwareVersion(),
        file.attempts().stream().map(StoredInspections::plain).toList(),
        views.of(file, locale),
        ReasonViews.regions(file.regions()),
        file.unit().verdict(),
        file.conditional());
  }

  private static AttemptSummary plain(AttemptRow row) {
    return new AttemptSummary(
        row.number(),
        row.seating(),
        row.outcome().name(),
        row.circumstances().measuredAt(),
        row.left().sha256(),
        row.right().sha256());
  }
}
