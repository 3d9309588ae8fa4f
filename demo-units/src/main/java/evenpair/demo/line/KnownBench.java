package evenpair.demo.line;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Distortion;
import evenpair.acoustics.Response;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.UnusableCapture;
import evenpair.captures.WavReader;
import evenpair.demo.earpiece.Design;
import evenpair.tolerance.Channel;
import evenpair.tolerance.MeasuredChannel;
import evenpair.tolerance.MeasuredDistortion;
import evenpair.tolerance.MeasuredPair;
import java.util.Optional;

/**
 * What a station makes of a rendered capture if it knows its bench exactly: perfectly calibrated,
 * the simulators' own difference taken out.
 *
 * @param bench the bench
 * @param analyser of the stimulus that was played
 */
public record KnownBench(Bench bench, ResponseAnalyser analyser) {
  private static final double USB_DBFS = -12;

  /**
   * @throws UnusableCapture if a capture cannot be analysed
   */
  public MeasuredPair pair(LineRecorder.PairCapture capture, Cable cable, Design design)
      throws UnusableCapture {
    return new MeasuredPair(
        channel(capture.left(), Channel.LEFT, cable, design),
        channel(capture.right(), Channel.RIGHT, cable, design));
  }

  /**
   * @param wav a mono WAV file
   * @return level in dB SPL at the design's drive, and distortion
   * @throws UnusableCapture if it cannot be analysed
   */
  public MeasuredChannel channel(byte[] wav, Channel channel, Cable cable, Design design)
      throws UnusableCapture {
    ResponseAnalyser.WithDistortion heard =
        analyser.analyseWithDistortion(WavReader.read(wav).channels().get(0));
    Response response = heard.response();
    double half = channel == Channel.LEFT ? -0.5 : 0.5;
    Curve own = Curve.from(hz -> half * bench.difference().db(hz));
    return new MeasuredChannel(
        response.level().plus(fullScaleDb(channel, cable, design)).plus(own),
        Optional.of(response.phaseDeg()),
        Optional.of(distortion(heard.distortion())),
        Optional.empty());
  }

  private double fullScaleDb(Channel channel, Cable cable, Design design) {
    double digital =
        cable.plain()
            ? Math.sqrt(2) * design.millivoltsRms() / 1000 / bench.voltsPerFullScale()
            : Math.pow(10, USB_DBFS / 20);
    return 20 * Math.log10(digital / Math.sqrt(2) * bench.pascalPerFullScale(channel) / 20e-6);
  }

  private static MeasuredDistortion distortion(Distortion heard) {
    return new MeasuredDistortion(
        heard.harmonics(), heard.floors(), heard.highOrder(), heard.highOrderFloor());
  }
}
