package evenpair.benchmarks;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.FilterChain;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.ResponseAnalyser.WithDistortion;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.acoustics.UnusableCapture;
import evenpair.captures.WavReader;
import evenpair.captures.WavWriter;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.jtransforms.fft.DoubleFFT_1D;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import pl.edu.icm.jlargearrays.ConcurrencyUtils;

/**
 * What a pair's two recordings cost, at 48 kHz, and what their transforms alone would cost: there
 * and back again at the length of the deconvolution, and once at the length of the response.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class PairBenchmark {
  private static final double FS = 48_000;
  private static final int DECONVOLUTION = 1 << 17;
  private static final int RESPONSE = 1 << 16;

  private final ResponseAnalyser analyser = new ResponseAnalyser(Sweep.standard(FS));
  private final DoubleFFT_1D deconvolution = new DoubleFFT_1D(DECONVOLUTION);
  private final DoubleFFT_1D response = new DoubleFFT_1D(RESPONSE);
  private final double[] noise = new Random(1).doubles(DECONVOLUTION, -1, 1).toArray();
  private Samples left;
  private Samples right;
  private byte[] leftFile;
  private byte[] rightFile;

  @Setup
  public void record() {
    ConcurrencyUtils.setNumberOfThreads(1);
    left = recording(7.5, 2);
    right = recording(8, 3);
    leftFile = WavWriter.float32(left);
    rightFile = WavWriter.float32(right);
  }

  @Benchmark
  public List<double[]> transformsAlone() {
    return List.of(transforms(), transforms());
  }

  @Benchmark
  public List<Object> responses() throws UnusableCapture {
    return List.of(analyser.analyse(left), analyser.analyse(right));
  }

  @Benchmark
  public List<WithDistortion> responsesAndDistortion() throws UnusableCapture {
    return List.of(analyser.analyseWithDistortion(left), analyser.analyseWithDistortion(right));
  }

  @Benchmark
  public List<WithDistortion> filesToResponsesAndDistortion() throws UnusableCapture {
    return List.of(fromFile(leftFile), fromFile(rightFile));
  }

  private WithDistortion fromFile(byte[] file) throws UnusableCapture {
    return analyser.analyseWithDistortion(WavReader.read(file).channels().get(0));
  }

  private double[] transforms() {
    double[] signal = noise.clone();
    deconvolution.realForward(signal);
    deconvolution.realInverse(signal, true);
    double[] window = new double[RESPONSE];
    System.arraycopy(signal, 0, window, 0, RESPONSE / 4);
    response.realForward(window);
    return window;
  }

  /** An earpiece with a resonance of so many dB, 60 dB above the room. */
  private static Samples recording(double resonanceDb, long seed) {
    FilterChain earpiece =
        FilterChain.of(FS, Biquad.highPass(20, 0.7, FS), Biquad.peak(2800, resonanceDb, 2, FS));
    float[] played = SweepSignal.render(Sweep.standard(FS));
    double[] signal = new double[played.length];
    for (int n = 0; n < signal.length; n++) {
      signal[n] = 0.3 * played[n];
    }
    Random random = new Random(seed);
    double[] heard = earpiece.filter(signal);
    float[] values = new float[heard.length];
    for (int n = 0; n < values.length; n++) {
      values[n] = (float) (heard[n] + 5e-5 * random.nextGaussian());
    }
    return new Samples(values, FS);
  }
}
