package evenpair.traceability;

import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.AttemptSummary;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.PairedEarpieces;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.ledger.Ledger;
import evenpair.ledger.Ledger.Seal;
import evenpair.products.Products;
import evenpair.products.Products.Approval;
import evenpair.stations.Stations;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import evenpair.traceability.StoryEvent.Fact;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;

/**
 * Mountings with the calibrations that held, verdicts with the limits behind them, certificates.
 */
@Component
class InspectionStory implements StoryPart {
  /** The ledger's word for a verdict. */
  private static final String CLOSED = "inspection-closed";

  private final Inspections inspections;
  private final PairedEarpieces earpieces;
  private final Products products;
  private final Stations stations;
  private final Ledger ledger;

  InspectionStory(
      Inspections inspections,
      PairedEarpieces earpieces,
      Products products,
      Stations stations,
      Ledger ledger) {
    this.inspections = inspections;
    this.earpieces = earpieces;
    this.products = products;
    this.stations = stations;
    this.ledger = ledger;
  }

  @Override
  public List<StoryEvent> of(String serial, StoryWords words) {
    List<Inspection> all = inspections.ofUnit(serial);
    List<StoryEvent> events = new ArrayList<>();
    for (Inspection inspection : all) {
      inspection.attempts().forEach(attempt -> events.add(attempt(inspection, attempt, words)));
      if ("closed".equals(inspection.state())) {
        events.add(verdict(inspection, words));
      } else if ("abandoned".equals(inspection.state())) {
        events.add(abandoned(inspection, words));
      }
    }
    certificate(all, words).ifPresent(events::add);
    return events;
  }

  private StoryEvent attempt(Inspection inspection, AttemptSummary attempt, StoryWords words) {
    List<Fact> facts =
        stations
            .chainAt(inspection.station(), attempt.measuredAt())
            .map(chain -> chain(chain, attempt.measuredAt(), words))
            .orElse(List.of());
    return new StoryEvent(
        attempt.measuredAt(),
        "attempt",
        attempt.outcome(),
        words.text(
            "attempt",
            Map.of(
                "station", inspection.station(),
                "tuning", inspection.tuning(),
                "number", attempt.number())),
        inspection.station(),
        words.who("operator", inspection.operatorRef()),
        facts,
        "/api/inspections/" + inspection.id());
  }

