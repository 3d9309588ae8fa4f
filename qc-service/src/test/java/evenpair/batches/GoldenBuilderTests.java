package evenpair.batches;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.access.FixedCaller;
import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.GoldenJson.Build;
import evenpair.batches.GoldenJson.BuildRequest;
import evenpair.batches.GoldenJson.Comparison;
import evenpair.batches.GoldenJson.Unit;
import evenpair.tolerance.MeasuredChannel;
import evenpair.web.Refusal;
import evenpair.web.TestTexts;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.AbstractPlatformTransactionManager;
import org.springframework.transaction.support.DefaultTransactionStatus;
import org.springframework.transaction.support.TransactionTemplate;

class GoldenBuilderTests {
  private static final UUID AUTHOR = new UUID(0, 1);
  private static final int AT_100_HZ = Grid.nearest(100);
  private static final int AT_8_KHZ = Grid.nearest(8000);
  private static final Band NOTCH = new Band(7300, 8750);

  private final GoldenLine line = new GoldenLine();

  @Nested
  class Response {
    @Test
    void isTheMedianOverBothChannelsOfAllUnits() {
      flat("A", 99, 101);
      flat("B", 100.5, 107);
      flat("C", 98, 100);

      Build found = build(batch());

      // by hand: 98 99 100 100.5 101 107: median 100.25, deviations 2.25 1.25 .25 .25 .75 6.75 →
      // median (.75 + 1.25)/2; mean 605.5/6, squares about it 50.208333
      assertThat(found.units()).isEqualTo(3);
      assertThat(found.curves()).isEqualTo(6);
      assertThat(found.levelDb()[AT_100_HZ]).isEqualTo(100.25);
      assertThat(found.madDb()[AT_100_HZ]).isEqualTo(1.0);
      assertThat(found.sdDb()[AT_100_HZ]).isCloseTo(Math.sqrt(50.208333 / 5), within(0.0006));
      assertThat(found.n()[AT_100_HZ]).isEqualTo(6);
      assertThat(found.saved()).isNull();
    }

    @Test
    void takesOnlyUnitsThatPassedEachOnceByItsFirstPass() {
      flat("A", 100, 100);
      line.unit("B", "FAIL", GoldenLine.flat(80, 0.0), GoldenLine.flat(80, 0.0));
      flat("B", 100, 100);
      flat("B", 90, 90);
      flat("C", 100, 100);
      line.unit("D", null, GoldenLine.flat(80, 0.0), GoldenLine.flat(80, 0.0));

      Build found = build(batch());

      assertThat(found.members()).extracting(Unit::serial).containsExactly("A", "B", "C");
      assertThat(found.madDb()[AT_100_HZ]).isZero();
    }

    @Test
    void hasTheAngleOfTheComplexMean() {
      // e^(j170°) and e^(−j170°) with equal magnitudes lie about 180°, not about 0°
      line.unit("A", "PASS", GoldenLine.flat(100, 170.0), GoldenLine.flat(100, -170.0));
      line.unit("B", "PASS", GoldenLine.flat(100, 170.0), GoldenLine.flat(100, -170.0));
      line.unit("C", "PASS", GoldenLine.flat(100, 170.0), GoldenLine.flat(100, -170.0));

      assertThat(Math.abs(build(batch()).phaseDeg()[AT_100_HZ])).isEqualTo(180);
    }

    @Test
    void weighsAnglesByMagnitude() {
      line.unit("A", "PASS", GoldenLine.flat(100, 0.0), GoldenLine.flat(100, 90.0));
      line.unit("B", "PASS", GoldenLine.flat(100, 0.0), GoldenLine.flat(100, 90.0));
      line.unit("C", "PASS", GoldenLine.flat(106, 0.0), GoldenLine.flat(100, 90.0));

      // by hand: real 2 + 10^0.3, imaginary 3
      double expected = Math.toDegrees(Math.atan2(3, 2 + Math.pow(10, 0.3)));
      assertThat(build(batch()).phaseDeg()[AT_100_HZ]).isCloseTo(expected, within(0.0006));
    }

    @Test
    void saysWhoseCurvesHaveNoPhase() {
      flat("A", 100, 100);
      line.unit("B", "PASS", GoldenLine.flat(100, null), GoldenLine.flat(100, 0.0));
      flat("C", 100, 100);

      Build found = build(batch());

      assertThat(found.phaseDeg()[AT_100_HZ]).isZero();
      assertThat(found.notes())
          .anyMatch(
              note -> note.equals("Curves without phase: 1. The phase is that of the others."));
    }

