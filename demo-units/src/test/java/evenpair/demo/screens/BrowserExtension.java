package evenpair.demo.screens;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ExtensionContext.Store;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/**
 * Hands a screen to each test that asks for one, and looks after it what the browser complained
 * about.
 */
final class BrowserExtension implements ExecutionCondition, ParameterResolver, AfterEachCallback {
  private static final Namespace OURS = Namespace.create(BrowserExtension.class);

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    if (Chromium.find().isPresent() || "true".equals(System.getenv("CI"))) {
      return ConditionEvaluationResult.enabled("a browser is there, or has to be");
    }
    if (context.getTestMethod().isEmpty()) {
      return ConditionEvaluationResult.enabled(
          "each test is skipped by itself, so that they are counted");
    }
    run(context)
        .computeIfAbsent(Skipped.class, key -> new Skipped(), Skipped.class)
        .count
        .incrementAndGet();
    return ConditionEvaluationResult.disabled(Chromium.MEND);
  }

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
    Class<?> type = parameter.getParameter().getType();
    return type == Screen.class || type == RunningService.class || type == Chromium.class;
  }

  @Override
  public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
    if (parameter.getParameter().getType() == Chromium.class) {
      return run(context).computeIfAbsent(Chromium.class, key -> Chromium.start(), Chromium.class);
    }
    RunningService service =
        run(context)
            .computeIfAbsent(
                RunningService.class, key -> RunningService.start(), RunningService.class);
    if (parameter.getParameter().getType() == RunningService.class) {
      return service;
    }
    Chromium chromium =
        run(context).computeIfAbsent(Chromium.class, key -> Chromium.start(), Chromium.class);
    Optional<Class<?>> shared = onePage(context);
    return shared.isPresent()
        ? run(context)
            .computeIfAbsent(
                shared.get(), key -> new Screen(chromium.browser(), service), Screen.class)
        : context
            .getStore(OURS)
            .computeIfAbsent(
                Screen.class, key -> new Screen(chromium.browser(), service), Screen.class);
  }

  /** The class whose tests share one page; a nested one belongs to the class around it. */
  private static Optional<Class<?>> onePage(ExtensionContext context) {
    Class<?> type = context.getRequiredTestClass();
    while (type.getEnclosingClass() != null) {
      type = type.getEnclosingClass();
    }
    return type.isAnnotationPresent(OnePage.class) ? Optional.of(type) : Optional.empty();
  }

  @Override
  public void afterEach(ExtensionContext context) {
    Screen screen = context.getStore(OURS).remove(Screen.class, Screen.class);
    if (screen != null) {
      screen.closeAndComplain();
    }
  }

  private static Store run(ExtensionContext context) {
    return context.getRoot().getStore(OURS);
  }

  /** Tells at the end of the run how many tests did not run, and what to do about it. */
  private static final class Skipped implements AutoCloseable {
    private final AtomicInteger count = new AtomicInteger();

    @Override
    public void close() {
      System.out.println(count + " browser tests skipped: " + Chromium.MEND);
    }
  }
}
