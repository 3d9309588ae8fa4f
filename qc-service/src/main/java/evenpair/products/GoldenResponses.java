package evenpair.products;

import evenpair.tolerance.GoldenResponse;
import java.util.List;
import java.util.UUID;

/** The stored versions of golden responses. */
public interface GoldenResponses {
  /**
   * @return every version of the tuning, drafts included, rising
   * @throws evenpair.web.Refusal 404 for an unknown product or tuning, naming the known ones
   */
  List<StoredGolden> of(String product, String tuning);

  /**
   * @return that version
   * @throws evenpair.web.Refusal 404 for an unknown product, tuning or version, naming the known
   *     ones
   */
  StoredGolden version(String product, String tuning, int version);

  /**
   * @param name file name by which limit sets refer to it, such as {@code plain-golden.csv}
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
}
