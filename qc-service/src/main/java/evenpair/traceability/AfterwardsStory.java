package evenpair.traceability;

import evenpair.pairing.Pairings;
import evenpair.pairing.Pairings.Proposed;
import evenpair.traceability.Dispatches.Shipped;
import evenpair.traceability.StoryEvent.Fact;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;

/** What came after the measuring: pairing, deliveries, and what somebody else measured. */
@Component
class AfterwardsStory implements StoryPart {
  private final Pairings pairings;
  private final Dispatches dispatches;
  private final OutsideReportTable reports;

  AfterwardsStory(Pairings pairings, Dispatches dispatches, OutsideReportTable reports) {
    this.pairings = pairings;
    this.dispatches = dispatches;
    this.reports = reports;
  }

  @Override
  public List<StoryEvent> of(String serial, StoryWords words) {
    List<StoryEvent> events = new ArrayList<>();
    pairings.ofUnit(serial).forEach(proposed -> events.add(pairing(serial, proposed, words)));
    dispatches
        .of(List.of(serial))
        .getOrDefault(serial, List.of())
        .forEach(shipped -> events.add(dispatch(shipped, words)));
    reports.ofUnit(serial).forEach(report -> events.add(outside(report, words)));
    return events;
  }

  private static StoryEvent pairing(String serial, Proposed proposed, StoryWords words) {
    Map<String, Object> values =
        Map.of(
            "left", proposed.leftEarpiece(),
            "right", proposed.rightEarpiece(),
            "unit", proposed.serial(),
            "share", Math.round(100 * proposed.cost()));
    String key = proposed.asBuilt() ? ".stays" : proposed.serial().equals(serial) ? "" : ".given";
    return new StoryEvent(
        proposed.at(),
        "pairing",
        null,
        words.text("pairing" + key, values),
        null,
        words.who("engineer", proposed.by()),
        List.of(),
        "/api/pairings/" + proposed.pairing());
  }

  private static StoryEvent dispatch(Shipped shipped, StoryWords words) {
    return new StoryEvent(
        shipped.shippedAt(),
        "dispatch",
        null,
        words.text("dispatch", Map.of("reference", shipped.reference())),
        null,
        words.who("engineer", shipped.person()),
        List.of(Fact.of(words.text("dispatch.verdict", Map.of("verdict", shipped.verdict())))),
        "/api/dispatches/" + shipped.dispatch());
  }

  private static StoryEvent outside(OutsideReportTable.Row report, StoryWords words) {
    String outcome =
        report.comparison().outcome().name().toLowerCase(Locale.ROOT).replace('_', '-');
    return new StoryEvent(
        report.receivedAt(),
        "outside-report",
        null,
        words.text("outside." + outcome, Map.of()),
        null,
        words.who("engineer", report.receivedBy()),
        List.of(),
        "/api/units/" + report.serial() + "/outside-reports/" + report.id());
  }
}
