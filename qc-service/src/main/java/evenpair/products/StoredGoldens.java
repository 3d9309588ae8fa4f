package evenpair.products;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.FilterChain;
import evenpair.products.ProductDefinition.FilterDefinition;
import evenpair.products.ProductDefinition.TuningDefinition;
import evenpair.products.VersionRows.Activation;
import evenpair.products.VersionRows.Golden;
import evenpair.tolerance.GoldenResponse;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Golden responses for other modules, from the same snapshot as limit sets. */
@Component
class StoredGoldens implements GoldenResponses {
  private final StoredProducts products;
  private final VersionDesk desk;

  StoredGoldens(StoredProducts products, VersionDesk desk) {
    this.products = products;
    this.desk = desk;
  }

  @Override
  public List<StoredGolden> of(String product, String tuning) {
    Snapshot known = products.snapshot();
    Versions.product(known, product, tuning);
    return known.goldens(product, tuning).stream().map(StoredGoldens::stored).toList();
  }

  @Override
  public StoredGolden version(String product, String tuning, int version) {
    return stored(Versions.golden(products.snapshot(), product, tuning, version));
  }

  @Override
  public Optional<ExpectedGolden> expectedAt(String product, String tuning, Instant at) {
    Snapshot known = products.snapshot();
    TuningDefinition definition =
        Versions.product(known, product, tuning).tunings().stream()
            .filter(listed -> listed.key().equals(tuning))
            .findFirst()
            .orElseThrow();
    return definition
        .from()
        .flatMap(from -> activeGolden(known, product, from, at))
        .map(golden -> expected(golden, definition));
  }

  private static Optional<Golden> activeGolden(
      Snapshot known, String product, String tuning, Instant at) {
    return known
        .activeAt(product, tuning, at)
        .map(Activation::version)
        .flatMap(known::stored)
        .map(set -> known.golden(set.goldenId()));
  }

  private static ExpectedGolden expected(Golden from, TuningDefinition tuning) {
    double gain = tuning.gainDb().orElse(0.0);
    return new ExpectedGolden(
        from.tuning(),
        from.version(),
        tuning
            .sampleRateHz()
            .map(rate -> from.response().level().plus(chain(tuning.filters(), rate).curve()))
            .orElse(from.response().level())
            .plus(gain));
  }

  private static FilterChain chain(List<FilterDefinition> filters, double rateHz) {
    List<Biquad> sections = new ArrayList<>();
    for (FilterDefinition filter : filters) {
      sections.add(biquad(filter, rateHz));
    }
    return new FilterChain(sections, rateHz);
  }

  private static Biquad biquad(FilterDefinition filter, double rateHz) {
    return switch (filter.kind()) {
      case "low-shelf" -> Biquad.lowShelf(filter.hz(), filter.gainDb(), filter.q(), rateHz);
      case "high-shelf" -> Biquad.highShelf(filter.hz(), filter.gainDb(), filter.q(), rateHz);
      case "peak" -> Biquad.peak(filter.hz(), filter.gainDb(), filter.q(), rateHz);
      default -> throw new IllegalStateException("no filter of kind \"" + filter.kind() + "\"");
    };
  }

  @Override
  public StoredGolden draft(
      String product, String tuning, String name, GoldenResponse golden, String author) {
    if (!LimitSetReader.GOLDEN.matcher(name).matches()) {
      throw new Refusal(
              400, "invalid-parameter", "\"name\" must be a file name such as plain-golden.csv.")
          .with("field", "name")
          .with("expected", "a file name such as plain-golden.csv");
    }
    byte[] csv = Canonical.bytes(GoldenCsv.write(golden));
    int version =
        desk.draftGolden(product, tuning, name, csv, VersionViews.requirePerson(author));
    return version(product, tuning, version);
  }

  private static StoredGolden stored(Golden row) {
    return new StoredGolden(
        row.id(),
        row.product(),
        row.tuning(),
        row.version(),
        row.name(),
        row.response(),
        row.signOff() != null);
  }
}
