package evenpair.stations;

import evenpair.acoustics.Grid;
import evenpair.stations.StationRegister.Newest;
import evenpair.tolerance.Channel;
import evenpair.web.Texts;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;

/** Says what a station's rows mean at one instant. */
@Component
class StationDescriber {
  private final Texts texts;
  private final StationSettings settings;
  private final Blocks blocks;
  private final VerificationDescriber verifications;
  private final IdleFloors idleFloors;

  StationDescriber(
      Texts texts,
      StationSettings settings,
      Blocks blocks,
      VerificationDescriber verifications,
      IdleFloors idleFloors) {
    this.texts = texts;
    this.settings = settings;
    this.blocks = blocks;
    this.verifications = verifications;
    this.idleFloors = idleFloors;
  }

  /**
   * @return the whole station, its correction with curves
   */
  Views.Station describe(Newest newest, Instant at, Locale locale) {
    String station = newest.station().name();
    Map<String, Views.Microphone> microphones = new LinkedHashMap<>();
    for (Channel channel : Channel.values()) {
      MicrophoneCalibrationRow row = newest.microphones().get(channel);
      microphones.put(channel.word(), row == null ? null : describe(station, row, at, locale));
    }
    List<Views.Need> needs = needs(newest, at, locale);
    List<TrustViews.Block> present =
        blocks.at(newest.station(), at).stream()
            .map(block -> verifications.describe(block, locale))
            .toList();
    return new Views.Station(
        station,
        newest.station().note(),
        newest.station().createdAt(),
        state(needs, present),
        present,
        needs,
        microphones,
        newest.output().map(row -> describe(station, row, at, locale)).orElse(null),
        newest.correction().map(row -> describe(station, row, at)).orElse(null),
        verifications.newest(newest.station(), at),
        idleFloors
            .newest(newest.station(), at)
            .map(row -> describe(station, row, at))
            .orElse(null));
  }

  TrustViews.IdleFloor describe(String station, IdleFloorRow row, Instant at) {
    return new TrustViews.IdleFloor(
        row.getId(),
        station,
        row.leftDba(),
        row.rightDba(),
        row.provenance().measuredAt(),
        row.provenance().validUntil(),
        row.validAt(at));
  }

  /**
   * @return the same for a list: without the correction's curves
   */
  Views.Station summarise(Newest newest, Instant at, Locale locale) {
    Views.Station whole = describe(newest, at, locale);
    return new Views.Station(
        whole.station(),
        whole.note(),
        whole.createdAt(),
        whole.state(),
        whole.blocks(),
        whole.needs(),
        whole.microphones(),
        whole.output(),
        whole.correction() == null ? null : whole.correction().withoutCurves(),
        whole.verifications(),
        whole.idleFloor());
  }

  Views.Microphone describe(
      String station, MicrophoneCalibrationRow row, Instant at, Locale locale) {
    MicrophoneCalibrationRow.Tone tone = row.tone();
    return new Views.Microphone(
        row.getId(),
        station,
        row.simulator().channel().word(),
        row.simulator().type().label(),
        row.simulator().serial(),
        row.stated().calibratorSerial(),
        row.pascalPerFullScale(),
        ToneReading.fullScaleLevelDb(row.pascalPerFullScale()),
        row.stated().statedLevelDb(),
        row.stated().statedFrequencyHz(),
        row.stated().calibratorUncertaintyDb(),
        new Views.Tone(
            20 * Math.log10(tone.amplitude()),
            tone.frequencyHz(),
            tone.distortionPercent(),
            tone.driftDb(),
            tone.sha256()),
        change(row.change(), "microphone", row.simulator().channel(), locale),
        row.provenance().measuredAt(),
        row.provenance().validUntil(),
        row.validAt(at));
  }

  Views.Output describe(String station, OutputCalibrationRow row, Instant at, Locale locale) {
    OutputCalibrationRow.Reading reading = row.reading();
    return new Views.Output(
        row.getId(),
        station,
        row.voltsPerFullScale(),
        new OutputGain(row.voltsPerFullScale()).fullScaleVoltsRms(),
        reading.toneDbfs(),
        reading.frequencyHz(),
        reading.readingMvRms(),
        reading.meterSerial(),
        change(row.change(), "output", null, locale),
        row.provenance().measuredAt(),
        row.provenance().validUntil(),
        row.validAt(at));
  }

  Views.Correction describe(String station, CorrectionRow row, Instant at) {
    return new Views.Correction(
        row.getId(),
        station,
        row.version(),
        row.referenceUnit(),
        row.stimulus(),
        row.scatterDb(),
        row.toCorrection().leftMinusRight().mean(SwapStudy.SIZE_BAND),
        row.provenance().measuredAt(),
        row.provenance().validUntil(),
        row.validAt(at),
        Grid.frequencies(),
        row.leftMinusRightDb(),
        row.uncertaintyDb());
  }

  private Views.Change change(Change change, String what, Channel channel, Locale locale) {
    String text = change.changed() ? changeText(what, channel, change, locale) : null;
    return new Views.Change(change.changeDb(), change.state(), text);
  }

  private List<Views.Need> needs(Newest newest, Instant at, Locale locale) {
    List<Views.Need> needs = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      add(needs, "microphone", channel, newest.microphones().get(channel), at, locale);
    }
    add(needs, "output", null, newest.output().orElse(null), at, locale);
    add(needs, "correction", null, newest.correction().orElse(null), at, locale);
    for (ReferenceUnitRow unit : blocks.unverified(newest.station(), at)) {
      Map<String, String> values = Map.of("product", unit.product(), "tuning", unit.tuning());
      String text = texts.render(locale, "station.need.verification.missing", values);
      needs.add(new Views.Need("verification", null, "missing", text));
    }
    return needs;
  }

  private void add(
      List<Views.Need> needs,
      String what,
      Channel channel,
      InsertOnlyRow row,
      Instant at,
      Locale locale) {
    if (row != null && row.validAt(at)) {
      return;
    }
    String why = row == null ? "missing" : "expired";
    String word = channel == null ? null : channel.word();
    needs.add(new Views.Need(what, word, why, text(what, channel, why, locale)));
  }

  private String text(String what, Channel channel, String why, Locale locale) {
    Map<String, Object> values = channel == null ? Map.of() : Map.of("channel", channel.word());
    return texts.render(locale, "station.need." + what + "." + why, values);
  }

  private String changeText(String what, Channel channel, Change change, Locale locale) {
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("limit", settings.changeDb());
    values.put("change", change.changeDb());
    if (channel != null) {
      values.put("channel", channel.word());
    }
    return texts.render(locale, "station.change." + what, values);
  }

  private static String state(List<Views.Need> needs, List<TrustViews.Block> blocks) {
    if (!blocks.isEmpty()) {
      return "blocked";
    }
    return needs.isEmpty() ? "ready" : "needs-calibration";
  }
}
