package evenpair.pairing;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** What has been proposed for a unit's earpieces. */
public interface Pairings {
  /**
   * @return proposals in which the unit's left or right earpiece has a mate, oldest first
   */
  List<Proposed> ofUnit(String serial);

  /**
   * @param by who asked for it; null if nobody is known
   * @param serial of the proposed pair: that of its left earpiece's unit
   * @param asBuilt true: the two are a pair already
   * @param cost the largest share of a limit that the pair takes up, 0 to 1
   */
  record Proposed(
      UUID pairing,
      Instant at,
      UUID by,
      int number,
      String serial,
      String rightSerial,
      String leftEarpiece,
      String rightEarpiece,
      boolean asBuilt,
      double cost) {}
}
