package evenpair.certificates;

import evenpair.inspections.Inspections.Inspection;
import evenpair.print.BarCode;
import evenpair.print.Mark;
import evenpair.print.QrCode;
import evenpair.print.Sheet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Puts a pair that passed onto a label of 50 mm × 30 mm. */
final class LabelSheet {
  private static final double WIDTH_MM = 50;

  /** 46 points of the layout. */
  private static final double QR_MM = 16.2;

  private final Wording wording;

  LabelSheet(Wording wording) {
    this.wording = wording;
  }

  /**
   * @param qr what the QR code says
   */
  Sheet of(Inspection inspection, String qr) {
    Map<String, Object> values = new HashMap<>();
    values.put("product", inspection.productName());
    values.put("tuning", wording.text("label.tuning", Map.of("tuning", inspection.tuning())));
    values.put("mark", Mark.PASS_BLACK);
    values.put(
        "verdict",
        wording.text(inspection.conditional() ? "verdict.PASS.conditional" : "verdict.PASS"));
    values.put(
        "date", wording.text("label.date", Map.of("date", Wording.date(inspection.closedAt()))));
    values.put("serial", inspection.serial());
    values.put("qr", QrCode.of(qr, QR_MM));
    BarCode.of(inspection.serial(), WIDTH_MM).ifPresent(bars -> values.put("bars", bars));
    return new Sheet(
        "label",
        null,
        wording.locale(),
        wording.text(
            "label.title",
            Map.of("product", inspection.productName(), "serial", inspection.serial())),
        inspection.closedAt(),
        values,
        List.of());
  }
}
