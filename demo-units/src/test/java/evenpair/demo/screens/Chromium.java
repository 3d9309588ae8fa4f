package evenpair.demo.screens;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The one browser of a test run: found on this machine, never downloaded. */
final class Chromium implements AutoCloseable {
  /** What to do where there is none. */
  static final String MEND =
      "no Chromium found: install chromium (apt-get install chromium), or name it in EVENPAIR_CHROMIUM";

  private static final List<String> NAMES =
      List.of("chromium", "chromium-browser", "google-chrome", "chrome");
  private static final List<String> FLAGS =
      List.of(
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  private final Playwright playwright;
  private final Browser browser;

  private Chromium(Playwright playwright, Browser browser) {
    this.playwright = playwright;
    this.browser = browser;
  }

  /**
   * @return the executable: what the environment names, else the first known name on the path
   */
  static Optional<Path> find() {
    String named = System.getenv("EVENPAIR_CHROMIUM");
    if (named != null && !named.isBlank()) {
      return Optional.of(Path.of(named)).filter(Files::isExecutable);
    }
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .flatMap(folder -> NAMES.stream().map(name -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst();
  }

  static Chromium start() {
    return start(new BrowserType.LaunchOptions().setArgs(FLAGS));
  }

  /**
   * A browser that can be heard: it plays and records through the sound device of an environment,
   * and grants itself the microphone. What a person does by a click is done by flags.
   */
  static Chromium startWithSound(Map<String, String> environment) {
    List<String> flags = new ArrayList<>(FLAGS);
    flags.add("--use-fake-ui-for-media-stream");
    flags.add("--autoplay-policy=no-user-gesture-required");
    return start(
        new BrowserType.LaunchOptions()
            .setArgs(flags)
            .setIgnoreDefaultArgs(List.of("--mute-audio"))
            .setEnv(environment));
  }

  private static Chromium start(BrowserType.LaunchOptions options) {
    Path executable = find().orElseThrow(() -> new IllegalStateException(MEND));
    Playwright playwright =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    options.setExecutablePath(executable).setHeadless(true);
    return new Chromium(playwright, playwright.chromium().launch(options));
  }

  /**
   * A browser of its own that keeps what it remembers in a folder, as the one of a bench does.
   *
   * @param folder that names it: its processes carry it in their command line
   */
  BrowserContext keeping(Path folder) {
    return playwright
        .chromium()
        .launchPersistentContext(
            folder,
            new BrowserType.LaunchPersistentContextOptions()
                .setExecutablePath(find().orElseThrow())
                .setArgs(FLAGS)
                .setHeadless(true)
                .setLocale("en-GB")
                .setViewportSize(1280, 800));
  }

  Browser browser() {
    return browser;
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }
}
