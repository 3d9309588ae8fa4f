package evenpair.web.jobs;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationContext;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import org.springframework.web.context.WebApplicationContext;

/**
 * This process's hands for long work: two, so that a short job need not wait for a long one. They
 * look for work every second, and at once when this process was given some.
 */
@Component
class JobWorkers implements SmartLifecycle {
  private static final Logger LOG = LoggerFactory.getLogger(JobWorkers.class);
  private static final int HANDS = 2;
  private static final long LOOK_SECONDS = 1;
  private static final long GOODBYE_MILLIS = 10_000;

  private final JobRunner runner;
  private final Semaphore bell = new Semaphore(0);
  private final List<Thread> hands = new ArrayList<>();
  private final boolean listening;
  private volatile boolean running;

  /**
   * @param context one that does not listen runs a single command: it leaves long work to others
   */
  JobWorkers(JobRunner runner, ApplicationContext context) {
    this.runner = runner;
    this.listening = context instanceof WebApplicationContext;
  }

  /** There is work. */
  void ring() {
    bell.release();
  }

  @Override
  public synchronized void start() {
    if (running || !listening) {
      return;
    }
    running = true;
    for (int i = 1; i <= HANDS; i++) {
      Thread hand = new Thread(this::work, "job-" + i);
      hand.setDaemon(true);
      hands.add(hand);
      hand.start();
    }
  }

  private void work() {
    while (running) {
      try {
        if (!runner.runOneStep()) {
          bell.tryAcquire(LOOK_SECONDS, TimeUnit.SECONDS);
        }
      } catch (InterruptedException e) {
        return;
      } catch (RuntimeException e) {
        if (running) {
          LOG.warn("Long work could not be looked for; tried again in a second", e);
        }
        rest();
      }
    }
  }

  private void rest() {
    try {
      TimeUnit.SECONDS.sleep(LOOK_SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A step that is being done may end; what is not done by then is done after the next start. */
  @Override
  public synchronized void stop() {
    running = false;
    bell.release(HANDS);
    for (Thread hand : hands) {
      try {
        hand.join(GOODBYE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    hands.clear();
  }

  @Override
  public boolean isRunning() {
    return running;
  }
}