  private static List<Fact> chain(Chain chain, Instant at, StoryWords words) {
    List<Fact> facts = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      Stations.Microphone microphone = chain.microphones().get(channel);
      if (microphone != null) {
        facts.add(
            held(
                words.text(
                    "attempt.chain.microphone",
                    Map.of(
                        "channel", channel.word(),
                        "simulator", microphone.earSimulator().label(),
                        "serial", microphone.earSimulatorSerial())),
                microphone.at(),
                microphone.validUntil(),
                at));
      }
    }
    if (chain.microphones().isEmpty()) {
      facts.add(missing("microphones", words));
    }
    facts.add(
        chain
            .output()
            .map(
                o -> held(words.text("attempt.chain.output", Map.of()), o.at(), o.validUntil(), at))
            .orElseGet(() -> missing("output-of-station", words)));
    facts.add(
        chain
            .correction()
            .map(
                c ->
                    held(
                        words.text("attempt.chain.correction", Map.of("version", c.version())),
                        c.at(),
                        c.validUntil(),
                        at))
            .orElseGet(() -> missing("correction", words)));
    return facts;
  }

  private static Fact held(String text, Instant from, Instant until, Instant at) {
    return new Fact(text, from, until, at.isBefore(until));
  }

  private static Fact missing(String what, StoryWords words) {
    return new Fact(words.text("attempt.chain.missing", Map.of("what", what)), null, null, false);
  }

  private StoryEvent verdict(Inspection inspection, StoryWords words) {
    List<Fact> facts = new ArrayList<>();
    inspection.reasons().stream().map(ReasonView::text).map(Fact::of).forEach(facts::add);
    if (inspection.conditional()) {
      facts.add(Fact.of(words.text("verdict.conditional", Map.of())));
    }
    earpieces(inspection, words).ifPresent(facts::add);
    products.approvalOf(inspection.limitSetId()).map(a -> approval(a, words)).ifPresent(facts::add);
    facts.add(
        Fact.of(words.text("verdict.software", Map.of("version", inspection.softwareVersion()))));
    facts.add(code(inspection, words));
    return new StoryEvent(
        inspection.closedAt(),
        "verdict",
        inspection.verdict(),
        words.text(
            "verdict." + inspection.occasion(),
            Map.of("tuning", inspection.tuning(), "version", inspection.limitSetVersion())),
        inspection.station(),
        null,
        facts,
        "/api/inspections/" + inspection.id());
  }

  /** Told where an earpiece came with a number that is not the unit's own. */
  private Optional<Fact> earpieces(Inspection inspection, StoryWords words) {
    return earpieces.of(List.of(inspection.id())).stream()
        .filter(pair -> !ownNames(pair))
        .findFirst()
        .map(
            pair ->
                Fact.of(
                    words.text(
                        "verdict.earpieces",
                        Map.of("left", pair.leftEarpiece(), "right", pair.rightEarpiece()))));
  }

  private static boolean ownNames(InspectedPair pair) {
    return pair.leftEarpiece().equals(pair.serial() + ".L")
        && pair.rightEarpiece().equals(pair.serial() + ".R");
  }

  private static Fact approval(Approval approval, StoryWords words) {
    if (approval.approver() == null) {
      return Fact.at(words.text("verdict.approved.file", Map.of()), approval.at());
    }
    return Fact.at(
        words
            .name(approval.approver())
            .map(name -> words.text("verdict.approved.name", Map.of("name", name)))
            .orElseGet(() -> words.text("verdict.approved.person", Map.of())),
        approval.at());
  }

  private Fact code(Inspection inspection, StoryWords words) {
    return ledger
        .sealOf(CLOSED, inspection.id())
        .map(
            seal ->
                Fact.of(
                    words.text("verdict.code", Map.of("code", seal.code(), "block", seal.block()))))
        .orElseGet(() -> Fact.of(words.text("verdict.unsealed", Map.of())));
  }

  private static StoryEvent abandoned(Inspection inspection, StoryWords words) {
    return new StoryEvent(
        inspection.closedAt(),
        "abandoned",
        null,
        words.text("abandoned", Map.of("tuning", inspection.tuning())),
        inspection.station(),
        null,
        List.of(),
        "/api/inspections/" + inspection.id());
  }

  /** Stands at the verdict that made the unit whole. */
  private Optional<StoryEvent> certificate(List<Inspection> all, StoryWords words) {
    List<Inspection> closed = all.stream().filter(i -> "closed".equals(i.state())).toList();
    if (closed.isEmpty() || !"PASS".equals(all.get(all.size() - 1).unitVerdict())) {
      return Optional.empty();
    }
    Inspection last = closed.stream().max(Comparator.comparing(Inspection::closedAt)).orElseThrow();
    StoryEvent event =
        new StoryEvent(
            last.closedAt(),
            "certificate",
            null,
            words.text("certificate", Map.of()),
            null,
            null,
            List.of(),
            "/api/units/" + last.serial() + "/certificate");
    for (Inspection inspection : closed) {
      Optional<Seal> seal =
          "PASS".equals(inspection.verdict()) && inspection.occasion().equals(last.occasion())
              ? ledger.sealOf(CLOSED, inspection.id())
              : Optional.empty();
      if (seal.isPresent()) {
        event =
            event.with(
                Fact.of(
                    words.text(
                        "certificate.code",
                        Map.of("tuning", inspection.tuning(), "code", seal.get().code()))));
      }
    }
    return Optional.of(event);
  }
}
