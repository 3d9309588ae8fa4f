package evenpair.batches;

import evenpair.batches.ProposalJson.Missing;
import evenpair.batches.ProposalJson.ProposalRequest;
import evenpair.batches.ProposalJson.ProposalView;
import evenpair.batches.ProposalJson.Used;
import evenpair.batches.ProposalJson.Wanted;
import evenpair.batches.Trials.Prepared;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.products.LimitTexts;
import evenpair.products.Products.StoredLimitSet;
import evenpair.statistics.CoverageRank;
import evenpair.tolerance.LimitProposal;
import evenpair.tolerance.LimitProposal.Scaled;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Uncertainty;
import evenpair.tolerance.Verdict;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;

/** Proposes limits that a wanted share of units keeps; nothing is stored. */
@Component
class Proposals {
  /** Beyond this a limit set cannot be written, and a limit would judge nothing. */
  private static final double LARGEST_LIMIT_DB = 40;

  private static final Set<String> KEEPABLE = Set.of("windows", "match", "level", "balance");

  private final Trials trials;
  private final LimitTexts limitTexts;
  private final Texts texts;

  Proposals(Trials trials, LimitTexts limitTexts, Texts texts) {
    this.trials = trials;
    this.limitTexts = limitTexts;
    this.texts = texts;
  }

  ProposalView propose(Prepared prepared, ProposalRequest request, Locale locale) {
    CoverageRank wanted = wanted(request);
    Scaled scaled = scaled(request.keep());
    boolean passedOnly = passedOnly(request.of());
    Halves halves = Halves.of(prepared.units(), passedOnly);
    requireShape(halves);
    LimitProposal proposal =
        new LimitProposal(prepared.set().set(), prepared.units().table(), halves.shaping());
    Optional<Double> scale = proposal.scale(halves.counting(), wanted, scaled);
    Optional<StoredLimitSet> set =
        scale.map(t -> set(prepared, proposal, t, scaled, request.neverWider()));
    boolean promised = set.isPresent() && !request.neverWider() && request.keep().isEmpty();
    ProposalWords words = new ProposalWords(texts, locale);
    return new ProposalView(
        set.map(trials::tried).orElse(null),
        promised,
        set.isEmpty()
            ? words.tooFew(wanted, halves)
            : promised ? words.promise(wanted, passedOnly) : words.prediction(),
        new Wanted(wanted.share(), wanted.confidence()),
        used(halves, wanted),
        missing(halves, wanted),
        scale.orElse(null),
        set.map(found -> predicted(prepared, found, passedOnly)).orElse(null),
        words.warnings(prepared, halves));
  }

  private static void requireShape(Halves halves) {
    if (halves.shaping().length < 2 || halves.counting().length < 1) {
      throw new Refusal(
          422,
          "too-few-units",
          "A proposal needs at least 2 units in one half and 1 in the other; have %d and %d."
              .formatted(halves.shaping().length, halves.counting().length));
    }
  }

  private static CoverageRank wanted(ProposalRequest request) {
    return new CoverageRank(
        share("yield", request.yield()), share("confidence", request.confidence()));
  }

  private static double share(String field, Double value) {
    if (value == null || !(value >= 0.5 && value <= 0.9999)) {
      throw refusal(field, value, "0.5 to 0.9999");
    }
    return value;
  }

  private static Scaled scaled(List<String> keep) {
    keep.stream()
        .filter(word -> !KEEPABLE.contains(word))
        .findFirst()
        .ifPresent(
            word -> {
              throw refusal("keep", word, "any of windows, match, level, balance");
            });
    if (keep.containsAll(KEEPABLE)) {
      throw refusal("keep", keep, "not all four: nothing would be proposed");
    }
    return new Scaled(
        !keep.contains("windows"),
        !keep.contains("match"),
        !keep.contains("level"),
        !keep.contains("balance"));
  }

  private static boolean passedOnly(String of) {
    if (of == null || "all".equals(of)) {
      return false;
    }
    if ("passed".equals(of)) {
      return true;
    }
    throw refusal("of", of, "all or passed");
  }

  private static Refusal refusal(String field, Object was, String expected) {
    return new Refusal(
            400, "invalid-parameter", field + " must be " + expected + ", was " + was + ".")
        .with("field", field)
        .with("expected", expected);
  }

  private StoredLimitSet set(
      Prepared prepared, LimitProposal proposal, double t, Scaled scaled, boolean neverWider) {
    LimitSet now = prepared.set().set();
    List<Optional<Uncertainty>> worth =
        prepared.units().groups().stream().map(prepared.worth()::of).toList();
    if (!Double.isFinite(t)) {
      throw tooWide();
    }
    LimitSet drawn =
        proposal.limits(t, scaled, worth, limitTexts.nextVersion(now.product(), now.tuning()));
    LimitSet proposed = neverWider ? NeverWider.than(now, drawn) : drawn;
    if (!writable(proposed)) {
      throw tooWide();
    }
    return limitTexts.with(prepared.set(), proposed);
  }

  private static boolean writable(LimitSet set) {
    return set.level().highest() <= LARGEST_LIMIT_DB
        && set.level().lowest() >= -LARGEST_LIMIT_DB
        && set.level().balanceDb() <= LARGEST_LIMIT_DB
        && set.regions().stream()
            .allMatch(
                region ->
                    Math.min(region.lower().start(), region.lower().end()) >= -LARGEST_LIMIT_DB
                        && Math.max(region.upper().start(), region.upper().end())
                            <= LARGEST_LIMIT_DB
                        && region
                            .match()
                            .map(m -> Math.max(m.start(), m.end()) <= LARGEST_LIMIT_DB)
                            .orElse(true));
  }

  private static Refusal tooWide() {
    return new Refusal(
        422,
        "units-too-far",
        "So many of these units are far off that a limit which the wanted share keeps would be wider"
            + " than 40 dB. Ask for a lower yield, or for the units that passed (\"of\":"
            + " \"passed\").");
  }

  private static Used used(Halves halves, CoverageRank wanted) {
    var rank = wanted.of(halves.counting().length);
    return new Used(
        halves.units(),
        halves.shaping().length,
        halves.counting().length,
        rank.isPresent() ? (Integer) rank.getAsInt() : null,
        halves.batches());
  }

  private static Missing missing(Halves halves, CoverageRank wanted) {
    int needed = wanted.unitsNeeded();
    int have = halves.counting().length;
    return new Missing(
        needed,
        2 * needed,
        have >= needed ? 0 : Math.max(0, 2 * needed - halves.units()),
        CoverageRank.promised(have, wanted.confidence()));
  }

  /** By a trial on the very units; among units that passed, of those. */
  private TrialJson.Share predicted(Prepared prepared, StoredLimitSet set, boolean passedOnly) {
    Prepared tried = new Prepared(prepared.which(), set, prepared.units(), prepared.worth());
    Trial.Result result = trials.trial(tried).run();
    List<Integer> counted = new ArrayList<>();
    for (int u = 0; u < result.verdicts().length; u++) {
      RecordedUnit unit = prepared.units().units().get(u);
      if (!passedOnly || "PASS".equals(unit.verdict())) {
        counted.add(u);
      }
    }
    Map<Verdict, Long> count =
        counted.stream()
            .collect(Collectors.groupingBy(u -> result.verdicts()[u], Collectors.counting()));
    return TrialFigures.share(
        count.getOrDefault(Verdict.PASS, 0L).intValue(),
        count.getOrDefault(Verdict.FAIL, 0L).intValue());
  }
}
