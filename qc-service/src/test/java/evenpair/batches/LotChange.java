package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.Inspections.RegionSpan;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.UUID;

/**
 * An invented batch of {@code sedge-2}, golden 100 dB everywhere, under the limits of {@link
 * GoldenLine}: each unit has its own treble (sd 0.2 dB, both sides), each side its own (sd 0.05 dB)
 * and 0.05 dB of noise at each point, from a fixed seed. From one unit on the treble of both sides
 * is louder; benches take turns, and the second reads the left earpiece's level higher.
 */
final class LotChange {
  static final Instant START = Instant.parse("2026-11-23T06:00:00Z");
  private static final double GOLDEN = 100;

  private final int count;
  private final Random random;
  private int changeFrom = Integer.MAX_VALUE;
  private double changeDb;
  private double secondBenchDb;
  private int failEvery = Integer.MAX_VALUE;
  private int gapIn = -1;

  LotChange(int count, long seed) {
    this.count = count;
    this.random = new Random(seed);
  }

  /** From this unit on, 0 for the first, the treble is louder. */
  LotChange from(int unit, double db) {
    changeFrom = unit;
    changeDb = db;
    return this;
  }

  LotChange secondBench(double db) {
    secondBenchDb = db;
    return this;
  }

  /** Every so many units one fails: 8 dB too much treble on the right. */
  LotChange failing(int every) {
    failEvery = every;
    return this;
  }

  /** This unit's curve lacks a point in the treble. */
  LotChange gap(int unit) {
    gapIn = unit;
    return this;
  }

  static String serial(int unit) {
    return "SG2-%06d".formatted(unit);
  }

  BatchCurves curves() {
    float[] left = new float[count * Grid.POINTS];
    float[] right = new float[count * Grid.POINTS];
    double[] leftLevel = new double[count];
    double[] rightLevel = new double[count];
    List<BatchUnit> units = new ArrayList<>();
    for (int u = 0; u < count; u++) {
      boolean fails = (u + 1) % failEvery == 0;
      double treble = 0.2 * random.nextGaussian() + (u >= changeFrom ? changeDb : 0);
      leftLevel[u] = 0.2 * random.nextGaussian() + (u % 2 == 1 ? secondBenchDb : 0);
      rightLevel[u] = 0.2 * random.nextGaussian();
      fill(left, u, leftLevel[u], treble + 0.05 * random.nextGaussian());
      fill(right, u, rightLevel[u], treble + 0.05 * random.nextGaussian() + (fails ? 8 : 0));
      units.add(
          new BatchUnit(
              new UUID(2, u),
              serial(u),
              u % 2 == 0 ? "bench-1" : "bench-2",
              "production",
              fails ? "FAIL" : "PASS",
              START.plusSeconds(600L * u),
              u,
              List.of()));
    }
    if (gapIn >= 0) {
      left[gapIn * Grid.POINTS + Grid.nearest(10_000)] = Float.NaN;
    }
    return new BatchCurves(
        "sedge-2",
        "plain",
        List.of(3),
        units,
        left,
        right,
        leftLevel,
        rightLevel,
        constant(GOLDEN),
        constant(GOLDEN - 2),
        constant(GOLDEN + 2),
        constant(1.5),
        List.of(new RegionSpan("bass", 20, 200), new RegionSpan("treble", 6000, 16_000)),
        "1/12 octave");
  }

  private void fill(float[] flat, int unit, double level, double treble) {
    for (int i = 0; i < Grid.POINTS; i++) {
      boolean high = Grid.label(i) >= 6000;
      double value = GOLDEN + level + (high ? treble : 0) + 0.05 * random.nextGaussian();
      flat[unit * Grid.POINTS + i] = (float) value;
    }
  }

  private static double[] constant(double value) {
    double[] all = new double[Grid.POINTS];
    Arrays.fill(all, value);
    return all;
  }
}
