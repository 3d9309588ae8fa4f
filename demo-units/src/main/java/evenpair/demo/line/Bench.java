package evenpair.demo.line;

import evenpair.acoustics.EarSimulator;
import evenpair.tolerance.Channel;
import java.util.List;

/**
 * One bench of the simulated line, as it really is (the service is never told these numbers; it has
 * to find them from tones, readings and a swap study).
 *
 * @param name the station's name
 * @param earSimulator type of both its ear simulators
 * @param leftPascalPerFullScale sound pressure for full scale at the left microphone, Pa
 * @param rightPascalPerFullScale the same at the right one
 * @param voltsPerFullScale voltage at the earphone's terminals for full scale, V
 * @param backgroundDb level of the room's noise in the simulators, dB SPL
 * @param latencySeconds from playing to recording, s
 * @param difference how the two simulators differ
 */
public record Bench(
    String name,
    EarSimulator earSimulator,
    double leftPascalPerFullScale,
    double rightPascalPerFullScale,
    double voltsPerFullScale,
    double backgroundDb,
    double latencySeconds,
    SimulatorDifference difference) {

  /** Three benches on occluded-ear simulators and one on 2 cm³ couplers. */
  public static final List<Bench> LINE =
      List.of(
          new Bench(
              "bench-1",
              EarSimulator.IEC_60318_4,
              20.4,
              19.3,
              1.0112,
              38,
              0.071,
              new SimulatorDifference(0.22, 0.20, 0.35, 7200)),
          new Bench(
              "bench-2",
              EarSimulator.IEC_60318_4,
              18.7,
              21.1,
              1.0161,
              39,
              0.064,
              new SimulatorDifference(-0.31, 0.12, -0.30, 9100)),
          new Bench(
              "bench-3",
              EarSimulator.IEC_60318_4,
              22.0,
              20.2,
              1.0095,
              37,
              0.093,
              new SimulatorDifference(0.10, -0.26, 0.45, 5600)),
          new Bench(
              "bench-4",
              EarSimulator.IEC_60318_5,
              19.8,
              20.9,
              0.7121,
              38,
              0.080,
              new SimulatorDifference(-0.18, 0.22, 0.30, 6400)));

  /**
   * @return sound pressure for full scale at that microphone, Pa
   */
  public double pascalPerFullScale(Channel channel) {
    return channel == Channel.LEFT ? leftPascalPerFullScale : rightPascalPerFullScale;
  }

  /**
   * @return what a voltmeter at the terminals reads for a tone of that peak level re full scale, mV
   *     r.m.s.
   */
  public double readingMillivolts(double toneDbfs) {
    return 1000 * voltsPerFullScale * Math.pow(10, toneDbfs / 20) / Math.sqrt(2);
  }

  /**
   * @return serial number of that channel's ear simulator
   */
  public String simulatorSerial(Channel channel) {
    return "ES-" + name.substring(name.length() - 1) + (channel == Channel.LEFT ? "01" : "02");
  }
}
