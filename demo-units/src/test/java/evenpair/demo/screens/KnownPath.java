package evenpair.demo.screens;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.FilterChain;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Random;

/**
 * Stands for the earphone on its couplers: takes what the browser plays, two channels of 32-bit
 * floats, sends each through filters of its own, and hands it to the microphones. What it does to
 * the sound can be changed while it runs, as a loose cable would.
 */
final class KnownPath implements Runnable {
  private static final int CHANNELS = 2;
  private static final int FRAME_BYTES = CHANNELS * Float.BYTES;

  /** A block of 5 ms, so that the path adds next to no delay of its own. */
  private static final int BLOCK_FRAMES = 240;

  /**
   * When a busy machine has held this program up, what is waiting makes the path longer and longer.
   * Silence beyond 40 ms of it is let go, where nobody hears the difference.
   */
  private static final int BACKLOG_BYTES = 1920 * FRAME_BYTES;

  private final InputStream played;
  private final OutputStream heard;
  private final Running[] filters;
  private final Random random = new Random(20_261_125);
  private final double[] gain = {1, 1};

  private volatile double noise;
  private volatile int lostBlocks;
  private volatile double lossAbove = Double.POSITIVE_INFINITY;
  private volatile double loudest;

  KnownPath(InputStream played, OutputStream heard, FilterChain left, FilterChain right) {
    this.played = played;
    this.heard = heard;
    filters = new Running[] {new Running(left), new Running(right)};
  }

  /** Turns both microphone inputs; a microphone clips at full scale. */
  synchronized void setGain(double left, double right) {
    gain[0] = left;
    gain[1] = right;
  }

  private synchronized double gain(int channel) {
    return gain[channel];
  }

  /**
   * @param deviation of white Gaussian noise in both microphones, re full scale
   */
  void setNoise(double deviation) {
    noise = deviation;
  }

  /** Loses that many blocks of 5 ms, once, as soon as something louder than a level is played. */
  void loseSamples(int blocks, double above) {
    lostBlocks = blocks;
    lossAbove = above;
  }

  /**
   * @return the largest |sample| that was played since this was last asked
   */
  double loudestPlayed() {
    double since = loudest;
    loudest = 0;
    return since;
  }

  @Override
  public void run() {
    byte[] bytes = new byte[BLOCK_FRAMES * FRAME_BYTES];
    ByteBuffer block = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    try {
      while (played.readNBytes(bytes, 0, bytes.length) == bytes.length) {
        double peak = peak(block);
        if (peak == 0 && played.available() > BACKLOG_BYTES) {
          continue;
        }
        pass(block, peak);
        heard.write(bytes);
        heard.flush();
      }
    } catch (IOException e) {
      // the device is being closed; there is nobody left to hear it
    }
  }

  private static double peak(ByteBuffer block) {
    double peak = 0;
    for (int at = 0; at < block.capacity(); at += Float.BYTES) {
      peak = Math.max(peak, Math.abs(block.getFloat(at)));
    }
    return peak;
  }

  private void pass(ByteBuffer block, double peak) {
    loudest = Math.max(loudest, peak);
    boolean lost = lostBlocks > 0 && peak > lossAbove;
    lostBlocks -= lost ? 1 : 0;
    for (int at = 0; at < block.capacity(); at += Float.BYTES) {
      int channel = at / Float.BYTES % CHANNELS;
      double sample = gain(channel) * filters[channel].next(block.getFloat(at));
      sample = lost ? 0 : sample + noise * random.nextGaussian();
      block.putFloat(at, (float) Math.max(-1, Math.min(1, sample)));
    }
  }

  /** Biquads that go on from block to block. */
  private static final class Running {
    private final Biquad[] sections;
    private final double[] first;
    private final double[] second;

    Running(FilterChain chain) {
      sections = chain.filters().toArray(Biquad[]::new);
      first = new double[sections.length];
      second = new double[sections.length];
    }

    double next(double input) {
      double sample = input;
      for (int i = 0; i < sections.length; i++) {
        Biquad section = sections[i];
        double output = section.b0() * sample + first[i];
        first[i] = section.b1() * sample - section.a1() * output + second[i];
        second[i] = section.b2() * sample - section.a2() * output;
        sample = output;
      }
      return sample;
    }
  }
}
