package evenpair.certificates;

import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.Inspection;
import evenpair.ledger.Ledger;
import evenpair.ledger.Ledger.Sealed;
import evenpair.ledger.RecordCode;
import evenpair.print.PaperSize;
import evenpair.print.Sheet;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.stereotype.Service;

/** Finds the sealed record behind a code on paper. */
@Service
class PublicCheck {
  private static final String KIND = "inspection-closed";

  private final Ledger ledger;
  private final Inspections inspections;
  private final Certificates certificates;
  private final Texts texts;

  PublicCheck(Ledger ledger, Inspections inspections, Certificates certificates, Texts texts) {
    this.ledger = ledger;
    this.inspections = inspections;
    this.certificates = certificates;
    this.texts = texts;
  }

  /**
   * @throws Refusal 400 if the code is mistyped, as its check character tells; 404 if no
   *     certificate has it
   */
  PublicRecord find(String code, Locale locale) {
    if (!RecordCode.isWellTyped(code)) {
      throw new Refusal(
              400, "mistyped-code", texts.render(locale, "paper.check.mistyped", Map.of()))
          .with("field", "code");
    }
    Sealed sealed =
        ledger
            .byCode(code)
            .filter(found -> found.kind().equals(KIND))
            .orElseThrow(() -> unknown(locale));
    Inspection inspection = inspections.find(sealed.subject()).orElseThrow(() -> unknown(locale));
    return inspection.verdict().equals("PASS")
        ? PublicRecord.of(sheet(inspection, locale), sealed.seal().code())
        : notPassed(inspection, sealed.seal().code(), locale);
  }

  private Sheet sheet(Inspection inspection, Locale locale) {
    return certificates.sheet(inspection, List.of(), PaperSize.A4, locale);
  }

  /** As much as a unit's certificate shows of a tuning that was not passed. */
  private PublicRecord notPassed(Inspection inspection, String code, Locale locale) {
    Wording wording = new Wording(texts, locale);
    Map<String, String> facts = new TreeMap<>();
    facts.put("serial", inspection.serial());
    facts.put("tuning", wording.text("tuning-line", Map.of("tuning", inspection.tuning())));
    facts.put("verdict", wording.text("verdict.FAIL"));
    facts.put("date", Wording.date(inspection.closedAt()));
    facts.put("limitSet", Integer.toString(inspection.limitSetVersion()));
    return new PublicRecord(code, "FAIL", facts, List.of(), null);
  }

  private Refusal unknown(Locale locale) {
    return new Refusal(404, "unknown-code", texts.render(locale, "paper.check.unknown", Map.of()));
  }
}
