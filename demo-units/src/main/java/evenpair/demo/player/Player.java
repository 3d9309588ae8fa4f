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

  /**
   * @param crew who works there
   * @param folder where the truth about each unit is written
   * @param out progress and tables
   */
  public Player(Crew crew, Path folder, Clock clock, PrintStream out) {
    this.crew = crew;
    this.service = crew.person(Crew.ENGINEER);
    this.truth = new TruthFiles(folder);
    this.clock = clock;
    this.out = out;
  }

  /**
   * Plays batches one after the other and prints what they came to.
   *
   * @return what happened, for callers that check it
   * @throws LineStopped if the service cannot be used
   */
  public Summary play(List<DemoBatch> batches) {
    service.awaitHealth(PATIENCE);
    LineRecorder recorder = recorder();
    prepareBenches(recorder, batches);
    List<UnitOutcome> outcomes = new ArrayList<>();
    for (DemoBatch batch : batches) {
      outcomes.addAll(play(batch, recorder));
    }
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

  private List<UnitOutcome> play(DemoBatch batch, LineRecorder recorder) {
    truth.writeBatch(batch);
    List<Bench> benches = benchesOf(batch);
    List<Cable> cables = ProductFile.read(batch.design().product()).cables();
    out.println(
        "batch "
            + batch.name()
            + ": "
            + batch.units().size()
            + " pairs of "
            + batch.design().product()
            + ", "
            + cables.size()
            + " tuning"
            + (cables.size() == 1 ? "" : "s")
            + ", on "
            + benches.size()
            + " bench"
            + (benches.size() == 1 ? "" : "es"));
    UnitPlayer player = new UnitPlayer(crew, recorder, truth, clock);
    ExecutorService hands = Executors.newFixedThreadPool(benches.size());
    try {
      List<Future<List<UnitOutcome>>> shares = new ArrayList<>();
      for (int b = 0; b < benches.size(); b++) {
        Bench bench = benches.get(b);
        List<DemoUnit> share = share(batch, b, benches.size());
        shares.add(
            hands.submit(
                () -> share.stream().map(unit -> played(player, unit, bench, cables)).toList()));
      }
      return inOrder(batch, shares);
    } finally {
      hands.shutdownNow();
    }
  }

  private UnitOutcome played(UnitPlayer player, DemoUnit unit, Bench bench, List<Cable> cables) {
    UnitOutcome outcome = player.play(unit, bench, cables);
    out.println(
        "  "
            + bench.name()
            + "  "
            + unit.serial()
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

  private static List<UnitOutcome> inOrder(
      DemoBatch batch, List<Future<List<UnitOutcome>>> shares) {
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
    all.sort(Comparator.comparing(outcome -> outcome.unit().serial()));
    return all;
  }

  private static List<Bench> benchesOf(DemoBatch batch) {
    return Bench.LINE.stream()
        .filter(bench -> bench.earSimulator() == batch.design().earSimulator())
        .toList();
  }
}