    @Test
    void hasNoPhaseIfNoCurveHas() {
      for (String serial : List.of("A", "B", "C")) {
        line.unit(serial, "PASS", GoldenLine.flat(100, null), GoldenLine.flat(100, null));
      }

      Build found = build(batch());

      assertThat(found.phaseDeg()).isNull();
      assertThat(found.notes()).anyMatch(note -> note.startsWith("No curve has a phase"));
    }

    @Test
    void isAbsentWhereNoCurveHasALevel() {
      double[] short20k = GoldenLine.none().plus(100).toArray();
      short20k[Grid.POINTS - 1] = Double.NaN;
      var channel = new MeasuredChannel(Curve.of(short20k), Optional.empty());
      for (String serial : List.of("A", "B", "C")) {
        line.unit(serial, "PASS", channel, channel);
      }

      Build found = build(batch());

      assertThat(found.levelDb()[Grid.POINTS - 1]).isNaN();
      assertThat(found.n()[Grid.POINTS - 1]).isZero();
      assertThat(found.notes()).anyMatch(note -> note.contains("No curve has a level at 20 kHz"));
      assertRefused(422, "golden-response-has-a-gap", request(null, "SW-2647", null, true));
    }
  }

  @Nested
  class OddUnits {
    @Test
    void areNoneAmongUnitsOfOneKind() {
      // Any one of the three tests names a good curve in 1 of 100 builds; the line's seed is fixed
      line.passed(40);

      Build found = build(batch());

      assertThat(found.members()).hasSize(40).noneMatch(Unit::odd);
      assertThat(found.members()).allMatch(unit -> unit.why().isEmpty());
      assertThat(found.notes()).isEmpty();
    }

    @Test
    void areNamedWithWhereAndHowFar() {
      line.passed(30)
          .odd("SG2-900001", Curve.from(hz -> hz > NOTCH.fromHz() && hz < NOTCH.toHz() ? -3 : 0));

      Build found = build(batch());

      Unit first = found.members().get(0);
      assertThat(first.serial()).isEqualTo("SG2-900001");
      assertThat(first.odd()).isTrue();
      assertThat(first.left().odd()).isFalse();
      assertThat(first.right().odd()).isTrue();
      assertThat(first.right().farthestAtHz()).isBetween(NOTCH.fromHz(), NOTCH.toHz());
      // 3 dB less what the earpiece's own level and slope (four times 0.3 and 0.15 dB) may add
      assertThat(first.right().farthestDb()).isCloseTo(-3, within(4 * Math.hypot(0.3, 0.15)));
      assertThat(first.why().get(0))
          .startsWith("Right earpiece lies ")
          .contains(" dB below the median at ")
          .contains("robust standard deviations");
      assertThat(found.members().stream().filter(Unit::odd)).hasSize(1);
      assertThat(found.notes())
          .anyMatch(note -> note.startsWith("Odd units that make the response all the same: 1."));
    }

    @Test
    void areNamedWhenTheyAreOffAsAWhole() {
      line.passed(30).odd("SG2-900001", Curve.from(hz -> 2));

      Unit first = build(batch()).members().get(0);

      assertThat(first.serial()).isEqualTo("SG2-900001");
      assertThat(first.why().get(0))
          .startsWith("Right earpiece is ")
          .contains("louder than the median over the whole range");
    }

    @Test
    void areNamedForAShapeThatNoPointAloneShows() {
      // The line's slopes have sd 0.3 dB end to end and its levels 0.3 dB: a slope of 2 dB keeps
      // every point within 1 dB of the median, three to four of its standard deviations, but is
      // over six of the slope's own
      line.passed(40).odd("SG2-900001", Curve.from(hz -> 2 * (Math.log10(hz / 632) / 3)));

      Build found = build(batch());

      Unit first = found.members().get(0);
      assertThat(first.serial()).isEqualTo("SG2-900001");
      assertThat(first.right().farthest()).isLessThan(first.right().farthestLimit());
      assertThat(first.right().tSquared()).isGreaterThan(first.right().tSquaredLimit());
      assertThat(first.why())
          .singleElement()
          .asString()
          .startsWith("Right earpiece has a shape unlike the others', most so at ");
    }

    @Test
    void areLeftOutOnlyIfTheRequestSaysSo() {
      line.passed(9).odd("SG2-900001", Curve.from(hz -> 20));
      UUID odd = line.inspection(9);

      Build kept = build(batch());
      Build without = build(request(null, "SW-2647", List.of(odd), false));

      assertThat(kept.units()).isEqualTo(10);
      assertThat(without.units()).isEqualTo(9);
      assertThat(without.sdDb()[AT_100_HZ]).isLessThan(kept.sdDb()[AT_100_HZ]);
      Unit first = without.members().get(0);
      assertThat(first.leftOut()).isTrue();
      assertThat(first.odd()).isTrue();
      assertThat(without.notes()).noneMatch(note -> note.startsWith("Odd units"));
    }

