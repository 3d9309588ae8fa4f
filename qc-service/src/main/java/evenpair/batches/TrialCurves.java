package evenpair.batches;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.Trials.Prepared;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.products.Products;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.PairTable;
import evenpair.web.Refusal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Recorded units in one binary answer, for a screen that tries limits by itself. */
@Component
class TrialCurves {
  /** 58 MB of curves: more than a page needs to show, and as much as one should fetch. */
  private static final int MOST_UNITS = 20_000;

  private final JsonMapper mapper;
  private final Trials trials;
  private final Products products;

  TrialCurves(JsonMapper mapper, Trials trials, Products products) {
    this.mapper = mapper;
    this.trials = trials;
    this.products = products;
  }

  /**
   * @param limitSet the one that the curves are laid on
   * @param units in production order
   * @param groups what measurements are worth; units name theirs by its place
   */
  record Head(
      String product,
      String tuning,
      int points,
      int rows,
      double[] frequencyHz,
      double[] label,
      TrialJson.TriedSet limitSet,
      List<HeadUnit> units,
      List<HeadGroup> groups) {}

  /**
   * @param row of its curves; −1 without any
   * @param otherwise why nothing but its level, balance, windows and match is not enough: {@code
   *     fails} (another check failed), {@code tuning} (plays another tuning), {@code open} (another
   *     check came to no result); null if nothing is in the way
   * @param alike false: recorded by a set that asked other things of the other checks, so that only
   *     a trial at the service can tell
   */
  record HeadUnit(
      UUID inspection,
      String serial,
      String batch,
      String station,
      String verdict,
      int row,
      int group,
      Double left,
      Double right,
      String otherwise,
      boolean alike) {}

  /**
   * @param level standard uncertainty by grid point, dB; null: nothing is known
   */
  record HeadGroup(String station, double[] level, double[] match, Double offset, Double balance) {}

  byte[] of(Prepared prepared) {
    TrialUnits units = prepared.units();
    if (units.units().size() > MOST_UNITS) {
      throw new Refusal(
              422,
              "too-many-units",
              "These are %d units; a page takes at most %d. Choose fewer batches or a shorter time."
                  .formatted(units.units().size(), MOST_UNITS))
          .with("expected", "at most " + MOST_UNITS + " units");
    }
    byte[] head = padded(mapper.writeValueAsString(head(prepared)));
    PairTable table = units.table();
    ByteBuffer bytes =
        ByteBuffer.allocate(4 + head.length + 3 * 4 * Grid.POINTS * table.rows())
            .order(ByteOrder.LITTLE_ENDIAN);
    bytes.putInt(head.length).put(head);
    for (Channel channel : Channel.values()) {
      put(bytes, table, (row, point) -> table.deviation(row, channel, point));
    }
    put(bytes, table, table::difference);
    return bytes.array();
  }

  private interface At {
    float value(int row, int point);
  }

  private static void put(ByteBuffer bytes, PairTable table, At at) {
    for (int row = 0; row < table.rows(); row++) {
      for (int point = 0; point < Grid.POINTS; point++) {
        bytes.putFloat(at.value(row, point));
      }
    }
  }

  private static byte[] padded(String json) {
    byte[] text = json.getBytes(StandardCharsets.UTF_8);
    byte[] padded = Arrays.copyOf(text, (text.length + 3) / 4 * 4);
    Arrays.fill(padded, text.length, padded.length, (byte) ' ');
    return padded;
  }

  private Head head(Prepared prepared) {
    TrialUnits units = prepared.units();
    LimitSet set = prepared.set().set();
    double[] labels = new double[Grid.POINTS];
    Arrays.setAll(labels, Grid::label);
    return new Head(
        set.product(),
        set.tuning(),
        Grid.POINTS,
        units.table().rows(),
        Grid.frequencies(),
        labels,
        trials.tried(prepared.set()),
        IntStream.range(0, units.units().size()).mapToObj(u -> unit(prepared, u)).toList(),
        units.groups().stream().map(group -> group(prepared, group)).toList());
  }

  private HeadUnit unit(Prepared prepared, int u) {
    TrialUnits units = prepared.units();
    RecordedUnit unit = units.units().get(u);
    int row = units.row()[u];
    return new HeadUnit(
        unit.inspection(),
        unit.serial(),
        unit.batch(),
        unit.station(),
        unit.verdict(),
        row,
        units.groups().indexOf(new TrialUnits.Group(unit.station(), unit.uncertainty())),
        row < 0 ? null : finite(units.table().alignment(row, Channel.LEFT)),
        row < 0 ? null : finite(units.table().alignment(row, Channel.RIGHT)),
        otherwise(unit),
        Trial.alike(products.limitSet(unit.limitSetId()), prepared.set()));
  }

  private static String otherwise(RecordedUnit unit) {
    if (TrialUnits.failsOtherwise(unit)) {
      return "fails";
    }
    if (unit.undecided()) {
      return "open";
    }
    return TrialUnits.playsOtherTuning(unit) ? "tuning" : null;
  }

  private static HeadGroup group(Prepared prepared, TrialUnits.Group group) {
    return prepared
        .worth()
        .of(group)
        .map(
            u ->
                new HeadGroup(
                    group.station(),
                    array(u.levelDb()),
                    array(u.matchDb()),
                    u.offsetDb(),
                    u.balanceDb()))
        .orElseGet(() -> new HeadGroup(group.station(), null, null, null, null));
  }

  private static double[] array(Curve curve) {
    return curve.toArray();
  }

  private static Double finite(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }
}
