package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.DropFolderSettings.Folder;
import evenpair.web.ProblemDocuments;
import evenpair.web.StartRefused;
import evenpair.web.Texts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Watches the folders of the settings, each on a thread of its own: a network share that hangs
 * holds up nobody else. Starts last and stops first; a set that is being taken is finished.
 */
@Component
@EnableConfigurationProperties(DropFolderSettings.class)
class DropFolders implements SmartLifecycle, DropFolderStates {
  private static final Logger LOG = LoggerFactory.getLogger(DropFolders.class);
  private static final long STOP_SECONDS = 20;

  private final DropFolderSettings settings;
  private final List<DropFolder> folders = new ArrayList<>();
  private ScheduledExecutorService threads;

  DropFolders(
      DropFolderSettings settings,
      Ingest ingest,
      Texts texts,
      ProblemDocuments problems,
      JsonMapper json,
      Clock clock,
      @Value("${evenpair.capture-max-bytes}") long largest,
      @Value("${spring.web.locale:en}") Locale otherwise) {
    this.settings = settings;
    Locale locale = Optional.ofNullable(settings.language()).orElse(otherwise);
    Reports reports = new Reports(texts, refusal -> problems.of(refusal, locale), json, locale);
    var around = new DropFolder.Surroundings(settings, largest, ingest, reports, locale, clock);
    for (Folder folder : settings.folders()) {
      requireWritable(folder.path());
      folders.add(new DropFolder(folder, around));
    }
  }

  private static void requireWritable(Path folder) {
    try {
      Path desk = Files.createDirectories(folder.resolve(DropFolder.DESK));
      Path trial = Files.createTempFile(desk, "trial", ".tmp");
      Path done = Files.createDirectories(folder.resolve(Outcome.DONE));
      Files.createDirectories(folder.resolve(Outcome.REFUSED));
      Path moved = done.resolve(trial.getFileName());
      Files.move(trial, moved, StandardCopyOption.ATOMIC_MOVE);
      Files.delete(moved);
    } catch (IOException e) {
      throw new StartRefused(
          "The drop folder " + folder + " cannot be written: " + e + ".",
          "Make that folder and let this user write in it (done/ and refused/ on the same disk), or take it out of"
              + " evenpair.drop-folder.folders.",
          e);
    }
  }

  @Override
  public List<State> states() {
    return folders.stream().map(DropFolder::state).toList();
  }

  @Override
  public synchronized void start() {
    if (folders.isEmpty()) {
      return;
    }
    threads = Executors.newScheduledThreadPool(folders.size(), DropFolders::thread);
    long pause = settings.interval().toMillis();
    for (DropFolder folder : folders) {
      threads.scheduleWithFixedDelay(folder::look, 0, pause, TimeUnit.MILLISECONDS);
    }
  }

  private static Thread thread(Runnable task) {
    Thread thread = new Thread(task, "drop-folder");
    thread.setDaemon(true);
    return thread;
  }

  @Override
  public synchronized void stop() {
    if (threads == null) {
      return;
    }
    threads.shutdown();
    try {
      if (!threads.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS)) {
        LOG.warn(
            "A drop folder does not answer; what was being taken is finished at the next start");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    threads = null;
    folders.forEach(DropFolders::letGo);
  }

  private static void letGo(DropFolder folder) {
    try {
      folder.close();
    } catch (IOException e) {
      LOG.info("The lock of a drop folder was not released: {}", e.getMessage());
    }
  }

  @Override
  public synchronized boolean isRunning() {
    return threads != null;
  }
}
