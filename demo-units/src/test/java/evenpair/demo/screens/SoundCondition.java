package evenpair.demo.screens;

import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Lets a class run where a browser can be heard by a sound server of its own; with {@code CI=true}
 * always.
 */
final class SoundCondition implements ExecutionCondition {
  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    if ("true".equals(System.getenv("CI"))) {
      return ConditionEvaluationResult.enabled("everything has to be there");
    }
    if (Chromium.find().isEmpty()) {
      return ConditionEvaluationResult.disabled(Chromium.MEND);
    }
    if (!VirtualSoundDevice.canBeStarted()) {
      // said aloud, for a class that does not run shows nowhere else
      System.out.println(context.getDisplayName() + " skipped: " + VirtualSoundDevice.MEND);
      return ConditionEvaluationResult.disabled(VirtualSoundDevice.MEND);
    }
    return ConditionEvaluationResult.enabled("a browser and a sound server are there");
  }
}
