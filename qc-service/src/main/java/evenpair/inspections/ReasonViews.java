package evenpair.inspections;

import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionView;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonText;
import evenpair.tolerance.RegionResult;
import evenpair.web.Texts;
import java.util.List;
import java.util.Locale;
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
    ReasonText text = ReasonText.of(reason);
    return new ReasonView(
        reason.kind().word(),
        word(reason.channel()),
        reason.region(),
        reason.frequencyHz(),
        reason.measuredDb(),
        reason.limitDb(),
        reason.alsoRegions(),
        texts.render(locale, text.key(), text.values()));
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
        result.limitDb());
  }

  private static String word(Channel channel) {
    return channel == null ? null : channel.word();
  }
}
