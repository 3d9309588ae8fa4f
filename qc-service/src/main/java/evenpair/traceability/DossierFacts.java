package evenpair.traceability;

import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.ledger.Ledger.Seal;
import evenpair.products.Products.StoredLimitSet;
import evenpair.products.Products.VersionFacts;
import evenpair.stations.Stations.Chain;
import evenpair.stations.UncertaintyBudget.Scalar;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that a dossier tells of.
 *
 * @param report what was claimed and how it compares; empty for a dossier about the record alone
 * @param operator who measured; empty in the version for the public, and once erased
 * @param published who claimed it; empty in the version for the public
 * @param budget of left − right on region means, by region; empty without a gauge study
 * @param seatings valid ones, whose mean was judged
 * @param approvers by version of the limit set: who signed, for those who may know
 * @param reportSeal of the outside report
 * @param hidden true: the version for the public
 */
record DossierFacts(
    Optional<OutsideReport> report,
    Inspection inspection,
    JudgedCurves curves,
    StoredLimitSet limits,
    List<VersionFacts> history,
    Map<Integer, String> approvers,
    Chain chain,
    Map<String, Scalar> budget,
    int seatings,
    Optional<String> operator,
    Optional<String> published,
    Optional<Seal> seal,
    Optional<Seal> reportSeal,
    List<Inspection> others,
    String software,
    boolean hidden) {}
