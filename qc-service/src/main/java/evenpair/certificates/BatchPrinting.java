package evenpair.certificates;

import evenpair.certificates.Bundles.Bundle;
import evenpair.certificates.Bundles.Unit;
import evenpair.print.PageOverflow;
import evenpair.print.PagesPrinter;
import evenpair.print.PaperSize;
import evenpair.print.Sheet;
import evenpair.web.Refusal;
import evenpair.web.jobs.JobKind;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Prints the certificates of a bundle, some at a time. A part is stored in the transaction that
 * counts its step, so that a crash neither loses nor doubles one.
 */
@Component
class BatchPrinting implements JobKind {
  static final String NAME = "batch-certificates";

  /**
   * Certificates a step: typefaces are embedded once for all of them. A third of a second or so.
   */
  static final int A_STEP = 10;

  private final Bundles bundles;
  private final Certificates certificates;
  private final PagesPrinter printer;
  private final JsonMapper json;

  BatchPrinting(Bundles bundles, Certificates certificates, PagesPrinter printer, JsonMapper json) {
    this.bundles = bundles;
    this.certificates = certificates;
    this.printer = printer;
    this.json = json;
  }

  static String parameters(UUID bundle) {
    return "{\"bundle\":\"" + bundle + "\"}";
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public int total(String parameters) {
    return (bundles.units(bundle(parameters).id()) + A_STEP - 1) / A_STEP;
  }

  @Override
  public void step(String parameters, int index) {
    Bundle bundle = bundle(parameters);
    List<Sheet> sheets = new ArrayList<>();
    for (Unit unit : bundles.units(bundle.id(), index * A_STEP, A_STEP)) {
      sheet(bundle, unit).ifPresent(sheets::add);
    }
    if (sheets.isEmpty()) {
      return;
    }
    try {
      bundles.addPart(bundle.id(), index, sheets.size(), printer.printTogether(sheets));
    } catch (PageOverflow e) {
      throw Certificates.tooLong(e);
    }
  }

  /** A unit without a certificate is left out, with the reason that its own page would give. */
  private Optional<Sheet> sheet(Bundle bundle, Unit unit) {
    PaperSize paper = PaperSize.named(bundle.paper()).orElseThrow();
    try {
      return Optional.of(certificates.sheetOfUnit(unit.serial(), paper, bundle.locale()));
    } catch (Refusal e) {
      bundles.leaveOut(bundle.id(), unit.place(), e.getMessage());
      return Optional.empty();
    }
  }

  @Override
  public Optional<URI> result(String parameters, UUID job) {
    return Optional.of(URI.create("/api/certificate-bundles/" + bundle(parameters).id()));
  }

  private Bundle bundle(String parameters) {
    UUID id = UUID.fromString(json.readTree(parameters).path("bundle").stringValue());
    return bundles
        .find(id)
        .orElseThrow(
            () -> new Refusal(404, "unknown-bundle", "The certificates to print are gone."));
  }
}