    @Test
    void cannotBeToldAmongAFew() {
      line.passed(3);

      Build found = build(batch());

      assertThat(found.notes())
          .contains("Units: 3. What is odd among fewer than 10 can hardly be told.")
          .anyMatch(note -> note.startsWith("T² needs 8 curves"));
      assertThat(found.members()).allMatch(unit -> unit.left().tSquared() == null);
    }
  }

  @Nested
  class Choice {
    @Test
    void mayBeInspectionsByName() {
      line.passed(5);

      Build found =
          build(
              request(
                  List.of(line.inspection(4), line.inspection(0), line.inspection(2)),
                  null,
                  null,
                  false));

      assertThat(found.members())
          .extracting(Unit::inspection)
          .containsExactlyInAnyOrder(line.inspection(0), line.inspection(2), line.inspection(4));
    }

    @Test
    void isEitherABatchOrInspections() {
      line.passed(3);

      assertRefused(400, "invalid-field", request(null, null, null, false));
      assertRefused(
          400, "invalid-field", request(List.of(line.inspection(0)), "SW-2647", null, false));
    }

    @Test
    void refusesWhatIsNotMeasuredInThatTuning() {
      line.passed(3);
      line.unit(
          "W", "PASS", "warm", 3, line.channel(GoldenLine.none()), line.channel(GoldenLine.none()));
      UUID unknown = new UUID(9, 9);

      assertRefused(
          422,
          "unfit-inspections",
          request(List.of(line.inspection(0), line.inspection(3), unknown), null, null, false));
    }

    @Test
    void refusesTheSameUnitTwice() {
      line.passed(3);
      flat("SG2-000001", 100, 100);

      assertRefused(
          422,
          "same-unit-twice",
          request(
              List.of(line.inspection(0), line.inspection(1), line.inspection(3)),
              null,
              null,
              false));
    }

    @Test
    void refusesUnitsMeasuredAtAnotherDrive() {
      line.passed(3);
      line.unit(
          "E",
          "PASS",
          "plain",
          4,
          line.channel(GoldenLine.none()),
          line.channel(GoldenLine.none()));

      assertRefused(422, "not-comparable", batch());
    }

    @Test
    void refusesTooFewUnits() {
      line.passed(3);

      assertRefused(
          422, "too-few-units", request(null, "SW-2647", List.of(line.inspection(0)), false));
    }

    @Test
    void refusesToLeaveOutWhatIsNotThere() {
      line.passed(4);

      assertRefused(
          422, "not-among-them", request(null, "SW-2647", List.of(new UUID(9, 9)), false));
    }

