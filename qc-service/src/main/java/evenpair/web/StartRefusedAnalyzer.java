package evenpair.web;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/**
 * Prints what a {@link StartRefused} says. Registered in META-INF/spring.factories, as Boot wants
 * it.
 */
class StartRefusedAnalyzer extends AbstractFailureAnalyzer<StartRefused> {
  @Override
  protected FailureAnalysis analyze(Throwable rootFailure, StartRefused cause) {
    return new FailureAnalysis(cause.getMessage(), cause.action(), rootFailure);
  }
}
