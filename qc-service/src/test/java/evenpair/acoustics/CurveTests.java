package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CurveTests {
  private static final Band MID = new Band(300, 3000);

  private static Curve random(long seed) {
    Random random = new Random(seed);
    return Curve.from(hz -> 90 + 3 * random.nextGaussian());
  }

  private static Curve without(Curve curve, int index) {
    double[] db = curve.toArray();
    db[index] = Double.NaN;
    return Curve.of(db);
  }

  @Nested
  class Levels {
    @Test
    void thatAreAbsentAreNeverHandedOut() {
      Curve curve = without(random(1), 100);
      assertThat(curve.has(100)).isFalse();
      assertThatIllegalStateException()
          .isThrownBy(() -> curve.at(100))
          .withMessageContaining("355.0 Hz");
      assertThatIllegalStateException().isThrownBy(() -> curve.mean(MID));
      assertThat(curve.covers(MID)).isFalse();
      assertThat(curve.covers(new Band(1000, 2000))).isTrue();
    }

    @Test
    void mustBe241AndNotInfinite() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Curve.of(1, 2, 3))
          .withMessageContaining("241");
      double[] db = new double[241];
      db[3] = Double.NEGATIVE_INFINITY;
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Curve.of(db))
          .withMessageContaining("21.8 Hz");
    }

    @Test
    void surviveStorageAsFloats() {
      // a 32-bit float of about 90 has steps of 8e-6: half a step is the greatest rounding
      Curve curve = without(random(2), 7);
      Curve back = Curve.ofFloats(curve.toFloats());
      assertThat(back.has(7)).isFalse();
      assertThat(back.at(8)).isCloseTo(curve.at(8), within(4e-6));
      assertThat(back.toFloats()).isEqualTo(curve.toFloats());
    }
  }

  @Nested
  class Averages {
    @Test
    void overABandAreOfTheDecibelsThemselves() {
      // levels rise by 1 dB a point: mean and median are the middle point's level, here index 133
      // (labels 300 … 3000)
      double[] db = new double[241];
      for (int i = 0; i < db.length; i++) {
        db[i] = i;
      }
      Curve curve = Curve.of(db);
      double middle = (MID.firstIndex() + MID.lastIndex()) / 2.0;
      assertThat(curve.mean(MID)).isCloseTo(middle, within(1e-9));
      assertThat(curve.median(MID)).isCloseTo(middle, within(1e-9));
      assertThat(curve.median(new Band(1000, 1030))).isEqualTo(136.5);
    }

    @Test
    void ofCurvesAreTakenPointByPoint() {
      Curve mean = Curve.mean(List.of(random(1), random(2), without(random(3), 5)));
      assertThat(mean.has(5)).isFalse();
      assertThat(mean.at(9))
          .isCloseTo((random(1).at(9) + random(2).at(9) + random(3).at(9)) / 3, within(1e-9));
      assertThatIllegalArgumentException().isThrownBy(() -> Curve.mean(List.of()));
    }

    @Test
    void differencesAndSumsUndoEachOther() {
      Curve sum = random(1).minus(random(2)).plus(random(2)).times(2).plus(-3.0);
      assertThat(sum.at(50)).isCloseTo(2 * random(1).at(50) - 3, within(1e-9));
    }
  }

  @Nested
  class Smoothed {
    @ParameterizedTest
    @EnumSource(Smoothing.class)
    void aFlatCurveStaysFlat(Smoothing smoothing) {
      // rounding of lg and power only
      Curve flat = smoothing.apply(Curve.from(hz -> 94));
      for (int i = 0; i < 241; i++) {
        assertThat(flat.at(i)).isCloseTo(94, within(1e-9));
      }
    }

    @ParameterizedTest
    @EnumSource(Smoothing.class)
    void anOffsetPassesThroughUnchanged(Smoothing smoothing) {
      Curve shifted = smoothing.apply(random(4).plus(6.5)).minus(smoothing.apply(random(4)));
      for (int i = 0; i < 241; i++) {
        assertThat(shifted.at(i)).isCloseTo(6.5, within(1e-9));
      }
    }

    @Test
    void aSinglePointSpreadsByItsWeights() {
      // one point of power 1 among next to nothing: the power at ±k points is w_k / Σ w. Weights ½
      // 1 1 1 ½, sum 4.
      Curve spike = Curve.from(hz -> -300).plus(Curve.of(pulse(136, 300)));
      Curve sixth = Smoothing.SIXTH_OCTAVE.apply(spike);
      assertThat(sixth.at(136)).isCloseTo(10 * Math.log10(1 / 4.0), within(1e-6));
      assertThat(sixth.at(138)).isCloseTo(10 * Math.log10(0.5 / 4), within(1e-6));
      Curve twelfth = Smoothing.TWELFTH_OCTAVE.apply(spike);
      assertThat(twelfth.at(137)).isCloseTo(10 * Math.log10(0.5 / 2), within(1e-6));
      Curve third = Smoothing.THIRD_OCTAVE.apply(spike);
      assertThat(third.at(139)).isCloseTo(10 * Math.log10(1 / 8.0), within(1e-6));
      assertThat(third.at(132)).isCloseTo(10 * Math.log10(0.5 / 8), within(1e-6));
      assertThat(third.at(131)).isLessThan(-200);
    }

    @Test
    void theEndsAreRenormalised() {
      // at the first point ½ 1 ½ has only 1 ½ left: the pulse of power 1 gets 1 of 1.5
      Curve spike = Curve.from(hz -> -300).plus(Curve.of(pulse(0, 300)));
      assertThat(Smoothing.TWELFTH_OCTAVE.apply(spike).at(0))
          .isCloseTo(10 * Math.log10(1 / 1.5), within(1e-6));
    }

    @Test
    void anAbsentPointStaysAbsentAndIsLeftOutBesideIt() {
      Curve curve = Smoothing.TWELFTH_OCTAVE.apply(without(Curve.from(hz -> 80), 20));
      assertThat(curve.has(20)).isFalse();
      assertThat(curve.at(21)).isCloseTo(80, within(1e-9));
    }

    private double[] pulse(int index, double db) {
      double[] values = new double[241];
      values[index] = db;
      return values;
    }
  }
}
