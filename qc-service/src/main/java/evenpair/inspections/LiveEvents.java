package evenpair.inspections;

import evenpair.web.Refusal;
import jakarta.annotation.PreDestroy;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/**
 * Server-sent events to live screens. Best effort: a screen that falls behind or goes away is let
 * go and reads the lists when it comes back; recording never waits for a listener.
 */
@Component
class LiveEvents implements LiveWire.Sink {
  private final Set<LiveClient> clients = ConcurrentHashMap.newKeySet();
  private final ExecutorService senders = Executors.newCachedThreadPool(daemons());
  private final int most;

  LiveEvents(InspectionSettings settings) {
    this.most = settings.liveClients();
  }

  /** What an event carries. */
  record Note(
      UUID id,
      String serial,
      String station,
      String batch,
      String product,
      String tuning,
      String state,
      String verdict,
      String lastAttempt) {
    static Note of(InspectionRow row) {
      return new Note(
          row.id(),
          row.serial(),
          row.station(),
          row.batch(),
          row.product(),
          row.tuning(),
          row.state().word(),
          InspectionJsons.name(row.verdict()),
          InspectionJsons.lastAttempt(row));
    }
  }

  /**
   * @throws Refusal 503 if as many listen already as the settings allow
   */
  synchronized SseEmitter listen() {
    if (clients.size() >= most) {
      throw new Refusal(
          503,
          "too-many-listeners",
          "As many as " + most + " screens listen already; try again later.");
    }
    SseEmitter emitter = new SseEmitter(0L);
    LiveClient client = new LiveClient(emitter, senders, clients::remove);
    clients.add(client);
    client.comment("listening");
    return emitter;
  }

  @Override
  public void send(String event, Object json) {
    clients.forEach(client -> client.event(event, json));
  }

  /** Screens that may have missed something come back and read the lists again. */
  @Override
  public void missed() {
    clients.forEach(LiveClient::leave);
  }

  /** Keeps proxies from closing an idle stream, and finds listeners that have gone. */
  @Scheduled(fixedRateString = "${evenpair.inspections.heartbeat:15s}")
  void heartbeat() {
    clients.forEach(client -> client.comment("still here"));
  }

  int listeners() {
    return clients.size();
  }

  @PreDestroy
  void stop() {
    clients.forEach(LiveClient::leave);
    senders.shutdown();
  }

  private static ThreadFactory daemons() {
    AtomicInteger number = new AtomicInteger();
    return task -> {
      Thread thread = new Thread(task, "live-events-" + number.incrementAndGet());
      thread.setDaemon(true);
      return thread;
    };
  }
}
