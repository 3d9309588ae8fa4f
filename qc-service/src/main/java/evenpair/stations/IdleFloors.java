package evenpair.stations;

import evenpair.access.People;
import evenpair.acoustics.IdleNoise;
import evenpair.captures.CaptureStore;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.stations.StationRegister.Newest;
import evenpair.tolerance.Channel;
import evenpair.web.FormParts;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/** The station's own noise: how quiet a unit can be told to be on it. */
@Service
class IdleFloors {
  private static final double REFERENCE_PASCAL = 20e-6;

  private final StationRegister register;
  private final IdleFloorRows floors;
  private final CaptureStore store;
  private final People people;
  private final Ledger ledger;
  private final StationSettings settings;
  private final TrustSettings trust;
  private final TransactionTemplate transaction;
  private final Ids ids;
  private final Clock clock;

  IdleFloors(
      StationRegister register,
      IdleFloorRows floors,
      CaptureStore store,
      People people,
      Ledger ledger,
      StationSettings settings,
      TrustSettings trust,
      TransactionTemplate transaction,
      Ids ids,
      Clock clock) {
    this.register = register;
    this.floors = floors;
    this.store = store;
    this.people = people;
    this.ledger = ledger;
    this.settings = settings;
    this.trust = trust;
    this.transaction = transaction;
    this.ids = ids;
    this.clock = clock;
  }

  Optional<IdleFloorRow> newest(StationRow station, Instant at) {
    return floors.newest(station.id(), at);
  }

  /**
   * @return dB(A) re 20 µPa of the newest that holds at that instant
   */
  OptionalDouble at(StationRow station, Channel channel, Instant at) {
    return newest(station, at)
        .filter(row -> row.validAt(at))
        .map(row -> OptionalDouble.of(channel == Channel.LEFT ? row.leftDba() : row.rightDba()))
        .orElse(OptionalDouble.empty());
  }

  /**
   * @throws Refusal 404 for an unknown station, 409 while a microphone is not calibrated, 422 for a
   *     recording that cannot be used
   */
  IdleFloorRow add(String station, Requests.IdleFloor request, FormParts parts) {
    StationRow row = register.require(station);
    Instant at =
        Requests.measuredAt(request.measuredAt(), clock.instant(), settings.clockTolerance());
    Newest newest = register.newest(row, at);
    byte[] left = parts.one("left", "a mono WAV with nothing connected");
    byte[] right = parts.one("right", "a mono WAV with nothing connected");
    double leftDba = level(Channel.LEFT, left, newest, at);
    double rightDba = level(Channel.RIGHT, right, newest, at);
    String leftSha256 = store.keep(left);
    String rightSha256 = store.keep(right);
    return transaction.execute(
        status -> {
          Provenance provenance =
              Provenance.of(
                  people.refer(request.operator()), at, trust.idleFloorValid(), clock.instant());
          IdleFloorRow made =
              floors.save(
                  new IdleFloorRow(
                      ids.next(),
                      row.id(),
                      leftDba,
                      rightDba,
                      leftSha256,
                      rightSha256,
                      provenance));
          Map<String, Object> entry = StationRecords.entry(made.getId(), row, provenance);
          entry.put("leftDba", leftDba);
          entry.put("rightDba", rightDba);
          entry.put("leftSha256", leftSha256);
          entry.put("rightSha256", rightSha256);
          ledger.append(
              "idle-floor",
              made.getId(),
              entry,
              Evidence.ofRows("station_idle_floor", "id", made.getId())
                  .andFiles(leftSha256, rightSha256));
          return made;
        });
  }

  /** A-weighted level: 20·lg(weighted r.m.s. re full scale · pascal per full scale / 20 µPa). */
  private static double level(Channel channel, byte[] bytes, Newest newest, Instant at) {
    MicrophoneCalibrationRow microphone = newest.microphones().get(channel);
    if (microphone == null || !microphone.validAt(at)) {
      String why = microphone == null ? "missing" : "expired";
      throw new Refusal(
              409,
              "calibration-" + why,
              "The " + channel.word() + " microphone's calibration is " + why + "; send one first.")
          .with("channel", channel.word());
    }
    double rms = weightedRms(channel, bytes);
    if (!(rms > 0)) {
      throw new Refusal(
              422,
              "silent-recording",
              "The part '" + channel.word() + "' is digital silence: no microphone is that quiet.")
          .with("part", channel.word());
    }
    return 20 * Math.log10(rms * microphone.pascalPerFullScale() / REFERENCE_PASCAL);
  }

  private static double weightedRms(Channel channel, byte[] bytes) {
    MonoWav wav = MonoWav.read(channel.word(), bytes);
    try {
      return IdleNoise.of(wav.samples()).weightedRms();
    } catch (IllegalArgumentException tooShort) {
      throw new Refusal(
              422,
              "recording-too-short",
              "The part '" + channel.word() + "' cannot be used: " + tooShort.getMessage() + ".")
          .with("part", channel.word())
          .with("expected", "1.25 s or more");
    }
  }
}
