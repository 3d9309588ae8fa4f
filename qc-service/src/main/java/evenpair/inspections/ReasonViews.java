package evenpair.inspections;

import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionView;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.ReasonText;
import evenpair.tolerance.RegionResult;
import evenpair.web.Texts;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;

/** Reasons and region results as JSON carries them, the sentence in the reader's language. */
@Component
class ReasonViews {
  private final Texts texts;

  ReasonViews(Texts texts) {
    this.texts = texts;
  }

  List<ReasonView> of(List<Reason> reasons, Locale locale) {
    return reasons.stream().map(reason -> of(reason, locale)).toList();
  }

  ReasonView of(Reason reason, Locale locale) {
    return view(reason, sentence(reason, locale));
  }

  /**
   * @return why the inspection stands as it does, for the newest attempt with the try that comes
   *     next
   */
  List<ReasonView> of(InspectionFile file, Locale locale) {
    if (file.verdict().isPresent() || file.attempts().isEmpty()) {
      return of(file.reasons(), locale);
    }
    return of(file, file.attempts().get(file.attempts().size() - 1), locale);
  }

  /**
   * @return what was wrong with one attempt; for a bad mounting with the try that comes next
   */
  List<ReasonView> of(InspectionFile file, AttemptRow attempt, Locale locale) {
    boolean reseat = attempt.outcome() == Outcome.RESEAT;
    String next =
        reseat ? ' ' + nextTry(file.tryOf(attempt), file.row().triesAllowed(), locale) : "";
    return RecordJson.read(attempt.reasons()).stream()
        .map(reason -> view(reason, sentence(reason, attempt, locale) + next))
        .toList();
  }

  private String nextTry(int tryNumber, int allowed, Locale locale) {
    return tryNumber < allowed
        ? texts.render(locale, "reason.reseat.next", Map.of("try", tryNumber + 1, "tries", allowed))
        : texts.render(locale, "reason.reseat.beyond", Map.of("tries", allowed));
  }

  /** Idle noise that was not measured: the part was not sent, or gave no level. */
  private String sentence(Reason reason, AttemptRow attempt, Locale locale) {
    boolean idle = reason.kind() == ReasonKind.NOT_JUDGED && "idle-noise".equals(reason.region());
    if (!idle || reason.channel() == null) {
      return sentence(reason, locale);
    }
    boolean left = reason.channel() == Channel.LEFT;
    boolean sent = (left ? attempt.idleLeftSha256() : attempt.idleRightSha256()) != null;
    return texts.render(
        locale,
        sent ? "reason.idle-recording.unusable" : "reason.idle-recording.missing",
        Map.of("part", left ? "idleLeft" : "idleRight"));
  }

  private String sentence(Reason reason, Locale locale) {
    ReasonText text = ReasonText.of(reason);
    boolean cause = reason.kind() == ReasonKind.STATION_BLOCKED && reason.region() != null;
    return texts.render(
        locale, cause ? text.key() + '.' + reason.region() : text.key(), text.values());
  }

  private static ReasonView view(Reason reason, String text) {
    return new ReasonView(
        reason.kind().word(),
        word(reason.channel()),
        reason.region(),
        reason.frequencyHz(),
        reason.measuredDb(),
        reason.limitDb(),
        reason.alsoRegions(),
        text,
        reason.otherTuning());
  }

  static List<RegionView> regions(List<RegionResult> results) {
    return results.stream().map(ReasonViews::region).toList();
  }

  private static RegionView region(RegionResult result) {
    return new RegionView(
        result.region(),
        result.check().word(),
        word(result.channel()),
        result.judged(),
        result.marginDb(),
        result.atHz(),
        result.worstDb(),
        result.limitDb(),
        result.state().word(),
        result.unit(),
        result.guardDb());
  }

  private static String word(Channel channel) {
    return channel == null ? null : channel.word();
  }
}
