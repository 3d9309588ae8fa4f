package evenpair.ledger;

import java.util.List;

/** What the check knows of the sealed tables of other modules. */
public final class SealedTables {
  /**
   * Tables of which every row is sealed in the transaction that adds it. Versions of limits are not
   * among them: a draft is sealed when it is approved.
   */
  public static final List<String> WHOLLY =
      List.of(
          "attempt",
          "attempt_channel",
          "inspection_verdict",
          "microphone_calibration",
          "output_calibration",
          "station_correction",
          "station_correction_capture",
          "reference_unit",
          "station_verification",
          "station_verification_region",
          "station_clearing",
          "gauge_study",
          "gauge_study_part",
          "gauge_study_appraiser",
          "gauge_study_capture",
          "station_idle_floor",
          "dispatch",
          "dispatch_unit",
          "outside_report");

  private SealedTables() {}
}
