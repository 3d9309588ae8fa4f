package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.TestLine.Reply;
import evenpair.tolerance.Judgement;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * What is kept: enough to judge again, out of reach of later changes, the same through every door.
 */
@InspectionTest
class RecordTests {
  private static final String STATION = "bench-k";
  private static final String BATCH = "FB-KEPT";

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  @Autowired private TransactionTemplate transactions;
  @Autowired private Inspections inspections;
  @Autowired private InspectionFiles files;
  @Autowired private VerdictRows verdicts;
  private TestLine line;
  private UUID passed;
  private UUID failed;
  private UUID twice;

  @BeforeAll
  void batch() {
    line = new TestLine(port);
    line.makeStation(STATION);
    passed = inspect("FE-K1", "plain", "", 1, 0);
    failed = inspect("FE-K2", "plain", "", 3, 6);
    inspect("FE-K3", "twice", "", 5, 1);
    twice = inspect("FE-K3", "twice", ", \"seating\": 2", 7, 2);
  }

  private UUID inspect(String serial, String tuning, String more, long seed, double trebleDb) {
    String json = TestLine.inspection(serial, tuning, STATION, more).replace("FB-1", BATCH);
    byte[] left =
        TestSound.wav(
            TestSound.capture(seed, TestSound.peak(3000, 6), TestSound.peak(9000, trebleDb)));
    byte[] right = TestSound.wav(TestSound.capture(seed + 1, TestSound.peak(3000, 6)));
    Reply reply = line.inspect(json, left, right);
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
    return UUID.fromString(reply.text("id"));
  }

  @Test
  void judgingTheStoredFloatsAgainGivesTheSameBytes() {
    for (UUID id : List.of(passed, failed, twice)) {
      transactions.executeWithoutResult(
          status -> {
            InspectionFile file = files.find(id).orElseThrow();
            Judgement again = files.judging(file.row()).judge(files.validSeatings(id));
            VerdictRow stored = verdicts.findByInspectionId(id).orElseThrow();
            // The JSON column keeps numbers exactly but not spacing; written again it must be the
            // same bytes.
            assertThat(RecordJson.write(RecordJson.read(stored.reasons())))
                .isEqualTo(RecordJson.write(again.reasons()));
            assertThat(RecordJson.write(RecordJson.readRegions(stored.regions())))
                .isEqualTo(RecordJson.write(again.results()));
            assertThat(stored.leftAlignmentDb()).isEqualTo(again.leftLevelDb());
            assertThat(stored.verdict().name()).isEqualTo(again.verdict().name());
          });
    }
  }

  @Test
  void theBatchHoldsTheVeryCurvesThatWereJudged() {
    for (String tuning : List.of("plain", "twice")) {
      BatchCurves batch = inspections.batchCurves(BATCH, "fern-1", tuning, null);
      for (BatchUnit unit : batch.units()) {
        JudgedCurves judged = inspections.curves(unit.inspection()).orElseThrow();
        float[] row =
            Arrays.copyOfRange(
                batch.left(), unit.row() * Grid.POINTS, (unit.row() + 1) * Grid.POINTS);
        assertThat(row).containsExactly(Curve.of(judged.left()).toFloats());
        float[] right =
            Arrays.copyOfRange(
                batch.right(), unit.row() * Grid.POINTS, (unit.row() + 1) * Grid.POINTS);
        assertThat(right).containsExactly(Curve.of(judged.right()).toFloats());
        assertThat(batch.leftAlignment()[unit.row()]).isEqualTo(judged.leftAlignmentDb());
        assertThat(batch.golden()).containsExactly(judged.golden());
        assertThat(batch.upper()).containsExactly(judged.upper());
      }
    }
  }

  @Test
  void theBatchComesInProductionOrderWithItsReasons() {
    BatchCurves batch = inspections.batchCurves(BATCH, "fern-1", "plain", 3);
    assertThat(batch.units()).extracting(BatchUnit::serial).containsExactly("FE-K1", "FE-K2");
    assertThat(batch.units()).extracting(BatchUnit::verdict).containsExactly("PASS", "FAIL");
    assertThat(batch.units().get(1).reasons()).isNotEmpty();
    assertThat(batch.left()).hasSize(2 * Grid.POINTS);
    assertThat(inspections.batchCurves(BATCH, "fern-1", "plain", 2).units()).isEmpty();
    assertThat(inspections.batches())
        .filteredOn(b -> b.batch().equals(BATCH))
        .singleElement()
        .satisfies(b -> assertThat(b.tunings()).containsExactly("plain", "twice"))
        .satisfies(b -> assertThat(b.units()).isEqualTo(3))
        .satisfies(b -> assertThat(b.limitSets()).containsExactly(3));
  }

  @Test
  void theFacadeTellsWhatHttpTells() {
    var inspection = inspections.find(failed).orElseThrow();
    var json = line.get("/api/inspections/" + failed).json();
    assertThat(inspection.verdict()).isEqualTo(json.path("verdict").stringValue());
    assertThat(inspection.reasons().get(0).text())
        .isEqualTo(json.path("reasons").path(0).path("text").stringValue());
    assertThat(inspection.attempts()).hasSize(1);
    assertThat(inspections.ofUnit("FE-K2")).hasSize(1);
    assertThat(inspections.ofUnit("FE-NEVER")).isEmpty();
    assertThat(inspections.find(UUID.randomUUID())).isEmpty();
  }

  @Test
  void everyClosedInspectionHasItsLedgerEntryInTheSameTransaction() {
    UUID entry = verdicts.findByInspectionId(passed).orElseThrow().ledgerEntryId();
    assertThat(
            jdbc.sql(
                    "select count(*) from ledger_entry where id = ? and kind = 'inspection-closed' and subject = ?")
                .params(entry, passed)
                .query(Integer.class)
                .single())
        .isEqualTo(1);
    assertThat(
            jdbc.sql(
                    "select count(*) from ledger_entry e join attempt a on a.id = e.subject where e.kind = 'attempt' and a.inspection_id = ?")
                .param(twice)
                .query(Integer.class)
                .single())
        .isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "update attempt set seating = 9",
        "delete from attempt",
        "update attempt_channel set peak = 0",
        "delete from attempt_channel",
        "update inspection_verdict set verdict = 'PASS'",
        "delete from inspection_verdict",
        "truncate inspection_verdict",
        "delete from inspection",
        "update inspection set verdict = 'PASS' where state = 'CLOSED'"
      })
  void nothingJudgedCanBeChangedAfterwards(String sql) {
    assertThatThrownBy(() -> jdbc.sql(sql).update()).isInstanceOf(DataAccessException.class);
  }
}
