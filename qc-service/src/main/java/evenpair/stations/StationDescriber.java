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

  StationDescriber(Texts texts, StationSettings settings) {
    this.texts = texts;
    this.settings = settings;
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
    return new Views.Station(
        station,
        newest.station().note(),
        newest.station().createdAt(),
        state(needs),
        needs,
        microphones,
        newest.output().map(row -> describe(station, row, at, locale)).orElse(null),
        newest.correction().map(row -> describe(station, row, at)).orElse(null));
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
        whole.needs(),
        whole.microphones(),
        whole.output(),
        whole.correction() == null ? null : whole.correction().withoutCurves());
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
    String text = change.changed() ? text(what, channel, "changed", change, locale) : null;
    return new Views.Change(change.changeDb(), change.state(), text);
  }

  private List<Views.Need> needs(Newest newest, Instant at, Locale locale) {
    List<Views.Need> needs = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      MicrophoneCalibrationRow row = newest.microphones().get(channel);
      add(needs, "microphone", channel, row, row == null ? null : row.change(), at, locale);
    }
    OutputCalibrationRow output = newest.output().orElse(null);
    add(needs, "output", null, output, output == null ? null : output.change(), at, locale);
    add(needs, "correction", null, newest.correction().orElse(null), null, at, locale);
    return needs;
  }

  private void add(
      List<Views.Need> needs,
      String what,
      Channel channel,
      InsertOnlyRow row,
      Change change,
      Instant at,
      Locale locale) {
    String why = null;
    if (row == null) {
      why = "missing";
    } else if (!row.validAt(at)) {
      why = "expired";
    } else if (change != null && change.changed()) {
      why = "changed";
    }
    if (why != null) {
      String word = channel == null ? null : channel.word();
      needs.add(new Views.Need(what, word, why, text(what, channel, why, change, locale)));
    }
  }

  private String text(String what, Channel channel, String why, Change change, Locale locale) {
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("limit", settings.changeDb());
    if (channel != null) {
      values.put("channel", channel.word());
    }
    if (change != null && change.changeDb() != null) {
      values.put("change", change.changeDb());
    }
    return texts.render(locale, "station.need." + what + "." + why, values);
  }

  private static String state(List<Views.Need> needs) {
    if (needs.stream().anyMatch(need -> need.why().equals("changed"))) {
      return "changed";
    }
    return needs.isEmpty() ? "ready" : "needs-calibration";
  }
}
