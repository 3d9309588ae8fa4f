package evenpair.certificates;

import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.print.BarCode;
import evenpair.print.Mark;
import evenpair.print.QrCode;
import evenpair.print.Sheet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Puts a pair that failed onto a slip of A6: every reason, and what to do by the first of them. */
final class SlipSheet {
  private static final double WIDTH_MM = 105;

  /** 58 points of the layout. */
  private static final double QR_MM = 20.4;

  private final Wording wording;

  SlipSheet(Wording wording) {
    this.wording = wording;
  }

  Sheet of(Inspection inspection) {
    Map<String, Object> values = new HashMap<>();
    values.put("mark", Mark.FAIL_BLACK);
    values.put(
        "verdict",
        wording.text(inspection.conditional() ? "verdict.FAIL.conditional" : "verdict.FAIL"));
    values.put("serial", inspection.serial());
    BarCode.of(inspection.serial(), WIDTH_MM).ifPresent(bars -> values.put("bars", bars));
    values.put("qr", QrCode.of(inspection.serial(), QR_MM));
    values.put("product", inspection.productName());
    values.put("tuning", tuning(inspection));
    values.put("batch", inspection.batch());
    values.put("station", inspection.station());
    values.put("date", Wording.date(inspection.closedAt()));
    values.put("tries", Integer.toString(inspection.attempts().size()));
    values.put("todo", toDo(inspection.reasons()));
    values.put(
        "inspection",
        wording.text(
            "slip.inspection",
            Map.of("id", inspection.id(), "version", inspection.limitSetVersion())));
    return new Sheet(
        "rework-slip",
        null,
        wording.locale(),
        wording.text(
            "slip.title",
            Map.of("product", inspection.productName(), "serial", inspection.serial())),
        inspection.closedAt(),
        values,
        rows(inspection.reasons()));
  }

  private String tuning(Inspection inspection) {
    return inspection.occasion().equals("production")
        ? inspection.tuning()
        : wording.text(
            "slip.tuning.occasion",
            Map.of("tuning", inspection.tuning(), "occasion", inspection.occasion()));
  }

  private List<Map<String, String>> rows(List<ReasonView> reasons) {
    List<Map<String, String>> rows = new ArrayList<>();
    for (ReasonView reason : reasons) {
      rows.add(
          Map.of(
              "number",
              Integer.toString(rows.size() + 1),
              "where",
              where(reason),
              "reason",
              reason.text()));
    }
    return rows;
  }

  /** Side, region and frequency on a line of their own, to be found at a glance. */
  private String where(ReasonView reason) {
    List<String> parts = new ArrayList<>();
    parts.add(wording.text("slip.where." + (reason.channel() == null ? "pair" : reason.channel())));
    if (reason.region() != null) {
      parts.add(reason.region());
    }
    if (reason.frequencyHz() != null) {
      parts.add(wording.at(reason.frequencyHz()));
    }
    return String.join(" · ", parts);
  }

  private String toDo(List<ReasonView> reasons) {
    if (reasons.isEmpty()) {
      return wording.text("slip.no-reason");
    }
    String key = "slip.do." + reasons.get(0).kind();
    return wording.text(wording.knows(key) ? key : "slip.do.other");
  }
}
