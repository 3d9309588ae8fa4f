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
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Plays a batch as if it had been made on three days of last week, Monday to Wednesday, one unit
 * every twenty minutes from seven o'clock (UTC) on, in one tuning. To be played before anything of
 * today: each shift begins with calibrations of its own time.
 */
public final class EarlierDays {
  private static final String TUNING = "plain";
  private static final int DAYS = 3;
  private static final LocalTime BEGIN = LocalTime.of(7, 0);
  private static final Duration BETWEEN = Duration.ofMinutes(20);

  /** Calibrated this long before the first unit of a day. */
  private static final Duration AHEAD = Duration.ofMinutes(30);

  private static final long SEED = 1;

  private final Crew crew;
  private final LineClient service;
  private final TruthFiles truth;
  private final Clock clock;
  private final PrintStream out;

  /**
   * @param crew who works there
   * @param folder where the truth about each unit is written
   * @param clock today
   * @param out one line a day
   */
  public EarlierDays(Crew crew, Path folder, Clock clock, PrintStream out) {
    this.crew = crew;
    this.service = crew.person(Crew.ENGINEER);
    this.truth = new TruthFiles(folder);
    this.clock = clock;
    this.out = out;
  }

  /**
   * @return true if every unit came to what the truth asks for
   * @throws LineStopped if the service cannot be used
   */
  public boolean play(DemoBatch batch) {
    truth.writeBatch(batch);
    byte[] wav = service.bytes("/api/stimuli/" + Player.STIMULUS + "/audio");
    LineRecorder recorder = new LineRecorder(WavReader.read(wav).channels().get(0), SEED);
    int aDay = (batch.units().size() + DAYS - 1) / DAYS;
    boolean asItShould = true;
    for (int day = 0; day < DAYS; day++) {
      int end = Math.min(batch.units().size(), (day + 1) * aDay);
      asItShould &= day(batch, recorder, day, day * aDay, end);
    }
    return asItShould;
  }

  private boolean day(DemoBatch batch, LineRecorder recorder, int day, int from, int to) {
    List<DemoUnit> units = batch.units().subList(from, to);
    Instant begin = begin(day);
    boolean known = units.stream().allMatch(this::judged);
    List<Bench> benches =
        Bench.LINE.stream()
            .filter(bench -> bench.earSimulator() == batch.design().earSimulator())
            .toList();
    List<UnitOutcome> outcomes = new ArrayList<>();
    ExecutorService hands = Executors.newFixedThreadPool(benches.size());
    try {
      List<Future<List<UnitOutcome>>> shifts = new ArrayList<>();
      for (int b = 0; b < benches.size(); b++) {
        int place = b;
        shifts.add(
            hands.submit(() -> shift(units, place, benches, recorder, begin, !known, day == 0)));
      }
      for (Future<List<UnitOutcome>> shift : shifts) {
        outcomes.addAll(shift.get());
      }
    } catch (ExecutionException e) {
      throw e.getCause() instanceof LineStopped stopped
          ? stopped
          : new LineStopped("a bench broke down: " + e.getCause(), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new LineStopped("the line was interrupted", e);
    } finally {
      hands.shutdownNow();
    }
    outcomes.stream()
        .filter(outcome -> !asItShould(outcome))
        .forEach(outcome -> out.println("NOT AS IT SHOULD BE: " + outcome.unit().serial()));
    out.println(
        "batch %s, %s: %d pairs in %s%s"
            .formatted(
                batch.name(),
                begin.atZone(ZoneOffset.UTC).toLocalDate(),
                units.size(),
                TUNING,
                known ? " (judged before)" : ""));
    return outcomes.stream().allMatch(EarlierDays::asItShould);
  }

  private List<UnitOutcome> shift(
      List<DemoUnit> units,
      int place,
      List<Bench> benches,
      LineRecorder recorder,
      Instant begin,
      boolean calibrate,
      boolean firstDay) {
    Bench bench = benches.get(place);
    if (calibrate) {
      Clock early = Clock.fixed(begin.minus(AHEAD), ZoneOffset.UTC);
      new BenchSetUp(service, recorder, early).beginShift(bench, firstDay);
    }
    List<Cable> cables =
        ProductFile.read(units.get(0).design().product()).cables().stream()
            .filter(cable -> cable.tuning().equals(TUNING))
            .toList();
    List<UnitOutcome> outcomes = new ArrayList<>();
    for (int i = place; i < units.size(); i += benches.size()) {
      Clock then = Clock.fixed(begin.plus(BETWEEN.multipliedBy(i)), ZoneOffset.UTC);
      outcomes.add(new UnitPlayer(crew, recorder, truth, then).play(units.get(i), bench, cables));
    }
    return outcomes;
  }

  /** The unit as a whole stays incomplete, for it was sold in one tuning of several. */
  private static boolean asItShould(UnitOutcome outcome) {
    String wanted = outcome.unit().fault().expected().name();
    return outcome.tunings().stream().allMatch(tuning -> wanted.endsWith(tuning.verdict()));
  }

  private boolean judged(DemoUnit unit) {
    return service
        .find("/api/units/" + unit.serial())
        .filter(known -> !known.path("inspections").isEmpty())
        .isPresent();
  }

  /** The Tuesday in the middle lies two days back at least, so that nothing is in the future. */
  private Instant begin(int day) {
    LocalDate today = clock.instant().atZone(ZoneOffset.UTC).toLocalDate();
    LocalDate tuesday =
        today.minusDays(2).with(TemporalAdjusters.previousOrSame(DayOfWeek.TUESDAY));
    return tuesday.plusDays(day - 1L).atTime(BEGIN).toInstant(ZoneOffset.UTC);
  }
}
