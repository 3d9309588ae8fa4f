package evenpair.products;

import evenpair.products.Products.Provenance;
import evenpair.tolerance.GoldenResponse;
import java.time.Instant;
import java.util.UUID;

/** Rows of the versions as the database holds them. */
final class VersionRows {
  private VersionRows() {}

  /**
   * @param approver null: trusted as a file in limits/
   * @param reason null likewise
   */
  record SignOff(UUID approver, String reason, Instant at) {}

  /**
   * @param author null: from a file
   * @param provenance null: not built from measured units, or not by this service
   * @param signOff null: a draft
   */
  record Golden(
      UUID id,
      String product,
      String tuning,
      int version,
      String name,
      GoldenResponse response,
      String digest,
      UUID author,
      Instant madeAt,
      Provenance provenance,
      SignOff signOff) {}

  /**
   * @param definition the canonical YAML
   * @param author null: from a file
   * @param signOff null: a draft
   */
  record Limits(
      UUID id,
      String product,
      String tuning,
      int version,
      UUID goldenId,
      String definition,
      String digest,
      UUID author,
      Instant madeAt,
      SignOff signOff) {}

  /**
   * @param version the limit set's or the golden response's id
   */
  record Activation(UUID version, Instant from, Instant setAt) {}
}
