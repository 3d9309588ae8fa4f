package evenpair.inspections.plant;

import evenpair.stations.Stations.Verified;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * How one station is doing.
 *
 * @param verdicts the newest, newest first
 * @param firstPass units judged for the first time within the last hour
 * @param mountings of the last eight hours
 * @param block the first cause that keeps it from judging
 * @param heardAt when anything last came from it; empty if nothing ever did
 */
record StationHealth(
    String station,
    List<LastVerdict> verdicts,
    FirstPass firstPass,
    List<Mountings> mountings,
    List<Validity> calibrations,
    List<Verified> verifications,
    Optional<Blocked> block,
    Optional<HeldReports.Report> held,
    Optional<Instant> heardAt) {

  record LastVerdict(UUID inspection, String serial, String tuning, String verdict, Instant at) {}

  /**
   * @param units judged in production within the hour
   * @param passed those of them that passed in every tuning judged within it
   */
  record FirstPass(int units, int passed) {}

  /** One person's mountings at the station, by the random reference. */
  record Mountings(UUID operator, int attempts, int reseats) {}

  /**
   * How long one kind of measurement about the station still holds.
   *
   * @param kind microphone-left, microphone-right, output or correction
   * @param until empty if it was never made
   */
  record Validity(String kind, Optional<Instant> until) {}

  /**
   * @param text a sentence
   */
  record Blocked(String cause, Instant since, String text) {}
}
