package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.Verdict;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** Reads recorded units by plain JDBC, and judges them again a few hundred at a time. */
@Component
class StoredUnits implements RecordedUnits {
  private static final int CHUNK = 250;
  private static final int FETCH = 500;

  /** Stands where a verdict names the studies of its uncertainty; a trial's is not stored. */
  private static final UUID NO_STUDY = new UUID(0, 0);

  private static final String LEVELS =
      "select i.id, c.channel, c.level_db from inspection i join attempt a on a.inspection_id ="
          + " i.id and a.valid join attempt_channel c on c.attempt_id = a.id where "
          + UnitQuery.CLOSED
          + " order by i.started_at, i.id, c.channel, a.number";

  private final JdbcTemplate jdbc;
  private final TransactionTemplate reading;
  private final InspectionFiles files;
  private final Products products;

  StoredUnits(
      JdbcTemplate jdbc,
      TransactionTemplate transactions,
      InspectionFiles files,
      Products products) {
    this.jdbc = jdbc;
    this.reading = new TransactionTemplate(transactions.getTransactionManager());
    this.reading.setReadOnly(true);
    this.files = files;
    this.products = products;
  }

  @Override
  public List<RecordedUnit> find(Which which) {
    RecordedUnitReader reader = new RecordedUnitReader(products);
    return jdbc.query(
        RecordedUnitReader.SELECT + UnitQuery.CLOSED + " order by i.started_at, i.id",
        (row, n) -> reader.unit(row),
        UnitQuery.values(which));
  }

  @Override
  public long count(Which which) {
    return jdbc.queryForObject(
        "select count(*) from inspection i where " + UnitQuery.CLOSED,
        Long.class,
        UnitQuery.values(which));
  }

  /** In a transaction, because without one the driver would fetch every row at once. */
  @Override
  public void levels(Which which, LevelTaker taker) {
    reading.executeWithoutResult(
        status -> {
          Pairing pairing = new Pairing(taker);
          Seatings seatings = new Seatings(pairing);
          JdbcTemplate streaming = new JdbcTemplate(jdbc.getDataSource());
          streaming.setFetchSize(FETCH);
          streaming.query(
              LEVELS,
              row -> {
                seatings.add(
                    row.getObject(1, UUID.class),
                    Channel.valueOf(row.getString(2)),
                    floats(row, 3));
              },
              UnitQuery.values(which));
          seatings.end();
        });
  }

  /** Left comes before right, in the order of their names. */
  private static final class Pairing implements Seatings.Taker {
    private final LevelTaker taker;
    private Curve left;

    Pairing(LevelTaker taker) {
      this.taker = taker;
    }

    @Override
    public void take(UUID inspection, Channel channel, List<float[]> levels) {
      Curve mean = Combination.level(levels);
      if (channel == Channel.LEFT) {
        left = mean;
      } else {
        taker.take(inspection, left, mean);
      }
    }
  }

  @Override
  public Map<UUID, Judgement> again(Collection<RecordedUnit> units) {
    return replay(units, recorded -> unit -> recorded);
  }

  @Override
  public Map<UUID, Judgement> by(StoredLimitSet set, Collection<RecordedUnit> units, Worth worth) {
    boolean guarded = set.set().decision().guarded();
    return replay(
        units,
        recorded ->
            unit ->
                new Judging(
                    set,
                    guarded
                        ? worth.of(unit).map(u -> UsedUncertainty.of(NO_STUDY, u))
                        : Optional.empty(),
                    recorded.others()));
  }

  private Map<UUID, Judgement> replay(
      Collection<RecordedUnit> units, Function<Judging, Function<RecordedUnit, Judging>> how) {
    Map<UUID, Judgement> judged = new LinkedHashMap<>();
    List<RecordedUnit> all = List.copyOf(units);
    for (int from = 0; from < all.size(); from += CHUNK) {
      List<RecordedUnit> chunk = all.subList(from, Math.min(all.size(), from + CHUNK));
      reading.executeWithoutResult(status -> judged.putAll(chunk(chunk, how)));
    }
    return judged;
  }

  private Map<UUID, Judgement> chunk(
      List<RecordedUnit> units, Function<Judging, Function<RecordedUnit, Judging>> how) {
    List<UUID> ids =
        units.stream().filter(RecordedUnit::measured).map(RecordedUnit::inspection).toList();
    Map<UUID, List<StoredPair>> seatings = files.validSeatings(ids);
    Map<UUID, Judging> recorded = files.judgings(ids);
    Map<UUID, Judgement> judged = new LinkedHashMap<>();
    for (RecordedUnit unit : units) {
      UUID id = unit.inspection();
      judged.put(
          id,
          unit.measured()
              ? how.apply(recorded.get(id)).apply(unit).judge(seatings.get(id))
              : asRecorded(unit));
    }
    return judged;
  }

  private static Judgement asRecorded(RecordedUnit unit) {
    return new Judgement(
        Verdict.valueOf(unit.verdict()), unit.reasons(), new ArrayList<>(), null, null);
  }

  private static float[] floats(ResultSet row, int column) throws SQLException {
    Float[] boxed = (Float[]) row.getArray(column).getArray();
    float[] values = new float[boxed.length];
    for (int i = 0; i < boxed.length; i++) {
      values[i] = boxed[i];
    }
    return values;
  }
}
