package evenpair.demo.line;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Response;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.acoustics.UnusableCapture;
import evenpair.captures.WavReader;
import evenpair.demo.earpiece.Design;
import evenpair.tolerance.Channel;
import evenpair.tolerance.MeasuredChannel;
import java.util.Optional;

/** What a station that knows its bench exactly makes of a rendered capture. */
final class Heard {
  static final Sweep SWEEP = Sweep.standard(48_000);
  static final Samples STIMULUS = new Samples(SweepSignal.render(SWEEP), SWEEP.rateHz());
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(SWEEP);

  private Heard() {}

  static Response response(byte[] wav) throws UnusableCapture {
    return ANALYSER.analyse(WavReader.read(wav).channels().get(0));
  }

  /** Level in dB SPL at the design's drive, the simulators' own difference taken out. */
  static MeasuredChannel channel(
      byte[] wav, Bench bench, Channel channel, Cable cable, Design design) throws UnusableCapture {
    Response response = response(wav);
    double digital =
        cable.plain()
            ? Math.sqrt(2) * design.millivoltsRms() / 1000 / bench.voltsPerFullScale()
            : Math.pow(10, -12.0 / 20);
    double fullScaleDb =
        20 * Math.log10(digital / Math.sqrt(2) * bench.pascalPerFullScale(channel) / 20e-6);
    double half = channel == Channel.LEFT ? -0.5 : 0.5;
    Curve own = Curve.from(hz -> half * bench.difference().db(hz));
    return new MeasuredChannel(
        response.level().plus(fullScaleDb).plus(own), Optional.of(response.phaseDeg()));
  }
}
