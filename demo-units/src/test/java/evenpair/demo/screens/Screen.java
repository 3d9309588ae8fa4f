package evenpair.demo.screens;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.RequestOptions;
import com.microsoft.playwright.options.ServiceWorkerPolicy;
import evenpair.demo.player.Crew;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One page in a browser that remembers nothing yet, and what the browser complained about. Signed
 * in as the line's engineer, who also measures, unless told otherwise.
 */
final class Screen {
  /**
   * The verdict at the bench and the plots wait for HTTP; nothing here takes longer on a busy
   * machine.
   */
  private static final double PATIENCE_MS = 20_000;

  private final Browser browser;
  private final RunningService service;
  private final URI address;
  private final List<String> complaints = new ArrayList<>();
  private final List<String> announced = new ArrayList<>();
  private String locale = "en-GB";
  private BrowserContext context;
  private Page page;
  private Browser.NewContextOptions look;
  private String person = Crew.ENGINEER;
  private boolean signedIn;

  Screen(Browser browser, RunningService service) {
    this.browser = browser;
    this.service = service;
    this.address = service.address();
    as(1280, 800, ColorScheme.LIGHT);
  }

  /** Starts anew in a window of that size. */
  Screen as(int width, int height, ColorScheme scheme) {
    // Screens come from the service in every test but those about what is kept: a test may hold or
    // change answers, which it cannot do with what a service worker fetches.
    expectComplaint("Service Worker registration blocked");
    look =
        new Browser.NewContextOptions()
            .setViewportSize(width, height)
            .setColorScheme(scheme)
            .setLocale(locale)
            .setServiceWorkers(ServiceWorkerPolicy.BLOCK);
    return anew();
  }

  /** Starts anew with the engineer who signs what the first one drafted. */
  Screen asSecondEngineer() {
    return asPerson(Crew.SECOND_ENGINEER);
  }

  /** Starts anew with somebody who measures and no more. */
  Screen asOperator() {
    return asPerson(Crew.OPERATOR);
  }

  /** Starts anew with somebody who looks after people and tokens. */
  Screen asAdministrator() {
    return asPerson(Crew.ADMINISTRATOR);
  }

  /** Starts anew with nobody signed in. */
  Screen asNobody() {
    return asPerson(null);
  }

  private Screen asPerson(String name) {
    person = name;
    return anew();
  }

  private Screen anew() {
    if (context != null) {
      context.close();
    }
    signedIn = false;
    context = browser.newContext(look);
    page = context.newPage();
    // One listener for the page's life: without it, file dialogs are taken over anew for each wait,
    // and on a busy machine a dialog may open before that has happened.
    page.onFileChooser(chooser -> {});
    page.setDefaultTimeout(PATIENCE_MS);
    page.onConsoleMessage(this::heard);
    page.onPageError(error -> complaints.add("script error: " + error));
    page.addInitScript(
        "document.addEventListener('securitypolicyviolation', event =>"
            + " console.error('policy violation: ' + event.violatedDirective + ' ' + event.blockedURI))");
    return this;
  }

  /** Starts anew for a reader of that language, such as {@code zh-CN}. */
  Screen inLanguage(String language) {
    locale = language;
    return as(1280, 800, ColorScheme.LIGHT);
  }

  /** As {@link #open}, unless this page shows the screens already. */
  Screen openOnce(String hash) {
    return page.url().startsWith(address.toString()) ? this : open(hash);
  }

  /** Opens an address of the screens, such as {@code #/batch/SW-2647}. */
  Screen open(String hash) {
    signIn();
    page.navigate(address + "/" + hash);
    return this;
  }

  private void signIn() {
    if (person != null && !signedIn) {
      Map<String, String> body =
          Map.of("name", person, "password", service.crew().password(person));
      APIResponse answer =
          context.request().post(address + "/api/session", RequestOptions.create().setData(body));
      org.assertj.core.api.Assertions.assertThat(answer.status()).as(answer.text()).isEqualTo(200);
      signedIn = true;
    }
  }

  /**
   * Says that the browser may complain about something, because the test makes it happen. @param
   * part of the complaint
   */
  Screen expectComplaint(String part) {
    announced.add(part);
    return this;
  }

  Page page() {
    return page;
  }

  Locator at(String selector) {
    return page.locator(selector);
  }

  void press(String key) {
    page.keyboard().press(key);
  }

  void type(String text) {
    page.keyboard().type(text);
  }

  void shows(String selector, String text) {
    assertThat(at(selector).first())
        .containsText(
            text,
            new com.microsoft.playwright.assertions.LocatorAssertions.ContainsTextOptions()
                .setTimeout(PATIENCE_MS));
  }

  void hasFocus(String selector) {
    assertThat(at(selector)).isFocused();
  }

  /**
   * Waits until an expression is true. (The library's own waiting writes scripts into the page,
   * which the policy refuses.)
   */
  void until(String expression) {
    long end = System.nanoTime() + (long) (PATIENCE_MS * 1e6);
    while (!Boolean.TRUE.equals(page.evaluate("() => Boolean(" + expression + ")"))) {
      if (System.nanoTime() > end) {
        throw new AssertionError("did not become true: " + expression);
      }
      page.waitForTimeout(50);
    }
  }

  /**
   * @return what a function of the page's own modules says
   */
  Object evaluate(String script) {
    return page.evaluate(script);
  }

  /**
   * @return a filter for elements that hold this text
   */
  static Locator.FilterOptions text(String text) {
    return new Locator.FilterOptions().setHasText(text);
  }

  /**
   * @return the link of exactly this name
   */
  Locator link(String name) {
    return page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private void heard(ConsoleMessage message) {
    if (message.type().equals("error") || message.type().equals("warning")) {
      complaints.add(message.type() + ": " + message.text() + " (" + message.location() + ")");
    }
  }

  void closeAndComplain() {
    context.close();
    List<String> unexpected =
        complaints.stream().filter(line -> announced.stream().noneMatch(line::contains)).toList();
    org.assertj.core.api.Assertions.assertThat(unexpected)
        .as("complaints of the browser")
        .isEmpty();
  }
}
