package evenpair.pairing;

import evenpair.inspections.PairedEarpieces;
import evenpair.inspections.PairedEarpieces.Whereabouts;
import evenpair.pairing.PairingJson.Balance;
import evenpair.pairing.PairingJson.Earpiece;
import evenpair.pairing.PairingJson.Inspected;
import evenpair.pairing.PairingJson.Match;
import evenpair.pairing.PairingJson.Pair;
import evenpair.pairing.PairingJson.Pairing;
import evenpair.pairing.PairingJson.Side;
import evenpair.pairing.PairingJson.Summary;
import evenpair.pairing.PairingStore.Head;
import evenpair.pairing.PairingStore.Row;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** Makes the answers, each sentence in the reader's language. */
@Component
class PairingViews {
  private final PairingStore store;
  private final PairedEarpieces earpieces;
  private final Texts texts;

  PairingViews(PairingStore store, PairedEarpieces earpieces, Texts texts) {
    this.store = store;
    this.earpieces = earpieces;
    this.texts = texts;
  }

  Summary summary(Head head) {
    return new Summary(
        head.id(),
        head.product(),
        head.tuning(),
        limitSet(head),
        head.createdAt(),
        new PairingJson.Pool(head.lefts(), head.rights()),
        asBuilt(head),
        proposed(head),
        head.proposed() - head.asBuiltFeasible());
  }

  Pairing whole(Head head, Locale locale) {
    return new Pairing(
        head.id(),
        head.product(),
        head.tuning(),
        limitSet(head),
        head.createdAt(),
        head.request(),
        new PairingJson.Pool(head.lefts(), head.rights()),
        asBuilt(head),
        proposed(head),
        head.proposed() - head.asBuiltFeasible(),
        head.seconds(),
        pairs(head),
        head.alone().stream()
            .map(e -> new Earpiece(e.serial(), e.channel(), e.earpiece(), e.inspection()))
            .toList(),
        head.leftOut().stream().map(e -> leftOut(e, locale)).toList(),
        head.takeBack(),
        notes(head, locale),
        new PairingJson.Links(self(head), self(head) + "/pairs.csv"));
  }

  static String self(Head head) {
    return "/api/pairings/" + head.id();
  }

  List<Pair> pairs(Head head) {
    List<Row> rows = store.pairs(head.id());
    List<String> names =
        rows.stream().flatMap(r -> Stream.of(r.leftEarpiece(), r.rightEarpiece())).toList();
    Map<String, Whereabouts> last = earpieces.lastInspected(head.product(), head.tuning(), names);
    return rows.stream().map(row -> pair(row, head, last)).toList();
  }

  private static Pair pair(Row row, Head head, Map<String, Whereabouts> last) {
    return new Pair(
        row.number(),
        row.serial(),
        new Earpiece(row.serial(), "left", row.leftEarpiece(), row.leftInspection()),
        new Earpiece(row.rightSerial(), "right", row.rightEarpiece(), row.rightInspection()),
        row.asBuilt(),
        row.cost(),
        new Match(row.matchShare(), row.atHz(), row.differenceDb(), row.limitDb()),
        new Balance(row.balanceShare(), row.balanceDb(), row.balanceLimitDb()),
        inspected(row, head, last.get(row.leftEarpiece())));
  }

  /** An inspection of just these two, under their own numbers, since they were proposed. */
  private static Inspected inspected(Row row, Head head, Whereabouts last) {
    boolean own =
        last != null
            && row.leftEarpiece().equals(last.left())
            && row.rightEarpiece().equals(last.right())
            && !last.inspection().equals(row.leftInspection())
            && last.at().isAfter(head.createdAt());
    return own ? new Inspected(last.inspection(), last.verdict(), last.at()) : null;
  }

  private static PairingJson.LimitSet limitSet(Head head) {
    return new PairingJson.LimitSet(head.version(), head.digest(), head.guarded());
  }

  private static Side asBuilt(Head head) {
    return new Side(
        head.asBuilt(),
        head.asBuiltFeasible(),
        head.asBuiltCost(),
        mean(head.asBuiltCost(), head.asBuiltFeasible()));
  }

  private static Side proposed(Head head) {
    return new Side(
        head.proposed(),
        head.proposed(),
        head.proposedCost(),
        mean(head.proposedCost(), head.proposed()));
  }

  private static Double mean(double sum, int n) {
    return n == 0 ? null : (Double) (sum / n);
  }

  private PairingJson.LeftOut leftOut(LeftOut out, Locale locale) {
    Map<String, Object> values = new LinkedHashMap<>(out.values());
    values.put("earpiece", out.channel() + "-earpiece");
    if (values.get("check") != null) {
      values.put("check", texts.render(locale, "pairing.fault." + values.get("check"), Map.of()));
    }
    return new PairingJson.LeftOut(
        out.serial(),
        out.channel(),
        out.earpiece(),
        out.why(),
        texts.render(locale, "pairing.left-out." + out.why(), values));
  }

  private List<String> notes(Head head, Locale locale) {
    List<String> notes = new ArrayList<>();
    notes.add(texts.render(locale, "pairing.note.own-inspection", Map.of()));
    if (head.guarded()) {
      notes.add(texts.render(locale, "pairing.note.guarded", Map.of()));
    }
    if (!head.takeBack().isEmpty()) {
      notes.add(
          texts.render(
              locale,
              "pairing.note.take-back",
              Map.of("units", String.join(", ", head.takeBack()))));
    }
    return notes;
  }

  static PairingJson.Curves curves(PairingDesk.Drawn drawn) {
    double[] left = drawn.left().levelDb();
    double[] right = drawn.right().levelDb();
    double[] difference = new double[left.length];
    Arrays.setAll(difference, i -> left[i] - right[i]);
    var lines = drawn.lines();
    return new PairingJson.Curves(
        list(lines.frequencyHz()),
        lines.smoothing(),
        new PairingJson.Channel(list(left), orNull(drawn.left().alignmentDb())),
        new PairingJson.Channel(list(right), orNull(drawn.right().alignmentDb())),
        new PairingJson.Levels(list(lines.goldenDb())),
        new PairingJson.Window(list(lines.lowerDb()), list(lines.upperDb())),
        new PairingJson.Difference(list(difference), list(lines.matchDb())),
        lines.regions().stream()
            .map(r -> new PairingJson.Region(r.name(), r.fromHz(), r.toHz()))
            .toList(),
        new PairingJson.Simulator(
            lines.earSimulator(), lines.specifiedFromHz(), lines.specifiedToHz()));
  }

  private static List<Double> list(double[] values) {
    return Arrays.stream(values).mapToObj(PairingViews::orNull).toList();
  }

  private static Double orNull(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }
}
