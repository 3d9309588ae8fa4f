package evenpair.demo.player;

import evenpair.captures.WavReader;
import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.line.Bench;
import evenpair.demo.line.Cable;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.line.LineRecorder;
import evenpair.demo.line.ProductFile;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * The simulated line: prepares its benches, then takes batches through them, each bench at its own
 * pace. Everything goes through the HTTP API; what the service has judged before is left as it is.
 */
public final class Player {
  /** The stimulus that the line plays. */
  static final String STIMULUS = "default";

  private static final long SEED = 1;
  private static final Duration PATIENCE = Duration.ofMinutes(2);

  private final Crew crew;
  private final LineClient service;
  private final TruthFiles truth;
  private final Clock clock;
  private final PrintStream out;
  private final int benchesAtOnce;

  /**
   * All benches work at once.
   *
   * @param crew who works there
   * @param folder where the truth about each unit is written
   * @param out progress and tables
   */
  public Player(Crew crew, Path folder, Clock clock, PrintStream out) {
    this(crew, folder, clock, out, Bench.LINE.size());
  }

  /**
   * @param benchesAtOnce how many benches work at the same time, 1 to the number of benches
   */
  public Player(Crew crew, Path folder, Clock clock, PrintStream out, int benchesAtOnce) {
    if (benchesAtOnce < 1 || benchesAtOnce > Bench.LINE.size()) {
      throw new IllegalArgumentException(
          "there are 1 to %d benches, not %d".formatted(Bench.LINE.size(), benchesAtOnce));
    }
    this.benchesAtOnce = benchesAtOnce;
    this.crew = crew;
    this.service = crew.person(Crew.ENGINEER);
    this.truth = new TruthFiles(folder);
    this.clock = clock;
    this.out = out;
  }

  /**
   * Plays batches, every bench at its own pace, and prints what they came to.
   *
   * @return what happened, for callers that check it
   * @throws LineStopped if the service cannot be used
   */
  public Summary play(List<DemoBatch> batches) {
    service.awaitHealth(PATIENCE);
    LineRecorder recorder = recorder();
    prepareBenches(recorder, batches);
    List<UnitOutcome> outcomes = playAll(batches, recorder);
    Tables.verdicts(outcomes, out);
    return Summary.print(outcomes, out);
  }

  /**
   * Leaves the captures of a batch that is not played as files, for trying the Bench screen by
   * hand.
   */
  public Path leaveCaptures(DemoBatch batch) {
    LineRecorder recorder = recorder();
    Bench bench = benchesOf(batch).get(0);
    truth.writeBatch(batch);
    for (DemoUnit unit : batch.units()) {
      truth.writeUnit(unit);
      for (Cable cable : ProductFile.read(batch.design().product()).cables()) {
        LineRecorder.PairCapture capture = recorder.inspect(unit, bench, cable, 1);
        truth.noteCapture(unit, bench, cable, 1, capture);
        truth.writeCapture(unit, cable, capture);
      }
    }
    return truth.folder().resolve(batch.name());
  }

  /** Plays the very signal that the service hands out, not one made up here. */
  private LineRecorder recorder() {
    byte[] wav = service.bytes("/api/stimuli/" + STIMULUS + "/audio");
    return new LineRecorder(WavReader.read(wav).channels().get(0), SEED);
  }

  private void prepareBenches(LineRecorder recorder, List<DemoBatch> batches) {
    BenchSetUp setUp = new BenchSetUp(service, recorder, clock);
    for (Bench bench : Bench.LINE) {
      if (batches.stream().anyMatch(batch -> benchesOf(batch).contains(bench))) {
        List<String> done = setUp.prepare(bench);
        out.println(
            bench.name()
                + " ("
                + bench.earSimulator().label()
                + "): "
                + (done.isEmpty() ? "ready, nothing to do" : String.join("; ", done)));
      }
    }
  }

  /** Each bench takes its own units, one after the other, whatever batch they are of. */
  private List<UnitOutcome> playAll(List<DemoBatch> batches, LineRecorder recorder) {
    batches.forEach(this::announce);
    UnitPlayer player = new UnitPlayer(crew, recorder, truth, clock);
    ExecutorService hands = Executors.newFixedThreadPool(benchesAtOnce);
    try {
      List<Future<List<UnitOutcome>>> shares = new ArrayList<>();
      for (Bench bench : Bench.LINE) {
        List<Task> tasks = tasks(bench, batches);
        if (!tasks.isEmpty()) {
          shares.add(hands.submit(() -> tasks.stream().map(task -> played(player, task)).toList()));
        }
      }
      return inOrder(batches, shares);
    } finally {
      hands.shutdownNow();
    }
  }

  private void announce(DemoBatch batch) {
    truth.writeBatch(batch);
    int cables = ProductFile.read(batch.design().product()).cables().size();
    int benches = benchesOf(batch).size();
    out.println(
        "batch "
            + batch.name()
            + ": "
            + batch.units().size()
            + " pairs of "
            + batch.design().product()
            + ", "
            + cables
            + " tuning"
            + (cables == 1 ? "" : "s")
            + ", on "
            + benches
            + " bench"
            + (benches == 1 ? "" : "es"));
  }

  /** A unit on the bench that it falls to. */
  private record Task(DemoUnit unit, Bench bench, List<Cable> cables) {}

  private static List<Task> tasks(Bench bench, List<DemoBatch> batches) {
    List<Task> tasks = new ArrayList<>();
    for (DemoBatch batch : batches) {
      List<Bench> benches = benchesOf(batch);
      int place = benches.indexOf(bench);
      if (place >= 0) {
        List<Cable> cables = ProductFile.read(batch.design().product()).cables();
        share(batch, place, benches.size())
            .forEach(unit -> tasks.add(new Task(unit, bench, cables)));
      }
    }
    return tasks;
  }

  private UnitOutcome played(UnitPlayer player, Task task) {
    UnitOutcome outcome = player.play(task.unit(), task.bench(), task.cables());
    out.println(
        "  "
            + task.bench().name()
            + "  "
            + task.unit().serial()
            + "  "
            + outcome.verdict()
            + (outcome.sent() == 0 ? "  (judged before)" : ""));
    return outcome;
  }

  private static List<DemoUnit> share(DemoBatch batch, int bench, int benches) {
    List<DemoUnit> share = new ArrayList<>();
    for (int i = bench; i < batch.units().size(); i += benches) {
      share.add(batch.units().get(i));
    }
    return share;
  }

  /** By batch as they were given, then by serial number, whichever bench was first. */
  private static List<UnitOutcome> inOrder(
      List<DemoBatch> batches, List<Future<List<UnitOutcome>>> shares) {
    List<UnitOutcome> all = new ArrayList<>();
    for (Future<List<UnitOutcome>> share : shares) {
      try {
        all.addAll(share.get());
      } catch (ExecutionException e) {
        throw e.getCause() instanceof LineStopped stopped
            ? stopped
            : new LineStopped("a bench broke down: " + e.getCause(), e);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new LineStopped("the line was interrupted", e);
      }
    }
    List<String> names = batches.stream().map(DemoBatch::name).toList();
    all.sort(
        Comparator.comparing((UnitOutcome outcome) -> names.indexOf(outcome.unit().batch()))
            .thenComparing(outcome -> outcome.unit().serial()));
    return all;
  }

  private static List<Bench> benchesOf(DemoBatch batch) {
    return Bench.LINE.stream()
        .filter(bench -> bench.earSimulator() == batch.design().earSimulator())
        .toList();
  }
}
