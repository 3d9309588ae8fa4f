package evenpair.traceability;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * One thing that happened to a unit.
 *
 * @param kind attempt, verdict, abandoned, certificate, pairing, dispatch or outside-report
 * @param state PASS, FAIL, RESEAT, INVALID or VALID; null where there is no such word
 * @param place the station, null where there is none
 * @param who null where nobody did it, or nobody is known
 * @param link where in the API to read on; null if nowhere
 */
@Schema(name = "StoryEvent")
record StoryEvent(
    Instant at,
    String kind,
    String state,
    String text,
    String place,
    Who who,
    List<Fact> facts,
    String link) {
  StoryEvent {
    facts = List.copyOf(facts);
  }

  /**
   * @param role operator or engineer, in the reader's language
   * @param name null unless the reader may see names and it has not been erased
   */
  @Schema(name = "StoryPerson")
  record Who(String role, String name) {}

  /**
   * @param at when what it tells of was done; null if that is the event's time
   * @param until until when it held; null if that does not apply
   * @param held false: it had expired by the event's time
   */
  @Schema(name = "StoryFact")
  record Fact(String text, Instant at, Instant until, boolean held) {
    static Fact of(String text) {
      return new Fact(text, null, null, true);
    }

    static Fact at(String text, Instant at) {
      return new Fact(text, at, null, true);
    }
  }

  /**
   * @return this event with one fact more
   */
  StoryEvent with(Fact fact) {
    List<Fact> more = new ArrayList<>(facts);
    more.add(fact);
    return new StoryEvent(at, kind, state, text, place, who, more, link);
  }
}
