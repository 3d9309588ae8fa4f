package evenpair.batches;

import evenpair.batches.Trials.Prepared;
import evenpair.statistics.CoverageRank;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a proposal promises, and what may break the promise, in the reader's language. */
final class ProposalWords {
  private static final int ENOUGH_BATCHES = 5;

  private final Texts texts;
  private final Locale locale;

  ProposalWords(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  String promise(CoverageRank wanted, boolean passedOnly) {
    return text(
        passedOnly ? "proposal.promise.passed" : "proposal.promise.all",
        Map.of("yield", wanted.share(), "confidence", wanted.confidence()));
  }

  String prediction() {
    return text("proposal.prediction", Map.of());
  }

  String tooFew(CoverageRank wanted, Halves halves) {
    Map<String, Object> values = new HashMap<>();
    values.put("yield", wanted.share());
    values.put("confidence", wanted.confidence());
    values.put("need", wanted.unitsNeeded());
    values.put("all", 2 * wanted.unitsNeeded());
    values.put("have", halves.counting().length);
    values.put("promised", CoverageRank.promised(halves.counting().length, wanted.confidence()));
    return text("proposal.too-few", values);
  }

  List<String> warnings(Prepared prepared, Halves halves) {
    List<String> warnings = new ArrayList<>();
    int batches = halves.batches().size();
    if (batches < ENOUGH_BATCHES) {
      warnings.add(
          text("proposal.warning.batches", Map.of("batches", batches, "need", ENOUGH_BATCHES)));
    }
    SteadyLine.look(prepared.set().set(), prepared.units().table(), halves.order())
        .forEach(
            signal ->
                warnings.add(
                    text(
                        signal.region() == null
                            ? "proposal.warning.level"
                            : "proposal.warning.region",
                        signal.values())));
    warnings.add(text("proposal.warning.others", Map.of()));
    return warnings;
  }

  private String text(String key, Map<String, ?> values) {
    return texts.render(locale, key, values);
  }
}
