package evenpair.inspections;

import evenpair.access.SignedIn;
import evenpair.captures.StorageFailure;
import evenpair.products.Products;
import evenpair.products.Products.Product;
import evenpair.stations.Stations;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Component;

/**
 * Takes a request from its parts to the stored attempt. Whatever is refused on the way has stored
 * nothing.
 */
@Component
class Intake {
  private final Products products;
  private final Stations stations;
  private final Hearing hearing;
  private final AttemptRecorder recorder;
  private final IdempotencyKeys keys;
  private final InspectionSettings settings;
  private final IngestMeters meters;
  private final SignedIn signedIn;
  private final Clock clock;
  private final KeyTurns turns = new KeyTurns();

  Intake(
      Products products,
      Stations stations,
      Hearing hearing,
      AttemptRecorder recorder,
      IdempotencyKeys keys,
      InspectionSettings settings,
      IngestMeters meters,
      SignedIn signedIn,
      Clock clock) {
    this.products = products;
    this.stations = stations;
    this.hearing = hearing;
    this.recorder = recorder;
    this.keys = keys;
    this.settings = settings;
    this.meters = meters;
    this.signedIn = signedIn;
    this.clock = clock;
  }

  /**
   * @param key Idempotency-Key, if sent
   * @throws Refusal if it cannot be decoded, names something unknown, comes at the wrong time, or
   *     from a station's token for another station
   */
  Answer take(SentParts parts, Optional<String> key, Locale locale) {
    return take(parts, key, locale, Optional.empty());
  }

  /**
   * @param writtenAt when the captures were written, if that is known: where the request says no
   *     time of measurement, that counts and not now, unless it lies ahead of our clock
   */
  Answer take(SentParts parts, Optional<String> key, Locale locale, Optional<Instant> writtenAt) {
    return meters.timed(() -> taken(parts, key, locale, writtenAt));
  }

  private Answer taken(
      SentParts parts, Optional<String> key, Locale locale, Optional<Instant> writtenAt) {
    Submission submission = SubmissionReader.read(parts.inspection());
    signedIn.requireStation(submission.station());
    Product product = product(submission);
    requireSerialOfProduct(submission, product);
    Instant receivedAt = clock.instant();
    Instant otherwise = writtenAt.filter(at -> !at.isAfter(receivedAt)).orElse(receivedAt);
    Instant measuredAt = measuredAt(submission, otherwise, receivedAt);
    Surroundings surroundings = surroundings(submission, measuredAt);
    String digest = RequestDigest.of(parts);
    Supplier<Answer> judged =
        () -> {
          SentPair sent = CaptureDecoder.decode(parts);
          HeardPair heard = hearing.hear(sent, submission.stimulus());
          return record(
              new PreparedAttempt(
                  submission, sent, heard, product, surroundings, receivedAt, key, digest, locale));
        };
    return key.map(given -> once(submission.station(), given, digest, judged)).orElseGet(judged);
  }

  /** A repetition waits for the first one here, without a database connection. */
  private Answer once(String station, String key, String digest, Supplier<Answer> judged) {
    return turns.alone(
        station + '\n' + key, () -> answered(station, key, digest).orElseGet(judged));
  }

  private Answer record(PreparedAttempt attempt) {
    try {
      return recorder.record(attempt);
    } catch (StorageFailure e) {
      throw new Refusal(
          507,
          "storage-failed",
          "The captures could not be stored, so nothing was recorded: " + e.getMessage());
    } catch (DataIntegrityViolationException e) {
      // The unique keys are the last guard, behind the locks: another process was faster.
      throw new Refusal(
          409,
          "changed-meanwhile",
          "Another request for this unit was recorded at the same time; nothing of this one was.");
    }
  }

  private Optional<Answer> answered(String station, String key, String digest) {
    return keys.find(station, key).map(first -> AttemptRecorder.replay(first, digest));
  }

  private Product product(Submission submission) {
    Product product =
        products
            .find(submission.product())
            .orElseThrow(
                () ->
                    unknown(
                        "product",
                        submission.product(),
                        products.all().stream().map(Product::key).toList()));
    if (product.tuning(submission.tuning()).isEmpty()) {
      List<String> tunings = product.tunings().stream().map(Products.Tuning::key).toList();
      throw unknown("tuning", submission.tuning(), tunings);
    }
    return product;
  }

  private static Refusal unknown(String field, String sent, List<String> choices) {
    String known = choices.isEmpty() ? "none is known yet" : "known: " + String.join(", ", choices);
    return new Refusal(
            422, "unknown-" + field, "There is no " + field + " '" + sent + "'; " + known + ".")
        .with("part", "inspection")
        .with("field", field)
        .with("choices", choices);
  }

  private static void requireSerialOfProduct(Submission submission, Product product) {
    if (!Pattern.matches(product.serialPattern(), submission.serial())) {
      String detail =
          "The serial '%s' does not have the form that %s has: %s."
              .formatted(submission.serial(), product.name(), product.serialPattern());
      throw new Refusal(422, "serial-pattern", detail)
          .with("part", "inspection")
          .with("field", "serial")
          .with("expected", product.serialPattern());
    }
  }

  private Instant measuredAt(Submission submission, Instant otherwise, Instant now) {
    Instant measuredAt = submission.measuredAt().orElse(otherwise).truncatedTo(ChronoUnit.MICROS);
    if (measuredAt.isAfter(now.plus(settings.clockAheadAllowed()))) {
      throw new Refusal(
              422,
              "measured-in-the-future",
              "The field 'measuredAt' is " + measuredAt + ", but it is only " + now + ".")
          .with("part", "inspection")
          .with("field", "measuredAt")
          .with("expected", "a time not after now");
    }
    return measuredAt;
  }

  private Surroundings surroundings(Submission submission, Instant at) {
    String station = submission.station();
    Chain chain =
        stations
            .chainAt(station, at)
            .orElseThrow(() -> unknown("station", station, stations.names()));
    Map<Channel, Double> floors = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      stations.idleFloorDba(station, channel, at).ifPresent(dba -> floors.put(channel, dba));
    }
    return new Surroundings(
        chain,
        at,
        stations.blockedAt(station, submission.product(), submission.tuning(), at),
        floors);
  }
}
