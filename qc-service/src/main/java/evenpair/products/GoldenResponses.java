package evenpair.products;

import evenpair.acoustics.Curve;
import evenpair.tolerance.GoldenResponse;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The versions of golden responses, what a DSP tuning should give, and new drafts. */
public interface GoldenResponses {
  /**
   * @return every version of the tuning, drafts included, rising
   * @throws Refusal 404 for an unknown product or tuning, naming the known ones
   */
  List<StoredGolden> of(String product, String tuning);

  /**
   * @return that version
   * @throws Refusal 404 for an unknown product, tuning or version, naming the known ones
   */
  StoredGolden version(String product, String tuning, int version);

  /**
   * What a tuning that is a DSP setting should give: the golden response of the tuning it comes from
   * (of the limit set that is active there) + its filters' gains, each as power mean over the grid
   * point's band, + its overall gain.
   *
   * @return empty if the tuning comes from no other one, or that one has no active limit set
   * @throws Refusal 404 for an unknown product or tuning
   */
  Optional<ExpectedGolden> expectedAt(String product, String tuning, Instant at);

  /**
   * Drafts a new version.
   *
   * @param name file name by which limit sets refer to it, such as {@code plain-golden.csv}
   * @param author name or badge
   * @throws Refusal 400 for a name or author that cannot be one, 404 for an unknown product or
   *     tuning, 409 if that very response is there already
   */
  StoredGolden draft(
      String product, String tuning, String name, GoldenResponse golden, String author);

  /**
   * @param name file name by which limit sets refer to it
   * @param approved whether it is signed off
   */
  record StoredGolden(
      UUID id,
      String product,
      String tuning,
      int version,
      String name,
      GoldenResponse response,
      boolean approved) {}

  /**
   * @param from the tuning it comes from
   * @param fromVersion version of that one's golden response
   * @param level dB SPL, as far below half the DSP's sample rate as a whole band reaches; absent
   *     above
   */
  record ExpectedGolden(String from, int fromVersion, Curve level) {}
}
