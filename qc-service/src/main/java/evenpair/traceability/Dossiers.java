package evenpair.traceability;

import evenpair.access.People;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.Inspection;
import evenpair.ledger.Ledger;
import evenpair.ledger.Ledger.Seal;
import evenpair.print.FlowPrinter;
import evenpair.print.PaperSize;
import evenpair.products.Products;
import evenpair.products.Products.VersionFacts;
import evenpair.stations.Stations;
import evenpair.web.Refusal;
import evenpair.web.Software;
import evenpair.web.Texts;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Gathers what is known of a unit and of an outside report about it, and has it printed. */
@Service
class Dossiers {
  private final OutsideReports reports;
  private final Inspections inspections;
  private final Products products;
  private final Stations stations;
  private final People people;
  private final Ledger ledger;
  private final FlowPrinter printer;
  private final Texts texts;
  private final Software software;

  Dossiers(
      OutsideReports reports,
      Inspections inspections,
      Products products,
      Stations stations,
      People people,
      Ledger ledger,
      FlowPrinter printer,
      Texts texts,
      Software software) {
    this.reports = reports;
    this.inspections = inspections;
    this.products = products;
    this.stations = stations;
    this.people = people;
    this.ledger = ledger;
    this.printer = printer;
    this.texts = texts;
    this.software = software;
  }

  /**
   * @param report null: the newest one kept about the unit; without any, the record alone
   * @param hidden true: without operators, approvers and who published it
   * @return a PDF document
   * @throws Refusal 404 for an unknown unit or report, 409 if the unit has no closed inspection
   *     with curves
   */
  byte[] dossier(String serial, UUID report, boolean hidden, PaperSize paper, Locale locale) {
    Optional<OutsideReport> about =
        report != null
            ? Optional.of(reports.find(serial, report))
            : reports.ofUnit(serial).stream().findFirst();
    Inspection inspection = about.map(OutsideReport::inspection).orElseGet(() -> newest(serial));
    DossierFacts facts = facts(about, inspection, hidden);
    return printer.print(new Dossier(new DossierWords(texts, locale)).of(facts, paper));
  }

  private Inspection newest(String serial) {
    List<Inspection> ofUnit = inspections.ofUnit(serial);
    if (ofUnit.isEmpty()) {
      throw new Refusal(404, "unknown-serial", "No unit " + serial + " was ever measured here.")
          .with("field", "serial");
    }
    return ofUnit.stream()
        .filter(one -> one.state().equals("closed"))
        .filter(one -> inspections.curves(one.id()).isPresent())
        .reduce((first, second) -> second)
        .orElseThrow(
            () ->
                new Refusal(
                        409,
                        "nothing-measured",
                        "Unit "
                            + serial
                            + " has no closed inspection with curves: there is nothing to tell yet.")
                    .with("expected", "a closed inspection"));
  }

  private DossierFacts facts(
      Optional<OutsideReport> report, Inspection inspection, boolean hidden) {
    List<VersionFacts> history =
        products.limitSetHistory(inspection.product(), inspection.tuning());
    return new DossierFacts(
        report,
        inspection,
        inspections.curves(inspection.id()).orElseThrow(),
        products.limitSet(inspection.limitSetId()),
        history,
        hidden ? Map.of() : approvers(history),
        stations.chainAt(inspection.station(), inspection.startedAt()).orElseThrow(),
        stations.differenceOfRegions(
            inspection.station(),
            inspection.product(),
            inspection.tuning(),
            inspection.startedAt()),
        (int)
            inspection.attempts().stream()
                .filter(a -> List.of("PASS", "FAIL", "VALID").contains(a.outcome()))
                .count(),
        hidden ? Optional.empty() : people.nameOf(inspection.operatorRef()),
        hidden
            ? Optional.empty()
            : report.map(OutsideReport::source).map(OutsideRequest.Source::name),
        ledger.sealOf("inspection-closed", inspection.id()),
        report.filter(r -> r.id() != null).flatMap(r -> sealOf(r.id())),
        inspections.ofUnit(inspection.serial()),
        software.version(),
        hidden);
  }

  private Optional<Seal> sealOf(UUID report) {
    return ledger.sealOf("outside-report", report);
  }

  private Map<Integer, String> approvers(List<VersionFacts> history) {
    Map<Integer, String> names = new LinkedHashMap<>();
    for (VersionFacts version : history) {
      version
          .approver()
          .flatMap(people::nameOf)
          .ifPresent(name -> names.put(version.version(), name));
    }
    return names;
  }
}
