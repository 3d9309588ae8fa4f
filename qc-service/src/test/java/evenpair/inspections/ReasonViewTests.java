package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.stations.Block;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import evenpair.web.TestTexts;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ReasonViewTests {
  private static final Instant SINCE = Instant.parse("2026-11-25T06:00:00Z");
  private final ReasonViews views = new ReasonViews(TestTexts.real());

  private static Block block(Block.Cause cause, Optional<Channel> channel, OptionalDouble number) {
    return new Block(cause, UUID.randomUUID(), channel, Optional.of("bass"), SINCE, number, number);
  }

  @ParameterizedTest
  @EnumSource
  void aBlockedStationSaysWhyAndWhatToDo(Block.Cause cause) {
    for (OptionalDouble number : List.of(OptionalDouble.empty(), OptionalDouble.of(0.7))) {
      Reason reason = StationBlocks.reason(block(cause, Optional.of(Channel.LEFT), number));
      assertThat(views.of(reason, Locale.ENGLISH).text())
          .startsWith("This station is blocked: ")
          .containsPattern("once more|Call an engineer|first");
    }
  }

  @Test
  void aBlockKeepsItsNumbersForTheRecord() {
    Block failed = block(Block.Cause.VERIFICATION_FAILED, Optional.empty(), OptionalDouble.of(0.7));
    Reason reason = StationBlocks.reason(failed);
    assertThat(reason.measuredDb()).isEqualTo(0.7);
    assertThat(reason.channel()).isNull();
    assertThat(views.of(reason, Locale.ENGLISH).text()).contains("(bass)");
  }

  @Test
  void whatIsStoredComesBackAndOldRecordsLackOnlyWhatWasNotKnown() {
    Reason reason =
        StationBlocks.reason(
            block(Block.Cause.OUTPUT_CHANGED, Optional.empty(), OptionalDouble.of(0.7)));
    assertThat(RecordJson.read(RecordJson.write(List.of(reason)))).containsExactly(reason);

    String old =
        """
        [{"kind": "WINDOW", "channel": "LEFT", "region": "bass", "frequencyHz": 50.0, "measuredDb": 2.5, "limitDb": 2.0,
          "alsoRegions": []}]
        """;
    Reason read = RecordJson.read(old).get(0);
    assertThat(read.measuredDb()).isEqualTo(2.5);
    assertThat(read.repeats()).isFalse();
    assertThat(read.usbLinesHz()).isEmpty();
  }
}
