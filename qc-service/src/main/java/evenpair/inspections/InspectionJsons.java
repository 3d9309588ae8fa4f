package evenpair.inspections;

import evenpair.inspections.InspectionJson.Attempt;
import evenpair.inspections.InspectionJson.File;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.SeatingCheck;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriComponentsBuilder;

/** Makes the JSON of inspections. */
@Component
class InspectionJsons {
  private final ReasonViews views;
  private final IdleNoises noises;
  private final Products products;

  InspectionJsons(ReasonViews views, IdleNoises noises, Products products) {
    this.views = views;
    this.noises = noises;
    this.products = products;
  }

  /**
   * @return with regions and attempts
   */
  InspectionJson whole(InspectionFile file, Locale locale) {
    List<Attempt> attempts =
        file.attempts().stream().map(attempt -> attempt(file, attempt, locale)).toList();
    return json(
        file,
        seatings(file, tellsDepth(file)),
        ReasonViews.regions(file.regions()),
        attempts,
        noises.of(file),
        locale);
  }

  /**
   * @return as lists carry it
   */
  InspectionJson summary(InspectionFile file, Locale locale) {
    return json(file, seatings(file, null), null, null, null, locale);
  }

  private InspectionJson json(
      InspectionFile file,
      InspectionJson.Seatings seatings,
      List<Inspections.RegionView> regions,
      List<Attempt> attempts,
      InspectionJson.IdleNoise noise,
      Locale locale) {
    InspectionRow row = file.row();
    return new InspectionJson(
        row.id(),
        row.serial(),
        row.batch(),
        row.product(),
        file.product().name(),
        file.product().maker(),
        row.tuning(),
        row.station(),
        row.occasion().word(),
        row.state().word(),
        name(row.verdict()),
        file.conditional(),
        lastAttempt(row),
        row.next(),
        new InspectionJson.LimitSet(row.limitSetVersion(), row.limitSetDigest()),
        row.earSimulator(),
        row.startedAt(),
        row.closedAt(),
        row.abandonedBecause() == null ? null : row.abandonedBecause().word(),
        row.softwareVersion(),
        seatings,
        views.of(file, locale),
        regions,
        attempts,
        noise,
        unit(file.unit()),
        links(row));
  }

  /** A golden response with two peaks near each other does not tell the insertion depth. */
  private boolean tellsDepth(InspectionFile file) {
    StoredLimitSet limits = products.limitSet(file.row().limitSetId());
    return SeatingCheck.of(limits.set(), limits.golden()).tellsDepth();
  }

  private static InspectionJson.Seatings seatings(InspectionFile file, Boolean depthTold) {
    InspectionRow row = file.row();
    List<InspectionJson.SpreadView> spread =
        file.verdict().map(VerdictRow::spread).orElse(List.of()).stream()
            .map(
                s ->
                    new InspectionJson.SpreadView(s.region(), s.channel().word(), s.db(), s.atHz()))
            .toList();
    return new InspectionJson.Seatings(
        row.validSeatings(),
        row.seatingsWanted(),
        row.tries(),
        row.triesAllowed(),
        spread,
        depthTold);
  }

  private Attempt attempt(InspectionFile file, AttemptRow row, Locale locale) {
    AttemptRow.Circumstances with = row.circumstances();
    return new Attempt(
        row.number(),
        row.seating(),
        row.outcome().name(),
        with.station(),
        with.measuredAt(),
        with.receivedAt(),
        with.stimulus(),
        new File(row.left().sha256(), row.left().bytes()),
        new File(row.right().sha256(), row.right().bytes()),
        row.idleLeftSha256(),
        row.idleRightSha256(),
        views.of(file, row, locale));
  }

  static InspectionJson.Unit unit(UnitVerdict unit) {
    return new InspectionJson.Unit(unit.verdict(), unit.passed(), unit.missing(), unit.failed());
  }

  private static InspectionJson.Links links(InspectionRow row) {
    String self = "/api/inspections/" + row.id();
    String unit =
        UriComponentsBuilder.fromPath("/api/units/{serial}")
            .encode()
            .buildAndExpand(row.serial())
            .toUriString();
    return new InspectionJson.Links(self, self + "/curves", self + "/certificate", unit);
  }

  /**
   * @return null after a good seating: what is wanted then is in {@code next}
   */
  static String lastAttempt(InspectionRow row) {
    return row.lastAttempt() == Outcome.VALID ? null : row.lastAttempt().name();
  }

  static String name(Outcome outcome) {
    return outcome == null ? null : outcome.name();
  }
}
