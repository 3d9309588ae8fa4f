package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.FlatJudge;
import evenpair.tolerance.FlatJudge.Outcome;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.PairTable;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import evenpair.tolerance.Uncertainty;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.json.JsonMapper;

/**
 * The page's own trial against the service's, over the same random pairs and limits: what the
 * worker runs is run here, in the browser, from the files that are served.
 */
@BrowserTest
class ReplayParityTests {
  private static final int PAIRS = 240;
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final GoldenResponse GOLDEN =
      new GoldenResponse(Curve.from(hz -> 100), Optional.empty());

  private Screen screen;

  @BeforeEach
  void open(Screen given) {
    screen = given;
    screen.open("#/batch");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9})
  void pageAndServiceComeToTheSame(long seed) {
    Random random = new Random(seed);
    LimitSet set = set(random);
    List<Optional<Uncertainty>> worth =
        List.of(Optional.of(uncertainty(random)), Optional.of(uncertainty(random)));
    PairTable table = table(set, random);

    FlatJudge judge = new FlatJudge(set, GOLDEN, worth);
    Outcome expected = judge.judge(table);
    Map<?, ?> found = inBrowser(set, table, worth);

    List<Integer> verdicts =
        ((List<?>) found.get("verdicts")).stream().map(ReplayParityTests::whole).toList();
    for (int row = 0; row < PAIRS; row++) {
      if (expected.state[row] != Outcome.NEAR) {
        assertThat(verdicts.get(row)).as("row %d", row).isEqualTo(Math.min(2, expected.state[row]));
      }
    }
    int near =
        (int) IntStream.range(0, PAIRS).filter(r -> expected.state[r] == Outcome.NEAR).count();
    // A margin lies within 1e-4 dB of 0 in about one pair of a thousand.
    assertThat(near).isLessThan(5);
    if (near == 0) {
      List<Integer> counts =
          ((List<?>) found.get("checks")).stream().map(ReplayParityTests::whole).toList();
      assertThat(counts).isEqualTo(Arrays.stream(expected.failures).boxed().toList());
    }
  }

  private static int whole(Object number) {
    return ((Number) number).intValue();
  }

  private Map<?, ?> inBrowser(LimitSet set, PairTable table, List<Optional<Uncertainty>> worth) {
    String bytes = Base64.getEncoder().encodeToString(binary(table, worth));
    return (Map<?, ?>)
        screen.evaluate(
            """
            async () => {
              const m = await import('/js/limits/replay.js')
              const bytes = Uint8Array.from(atob('%s'), (c) => c.charCodeAt(0))
              const outcome = new m.Replay(m.decode(bytes.buffer)).outcome(%s)
              return { verdicts: [...outcome.verdicts], checks: outcome.checks.map((check) => check.units) }
            }
            """
                .formatted(bytes, JSON.writeValueAsString(tree(set))));
  }

  /** As the service lays it out. */
  private static byte[] binary(PairTable table, List<Optional<Uncertainty>> worth) {
    double[] labels = new double[Grid.POINTS];
    Arrays.setAll(labels, Grid::label);
    List<Map<String, Object>> units = new ArrayList<>();
    for (int row = 0; row < PAIRS; row++) {
      Map<String, Object> unit = new LinkedHashMap<>();
      unit.put("row", row);
      unit.put("group", row % 2);
      unit.put("verdict", "PASS");
      unit.put("left", finite(table.alignment(row, Channel.LEFT)));
      unit.put("right", finite(table.alignment(row, Channel.RIGHT)));
      unit.put("otherwise", null);
      unit.put("alike", true);
      units.add(unit);
    }
    List<Map<String, Object>> groups =
        worth.stream()
            .map(Optional::orElseThrow)
            .map(
                u ->
                    Map.<String, Object>of(
                        "level",
                        u.levelDb().toArray(),
                        "match",
                        u.matchDb().toArray(),
                        "offset",
                        u.offsetDb(),
                        "balance",
                        u.balanceDb()))
            .toList();
    String head =
        JSON.writeValueAsString(
            Map.of(
                "points", Grid.POINTS,
                "rows", PAIRS,
                "frequencyHz", Grid.frequencies(),
                "label", labels,
                "units", units,
                "groups", groups));
    byte[] text = head.getBytes(StandardCharsets.UTF_8);
    int length = (text.length + 3) / 4 * 4;
    ByteBuffer bytes =
        ByteBuffer.allocate(4 + length + 12 * Grid.POINTS * PAIRS).order(ByteOrder.LITTLE_ENDIAN);
    bytes.putInt(length).put(text);
    while (bytes.position() < 4 + length) {
      bytes.put((byte) ' ');
    }
    for (Channel channel : Channel.values()) {
      for (int at = 0; at < PAIRS * Grid.POINTS; at++) {
        bytes.putFloat(table.deviation(at / Grid.POINTS, channel, at % Grid.POINTS));
      }
    }
    for (int at = 0; at < PAIRS * Grid.POINTS; at++) {
      bytes.putFloat(table.difference(at / Grid.POINTS, at % Grid.POINTS));
    }
    return bytes.array();
  }

  private static Double finite(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }

  private static PairTable table(LimitSet set, Random random) {
    PairTable table = new PairTable(set, GOLDEN);
    for (int row = 0; row < PAIRS; row++) {
      table.add(row % 2, curve(random), curve(random));
    }
    return table;
  }

  /** An offset, a slow wave, some roughness; one in twelve ends at 14 kHz. */
  private static Curve curve(Random random) {
    double offset = 0.3 * random.nextGaussian();
    double wave = 0.4 * random.nextGaussian();
    double cycles = 0.5 + 3 * random.nextDouble();
    boolean ends = random.nextInt(12) == 0;
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      db[i] = 100 + offset + wave * Math.sin(cycles * i / 38) + 0.12 * random.nextGaussian();
      if (ends && Grid.hz(i) > 14_000) {
        db[i] = Double.NaN;
      }
    }
    return Curve.of(db);
  }

  private static Uncertainty uncertainty(Random random) {
    double u = 0.05 + 0.1 * random.nextDouble();
    Curve curve = Curve.from(hz -> u * (1 + hz / 40_000));
    return new Uncertainty(curve, curve, u, u);
  }

  private static double limit(Random random) {
    return Math.rint((1 + random.nextDouble()) * 10) / 10;
  }

  private static LimitSet set(Random random) {
    int rule = random.nextInt(3);
    List<Region> regions =
        List.of(
            region("bass", 20, 200, random, false, true),
            region("mid", 200, 6000, random, true, true),
            region("treble", 6000, 16_000, random, true, random.nextBoolean()));
    return new LimitSet(
        "sedge-2",
        "plain",
        1,
        EarSimulator.IEC_60318_4,
        "plain-golden.csv",
        new Drive.Voltage(180),
        Smoothing.TWELFTH_OCTAVE,
        new LimitSet.LevelLimit(new Band(300, 3000), -limit(random), limit(random), 1.2),
        regions,
        List.of(),
        false,
        OptionalDouble.empty(),
        30,
        new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)),
        0.5,
        new LimitSet.DecisionRule(rule > 0, rule > 0 ? 1 : 0, rule == 1));
  }

  private static Region region(
      String name, double from, double to, Random random, boolean sloped, boolean required) {
    double lower = -limit(random);
    double upper = limit(random);
    Span down = new Span(lower, sloped ? lower - 1 : lower);
    Span up = new Span(upper, sloped ? upper + 0.5 : upper);
    Optional<Span> match =
        random.nextInt(4) == 0 ? Optional.empty() : Optional.of(Span.constant(limit(random)));
    return new Region(name, new Band(from, to), down, up, match, required);
  }

  private static Map<String, Object> tree(LimitSet set) {
    Map<String, Object> level =
        Map.of(
            "band-hz", List.of(300, 3000),
            "tolerance-db", List.of(set.level().lowest(), set.level().highest()),
            "balance-db", set.level().balanceDb());
    Map<String, Object> decision = new LinkedHashMap<>();
    decision.put("rule", set.decision().guarded() ? "guarded" : "simple");
    if (set.decision().guarded()) {
      decision.put("guard", set.decision().guard());
      decision.put(
          "conditional-pass", set.decision().acceptConditionalPass() ? "accept" : "refuse");
    }
    return Map.of(
        "level", level,
        "decision", decision,
        "regions", set.regions().stream().map(ReplayParityTests::tree).toList());
  }

  private static Map<String, Object> tree(Region region) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", region.name());
    tree.put("hz", List.of(region.band().fromHz(), region.band().toHz()));
    tree.put(
        "window-db",
        List.of(
            List.of(region.lower().start(), region.upper().start()),
            List.of(region.lower().end(), region.upper().end())));
    region.match().ifPresent(match -> tree.put("match-db", match.start()));
    tree.put("required", region.required());
    return tree;
  }
}
