package evenpair.stations;

import evenpair.access.People;
import evenpair.ledger.Digests;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.stations.CorrectionRow.Source;
import evenpair.stations.MicrophoneCalibrationRow.Simulator;
import evenpair.stations.MicrophoneCalibrationRow.Stated;
import evenpair.stations.MicrophoneCalibrationRow.Tone;
import evenpair.tolerance.Channel;
import evenpair.web.Ids;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Writes what was measured about a station: each record and its ledger entry in one transaction.
 * Captures have been kept before, so that no row names a file that is not there.
 */
@Service
@Transactional
class StationRecords {
  private final StationRows stations;
  private final MicrophoneCalibrationRows microphones;
  private final OutputCalibrationRows outputs;
  private final CorrectionRows corrections;
  private final People people;
  private final Ledger ledger;
  private final StationSettings settings;
  private final Ids ids;
  private final Clock clock;

  StationRecords(
      StationRows stations,
      MicrophoneCalibrationRows microphones,
      OutputCalibrationRows outputs,
      CorrectionRows corrections,
      People people,
      Ledger ledger,
      StationSettings settings,
      Ids ids,
      Clock clock) {
    this.stations = stations;
    this.microphones = microphones;
    this.outputs = outputs;
    this.corrections = corrections;
    this.people = people;
    this.ledger = ledger;
    this.settings = settings;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * Stores a calibration of one channel's microphone; its change is against the newest one measured
   * before.
   */
  MicrophoneCalibrationRow addMicrophone(
      StationRow station,
      Simulator simulator,
      Stated stated,
      Tone tone,
      String operator,
      Instant measuredAt) {
    Optional<MicrophoneCalibrationRow> before =
        microphones.newest(station.id(), simulator.channel(), measuredAt);
    double pascal = tone.pascalPerFullScale(stated.statedLevelDb());
    Change change =
        before
            .map(row -> Change.between(row.pascalPerFullScale(), pascal, settings.changeDb()))
            .orElseGet(Change::first);
    Provenance provenance =
        Provenance.of(
            people.refer(operator), measuredAt, settings.calibrationValid(), clock.instant());
    MicrophoneCalibrationRow row =
        microphones.save(
            new MicrophoneCalibrationRow(
                ids.next(), station.id(), simulator, stated, tone, change, provenance));
    Map<String, Object> entry = entry(row.getId(), station, provenance);
    entry.put("channel", simulator.channel().word());
    entry.put("earSimulator", simulator.type().label());
    entry.put("earSimulatorSerial", simulator.serial());
    entry.put("calibratorSerial", stated.calibratorSerial());
    entry.put("statedLevelDb", stated.statedLevelDb());
    entry.put("statedFrequencyHz", stated.statedFrequencyHz());
    if (stated.calibratorUncertaintyDb() != null) {
      entry.put("calibratorUncertaintyDb", stated.calibratorUncertaintyDb());
    }
    entry.put("toneAmplitude", tone.amplitude());
    entry.put("toneSha256", tone.sha256());
    entry.put("pascalPerFullScale", row.pascalPerFullScale());
    ledger.append(
        "calibration",
        row.getId(),
        entry,
        Evidence.ofRows("microphone_calibration", "id", row.getId()).andFiles(tone.sha256()));
    return row;
  }

  /** Stores a calibration of the output; its change is against the newest one measured before. */
  OutputCalibrationRow addOutput(
      StationRow station,
      OutputCalibrationRow.Reading reading,
      OutputGain gain,
      String operator,
      Instant measuredAt) {
    Change change =
        outputs
            .newest(station.id(), measuredAt)
            .map(
                row ->
                    Change.between(
                        row.voltsPerFullScale(), gain.voltsPerFullScale(), settings.changeDb()))
            .orElseGet(Change::first);
    Provenance provenance =
        Provenance.of(
            people.refer(operator), measuredAt, settings.calibrationValid(), clock.instant());
    OutputCalibrationRow row =
        outputs.save(
            new OutputCalibrationRow(ids.next(), station.id(), reading, gain, change, provenance));
    Map<String, Object> entry = entry(row.getId(), station, provenance);
    entry.put("toneDbfs", reading.toneDbfs());
    entry.put("frequencyHz", reading.frequencyHz());
    entry.put("readingMvRms", reading.readingMvRms());
    entry.put("meterSerial", reading.meterSerial());
    entry.put("voltsPerFullScale", row.voltsPerFullScale());
    ledger.append(
        "output-calibration",
        row.getId(),
        entry,
        Evidence.ofRows("output_calibration", "id", row.getId()));
    return row;
  }

  /** Stores a correction as the station's next version. */
  CorrectionRow addCorrection(
      StationRow station, Source source, SwapStudy study, String operator, Instant measuredAt) {
    stations.lock(station.id());
    int version = corrections.highestVersion(station.id()) + 1;
    Provenance provenance =
        Provenance.of(
            people.refer(operator), measuredAt, settings.correctionValid(), clock.instant());
    CorrectionRow row =
        corrections.save(
            new CorrectionRow(ids.next(), station.id(), version, source, study, provenance));
    Map<String, Object> entry = entry(row.getId(), station, provenance);
    entry.put("version", version);
    entry.put("referenceUnit", source.referenceUnit());
    entry.put("stimulus", source.stimulus());
    entry.put("leftMinusRight", Digests.ofCurve(row.leftMinusRightDb()));
    entry.put("uncertainty", Digests.ofCurve(row.uncertaintyDb()));
    entry.put("leftCalibration", source.leftCalibration().toString());
    entry.put("rightCalibration", source.rightCalibration().toString());
    entry.put("marked", digests(source, false));
    entry.put("swapped", digests(source, true));
    ledger.append(
        "correction",
        row.getId(),
        entry,
        Evidence.ofRows("station_correction", "id", row.getId())
            .andRows("station_correction_capture", "correction_id", row.getId())
            .andFiles(
                source.captures().stream()
                    .map(CorrectionRow.UsedCapture::sha256)
                    .toArray(String[]::new)));
    return row;
  }

  static Map<String, Object> entry(UUID id, StationRow station, Provenance provenance) {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("id", id.toString());
    entry.put("station", station.name());
    entry.put("operator", provenance.operator().toString());
    entry.put("measuredAt", provenance.measuredAt().toString());
    entry.put("validUntil", provenance.validUntil().toString());
    return entry;
  }

  private static Map<String, List<String>> digests(Source source, boolean swapped) {
    Map<String, List<String>> byChannel = new LinkedHashMap<>();
    for (Channel channel : Channel.values()) {
      byChannel.put(
          channel.word(),
          source.captures().stream()
              .filter(capture -> capture.swapped() == swapped && capture.channel() == channel)
              .map(CorrectionRow.UsedCapture::sha256)
              .toList());
    }
    return byChannel;
  }
}
