package evenpair.stations;

import evenpair.acoustics.EarSimulator;
import evenpair.tolerance.Channel;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A calibration of one channel's microphone by a calibrator's tone. */
@Entity
@Immutable
@Table(name = "microphone_calibration")
class MicrophoneCalibrationRow extends InsertOnlyRow {
  @Enumerated(EnumType.STRING)
  private Channel channel;

  @Convert(converter = EarSimulatorColumn.class)
  private EarSimulator earSimulator;

  private String earSimulatorSerial;

  @Embedded private Stated stated;

  @Embedded private Tone tone;

  private double pascalPerFullScale;

  @Embedded private Change change;

  protected MicrophoneCalibrationRow() {}

  MicrophoneCalibrationRow(
      UUID id,
      UUID stationId,
      Simulator simulator,
      Stated stated,
      Tone tone,
      Change change,
      Provenance provenance) {
    super(id, stationId, provenance);
    this.channel = simulator.channel();
    this.earSimulator = simulator.type();
    this.earSimulatorSerial = simulator.serial();
    this.stated = stated;
    this.tone = tone;
    this.pascalPerFullScale = tone.pascalPerFullScale(stated.statedLevelDb());
    this.change = change;
  }

  Simulator simulator() {
    return new Simulator(channel, earSimulator, earSimulatorSerial);
  }

  Stated stated() {
    return stated;
  }

  Tone tone() {
    return tone;
  }

  double pascalPerFullScale() {
    return pascalPerFullScale;
  }

  Change change() {
    return change;
  }

  Stations.Microphone toMicrophone() {
    return new Stations.Microphone(
        getId(),
        channel,
        earSimulator,
        earSimulatorSerial,
        pascalPerFullScale,
        provenance().measuredAt(),
        provenance().validUntil());
  }

  /** Which simulator sat on which channel. */
  record Simulator(Channel channel, EarSimulator type, String serial) {}

  /**
   * What the calibrator claims.
   *
   * @param calibratorUncertaintyDb expanded uncertainty (k = 2) of its level by its certificate,
   *     dB; null if not stated
   */
  @Embeddable
  record Stated(
      String calibratorSerial,
      double statedLevelDb,
      double statedFrequencyHz,
      Double calibratorUncertaintyDb) {}

  /** What was read from its tone, and the digest of the recording. */
  @Embeddable
  record Tone(
      @Column(name = "tone_amplitude") double amplitude,
      @Column(name = "tone_frequency_hz") double frequencyHz,
      @Column(name = "tone_distortion_percent") double distortionPercent,
      @Column(name = "tone_drift_db") double driftDb,
      @Column(name = "tone_sha256") String sha256) {
    static Tone of(ToneReading reading, String sha256) {
      return new Tone(
          reading.amplitude(),
          reading.frequencyHz(),
          reading.distortionPercent(),
          reading.driftDb(),
          sha256);
    }

    double pascalPerFullScale(double levelDb) {
      return ToneReading.pascalPerFullScale(levelDb, amplitude);
    }
  }
}
