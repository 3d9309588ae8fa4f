package evenpair.certificates;

import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.ledger.Ledger.Seal;
import evenpair.print.Mark;
import evenpair.print.PaperSize;
import evenpair.print.QrCode;
import evenpair.print.Sheet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Puts the facts of one passed inspection into the places of the page. */
final class CertificateSheet {
  static final String LAYOUT = "certificate";
  private static final int DIGEST_SHOWN = 12;

  /** 74 points of the layout. */
  private static final double QR_MM = 26.1;

  private final Wording wording;

  CertificateSheet(Wording wording) {
    this.wording = wording;
  }

  Sheet of(Facts facts, PaperSize paper) {
    Inspection inspection = facts.inspection();
    RegionTable table = new RegionTable(wording, inspection.regions());
    Map<String, Object> values = new HashMap<>();
    heading(values, inspection, table);
    footing(values, facts);
    values.put("plot", JudgedPlot.of(facts.curves()));
    if (!facts.tunings().isEmpty()) {
      values.put("tunings", facts.tunings().stream().map(this::row).toList());
    }
    String title =
        wording.text(
            "title", Map.of("product", inspection.productName(), "serial", inspection.serial()));
    return new Sheet(
        LAYOUT,
        paper,
        wording.locale(),
        title,
        inspection.closedAt(),
        values,
        table.rows(facts.curves().regions()));
  }

  private void heading(Map<String, Object> values, Inspection inspection, RegionTable table) {
    values.put("maker", inspection.maker());
    values.put("product", inspection.productName());
    values.put("tuning", tuningLine(inspection));
    values.put("mark", Mark.PASS);
    boolean conditional = inspection.conditional() || table.hasConditional();
    values.put("verdict", wording.text(conditional ? "verdict.PASS.conditional" : "verdict.PASS"));
    values.put("serial", inspection.serial());
    values.put("batch", inspection.batch());
    values.put("date", Wording.date(inspection.closedAt()));
    String statement = wording.text(table.hasUnjudged() ? "statement.partly" : "statement");
    values.put(
        "statement",
        conditional ? statement + " " + wording.text("statement.conditional") : statement);
  }

  private String tuningLine(Inspection inspection) {
    return inspection.occasion().equals("production")
        ? wording.text("tuning-line", Map.of("tuning", inspection.tuning()))
        : wording.text(
            "tuning-line.occasion",
            Map.of("tuning", inspection.tuning(), "occasion", inspection.occasion()));
  }

  private void footing(Map<String, Object> values, Facts facts) {
    Inspection inspection = facts.inspection();
    values.put("caption", caption(facts.curves(), inspection.earSimulator()));
    values.put("station", inspection.station());
    values.put("earSimulator", inspection.earSimulator());
    values.put(
        "limitSet",
        wording.text(
            "limit-set-value",
            Map.of(
                "version", inspection.limitSetVersion(), "digest", start(facts.limitSetDigest()))));
    values.put(
        "software",
        wording.text("software-value", Map.of("version", inspection.softwareVersion())));
    values.put("code", facts.seal().code());
    values.put("inspection", inspection.id().toString());
    values.put("qr", QrCode.of(facts.check().qr(), QR_MM));
    values.put(
        "record",
        facts
            .check()
            .address()
            .map(address -> wording.text("record.public", Map.of("address", address)))
            .orElseGet(() -> wording.text("record.summary")));
  }

  private String caption(JudgedCurves curves, String simulator) {
    return wording.text(
        curves.smoothing().equals("none") ? "caption.unsmoothed" : "caption",
        Map.of(
            "smoothing", curves.smoothing(),
            "left", wording.signed(curves.leftAlignmentDb()),
            "right", wording.signed(curves.rightAlignmentDb()),
            "from", curves.specifiedFromHz(),
            "to", curves.specifiedToHz(),
            "simulator", simulator));
  }

  private Map<String, String> row(TuningVerdict tuning) {
    Map<String, String> row = new HashMap<>();
    row.put("tuning", tuning.inspection().tuning());
    String conditional = tuning.inspection().conditional() ? ".conditional" : "";
    row.put("verdict", wording.text("verdict." + tuning.inspection().verdict() + conditional));
    row.put("date", Wording.date(tuning.inspection().closedAt()));
    row.put("limitSet", Integer.toString(tuning.inspection().limitSetVersion()));
    row.put("code", tuning.seal().code());
    return row;
  }

  private static String start(String digest) {
    return digest.substring(0, Math.min(DIGEST_SHOWN, digest.length()));
  }

  /**
   * @param tunings every tuning's verdict on a unit's certificate; empty on that of one inspection
   */
  record Facts(
      Inspection inspection,
      JudgedCurves curves,
      String limitSetDigest,
      Seal seal,
      CheckLink.Check check,
      List<TuningVerdict> tunings) {}

  /**
   * @param inspection the closed inspection that holds for its tuning
   */
  record TuningVerdict(Inspection inspection, Seal seal) {}
}