    @Test
    void refusesAnUnknownBatchOrTuning() {
      line.passed(4);

      assertRefused(404, "unknown-batch", request(null, "SW-1", null, false));
      assertThatExceptionOfType(Refusal.class)
          .isThrownBy(() -> builder().build("sedge-2", "no-such", batch(), words()))
          .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(404));
    }
  }

  @Nested
  class Saving {
    @Test
    void storesADraftWithWhatItWasBuiltFrom() {
      line.passed(5);

      Build found = build(request(null, "SW-2647", List.of(line.inspection(1)), true));

      assertThat(found.saved().version()).isEqualTo(2);
      assertThat(found.saved().name()).isEqualTo("plain-golden.csv");
      assertThat(found.saved().href())
          .isEqualTo("/api/products/sedge-2/tunings/plain/golden-responses/2");
      assertThat(line.provenance.units()).isEqualTo(4);
      assertThat(line.provenance.leftOut()).containsExactly(line.inspection(1));
      assertThat(line.provenance.inspections()).hasSize(4).doesNotContain(line.inspection(1));
      assertThat(line.version("sedge-2", "plain", 2).response().level().at(AT_100_HZ))
          .isCloseTo(found.levelDb()[AT_100_HZ], within(0.0006)); // rounded to 0.001 dB
    }

    @Test
    void isSavedByWhoeverIsSignedInAndNobodyElse() {
      line.passed(4);

      assertThatExceptionOfType(Refusal.class)
          .isThrownBy(() -> build(new BuildRequest(null, "SW-2647", null, true, "qe-2", null)))
          .satisfies(refusal -> assertThat(refusal.members()).containsEntry("field", "author"));
    }
  }

  @Nested
  class Comparisons {
    @Test
    void tellWhereTheActiveResponseIsFarthest() {
      for (String serial : List.of("A", "B", "C")) {
        var raised =
            new MeasuredChannel(
                Curve.from(hz -> hz < 100 ? 100.8 : hz > 7800 && hz < 8200 ? 99 : 100),
                Optional.empty());
        line.unit(serial, "PASS", raised, raised);
      }

      Comparison found = build(batch()).againstActive();

      assertThat(found.with()).isEqualTo("version 1");
      assertThat(found.offsetDb()).isZero();
      assertThat(found.differenceDb()[AT_8_KHZ]).isEqualTo(-1);
      assertThat(found.regions()).extracting("name").containsExactly("bass", "treble");
      assertThat(found.regions().get(0).largestDb()).isEqualTo(0.8);
      assertThat(found.regions().get(0).text())
          .startsWith("In bass, the new response lies 0.8 dB above version 1 at ");
      assertThat(found.regions().get(1).text())
          .startsWith("In treble, the new response lies 1.0 dB below version 1 at ");
    }

    @Test
    void tellWhatTheFiltersOfADspSettingLeaveOpen() {
      for (String serial : List.of("A", "B", "C")) {
        line.unit(serial, "PASS", "warm", 3, GoldenLine.flat(100, 0.0), GoldenLine.flat(100, 0.0));
      }

      Build found = builder().build("sedge-2", "warm", batch(), words());

      assertThat(found.againstExpected().with()).isEqualTo("what the filters make of plain");
      assertThat(found.againstExpected().regions().get(0).largestDb()).isEqualTo(-2);
      assertThat(found.againstExpected().regions().get(1).text())
          .isEqualTo(
              "In treble, the new response and what the filters make of plain are equal to 0.05 dB.");
    }

    @Test
    void areNotMadeForATuningOfItsOwn() {
      line.passed(3);

      assertThat(build(batch()).againstExpected()).isNull();
    }

    @Test
    void ofTwoVersionsTakeTheSecondFromTheFirst() {
      flat("A", 101, 101);
      flat("B", 101, 101);
      flat("C", 101, 101);
      build(request(null, "SW-2647", null, true));

      Comparison found = comparisons().versions("sedge-2", "plain", 2, 1, words());

      assertThat(found.which()).isEqualTo("version 2");
      assertThat(found.differenceDb()[AT_8_KHZ]).isEqualTo(1);
      assertThat(found.offsetDb()).isEqualTo(1);
      assertThat(found.regions().get(1).text())
          .startsWith("In treble, version 2 lies 1.0 dB above version 1 at ");
    }
  }

  private void flat(String serial, double left, double right) {
    line.unit(serial, "PASS", GoldenLine.flat(left, 0.0), GoldenLine.flat(right, 0.0));
  }

  private static BuildRequest batch() {
    return request(null, "SW-2647", null, false);
  }

  private static BuildRequest request(
      List<UUID> inspections, String batch, List<UUID> leaveOut, boolean save) {
    return new BuildRequest(inspections, batch, leaveOut, save, "qe-1", null);
  }

  private Build build(BuildRequest request) {
    return builder().build("sedge-2", "plain", request, words());
  }

  private void assertRefused(int status, String type, BuildRequest request) {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> build(request))
        .satisfies(
            refusal -> {
              assertThat(refusal.type()).isEqualTo(type);
              assertThat(refusal.status()).isEqualTo(status);
            });
  }

  private GoldenBuilder builder() {
    return new GoldenBuilder(
        line,
        new GoldenSelection(line, line),
        comparisons(),
        new GoldenDrafts(
            line,
            line,
            new FixedCaller(AUTHOR, "qe-1"),
            new TransactionTemplate(new NoTransactions())));
  }

  private GoldenComparisons comparisons() {
    Clock clock = Clock.fixed(Instant.parse("2026-11-25T08:00:00Z"), ZoneOffset.UTC);
    return new GoldenComparisons(line, line, clock);
  }

  private static GoldenWords words() {
    return new GoldenWords(TestTexts.real(), Locale.ENGLISH);
  }

  /** Transactions of nothing: the fakes keep everything at once. */
  private static final class NoTransactions extends AbstractPlatformTransactionManager {
    private static final long serialVersionUID = 1;

    @Override
    protected Object doGetTransaction() {
      return this;
    }

    @Override
    protected void doBegin(Object transaction, TransactionDefinition definition) {}

    @Override
    protected void doCommit(DefaultTransactionStatus status) {}

    @Override
    protected void doRollback(DefaultTransactionStatus status) {}
  }
}
