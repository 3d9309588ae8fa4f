package evenpair.demo.line;

import evenpair.acoustics.Samples;
import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Fault;
import evenpair.demo.earpiece.Mounting;
import evenpair.demo.earpiece.Seeds;
import evenpair.demo.earpiece.Sides;
import evenpair.tolerance.Channel;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/**
 * Mounts pairs on benches and records them. The same seed, unit, bench, tuning and try give the
 * same bytes.
 */
public final class LineRecorder {
  private static final double LEAK_HZ = 90;
  private static final double BENT_NOZZLE_HZ = 120;

  /** The length mode lies that much higher: 1.3 mm less of some 10 mm. */
  private static final double TOO_DEEP = 0.15;

  /** The cable without signal processing. */
  public static final Cable PLAIN = Cable.plain("plain", true);

  private final Recorder recorder;
  private final int rateHz;
  private final long seed;

  /**
   * @param stimulus the very signal that the service hands out, at a whole-numbered sample rate
   */
  public LineRecorder(Samples stimulus, long seed) {
    this.recorder = new Recorder(stimulus, Take.LATEST_START_SECONDS);
    this.rateHz = (int) stimulus.rateHz();
    this.seed = seed;
  }

  /**
   * Both channels of one mounting.
   *
   * @param left mono WAV
   * @param right mono WAV
   * @param idle the same two while nothing plays, if the cable could make a noise
   * @param leftMounting the truth about how the left earpiece sat
   * @param rightMounting the same of the right one
   * @param take the truth about the recording
   */
  public record PairCapture(
      byte[] left,
      byte[] right,
      Optional<Idle> idle,
      Mounting leftMounting,
      Mounting rightMounting,
      Take take) {}

  /** Both channels while nothing plays: mono WAVs. */
  public record Idle(byte[] left, byte[] right) {}

  /**
   * Mounts and records a unit for one tuning. A bad seat and a bad capture befall the first try of
   * the plain cable only: the second mounting is a careful one. A nozzle that never seals leaks
   * whatever one does.
   *
   * @param attempt 1 upwards
   */
  public PairCapture inspect(DemoUnit unit, Bench bench, Cable cable, int attempt) {
    boolean mishap = attempt == 1 && cable.plain();
    RandomGenerator random = stream(unit.serial(), bench.name(), cable.tuning(), attempt);
    Mounting left = mounting(unit, Channel.LEFT, mishap, random);
    Mounting right = mounting(unit, Channel.RIGHT, mishap, random);
    Take take = Take.on(bench, mishap ? Take.Flaw.of(unit.fault()) : Take.Flaw.NONE, random);
    PairCapture capture = record(bench, unit.sides(), cable, left, right, take, random);
    return cable.plain() ? capture : withIdle(capture, bench, unit, cable, attempt);
  }

  /** The noise has a stream of its own, so that it moves nothing else. */
  private PairCapture withIdle(
      PairCapture capture, Bench bench, DemoUnit unit, Cable cable, int attempt) {
    RandomGenerator random = stream(unit.serial(), bench.name(), cable.tuning(), attempt, "idle");
    Idle idle = idle(bench, cable.hum(unit.fault() == Fault.USB_FRAME_NOISE), random);
    return new PairCapture(
        capture.left(),
        capture.right(),
        Optional.of(idle),
        capture.leftMounting(),
        capture.rightMounting(),
        capture.take());
  }

  /**
   * @return both microphones with nothing connected: the bench's own floor
   */
  public Idle idle(Bench bench) {
    return idle(bench, Hum.NONE, stream("idle", bench.name()));
  }

  private Idle idle(Bench bench, Hum hum, RandomGenerator random) {
    return new Idle(
        recorder.idle(bench, Channel.LEFT, hum, random),
        recorder.idle(bench, Channel.RIGHT, hum, random));
  }

  /**
   * One seating of the reference pair.
   *
   * @param swapped true: the earpiece marked left sits on the bench's right simulator
   */
  public PairCapture reference(DemoUnit reference, Bench bench, boolean swapped, int seating) {
    RandomGenerator random =
        stream(reference.serial(), bench.name(), swapped ? "swapped" : "as marked", seating);
    Sides sides = swapped ? reference.sides().swapped() : reference.sides();
    Take take = Take.on(bench, Take.Flaw.NONE, random);
    Mounting left = Mounting.careful(random);
    Mounting right = Mounting.careful(random);
    return record(bench, sides, PLAIN, left, right, take, random);
  }

  /** One measurement of a gauge study: a careful seating by one operator. */
  public PairCapture gauge(DemoUnit part, Bench bench, String operator, int seating) {
    RandomGenerator random = stream("gauge", part.serial(), bench.name(), operator, seating);
    Take take = Take.on(bench, Take.Flaw.NONE, random);
    Mounting left = Mounting.careful(random);
    Mounting right = Mounting.careful(random);
    return record(bench, part.sides(), PLAIN, left, right, take, random);
  }

  /**
   * One recording of a pair on the plain cable, seated as told.
   *
   * @param what names the recording, with its number, so that its noise is its own
   */
  public PairCapture seated(
      Sides sides, Bench bench, Mounting left, Mounting right, String what, int number) {
    RandomGenerator random = stream("seated", bench.name(), what, number);
    Take take = Take.on(bench, Take.Flaw.NONE, random);
    return record(bench, sides, PLAIN, left, right, take, random);
  }

  /**
   * @return the calibrator's tone on one of the bench's microphones
   */
  public byte[] tone(Bench bench, Channel channel) {
    return Calibrator.tone(bench, channel, rateHz, stream("tone", bench.name(), channel, 1));
  }

  private PairCapture record(
      Bench bench,
      Sides sides,
      Cable cable,
      Mounting left,
      Mounting right,
      Take take,
      RandomGenerator random) {
    return new PairCapture(
        recorder.record(bench, Channel.LEFT, sides.left(), cable, left, take, random),
        recorder.record(bench, Channel.RIGHT, sides.right(), cable, right, take, random),
        Optional.empty(),
        left,
        right,
        take);
  }

  private static Mounting mounting(
      DemoUnit unit, Channel side, boolean mishap, RandomGenerator random) {
    Mounting mounting = Mounting.careful(random);
    if (unit.side() != side) {
      return mounting;
    }
    return switch (unit.fault()) {
      case NEVER_SEALS -> mounting.leaking(BENT_NOZZLE_HZ);
      case LEAKY_SEAT -> mishap ? mounting.leaking(LEAK_HZ) : mounting;
      case DEEP_SEAT -> mishap ? mounting.deeper(TOO_DEEP) : mounting;
      default -> mounting;
    };
  }

  private SplittableRandom stream(Object... words) {
    return new SplittableRandom(Seeds.of(seed, words));
  }
}
