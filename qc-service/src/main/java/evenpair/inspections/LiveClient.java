package evenpair.inspections;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import org.springframework.http.MediaType;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** One listening screen with a short queue of its own, so that a slow one delays nobody else. */
final class LiveClient {
  private static final int LONGEST_QUEUE = 256;

  private final SseEmitter emitter;
  private final Executor senders;
  private final Consumer<LiveClient> gone;
  private final Deque<SseEmitter.SseEventBuilder> queue = new ArrayDeque<>();
  private boolean sending;
  private boolean left;

  LiveClient(SseEmitter emitter, Executor senders, Consumer<LiveClient> gone) {
    this.emitter = emitter;
    this.senders = senders;
    this.gone = gone;
    emitter.onCompletion(() -> gone.accept(this));
    emitter.onTimeout(() -> gone.accept(this));
    emitter.onError(error -> gone.accept(this));
  }

  void event(String name, Object data) {
    add(SseEmitter.event().name(name).data(data, MediaType.APPLICATION_JSON));
  }

  void comment(String text) {
    add(SseEmitter.event().comment(text));
  }

  private synchronized void add(SseEmitter.SseEventBuilder event) {
    if (left) {
      return;
    }
    if (queue.size() >= LONGEST_QUEUE) {
      leave();
      return;
    }
    queue.add(event);
    if (!sending) {
      sending = true;
      start();
    }
  }

  private void start() {
    try {
      senders.execute(this::drain);
    } catch (RejectedExecutionException e) {
      leave();
    }
  }

  private void drain() {
    for (SseEmitter.SseEventBuilder event = next(); event != null; event = next()) {
      try {
        emitter.send(event);
      } catch (IOException | IllegalStateException e) {
        // the container has seen the broken connection and ends the stream by itself
        dropped();
      }
    }
  }

  private synchronized SseEmitter.SseEventBuilder next() {
    SseEmitter.SseEventBuilder event = left ? null : queue.poll();
    sending = event != null;
    return event;
  }

  /** Ends the stream; the screen may come back. */
  void leave() {
    if (dropped()) {
      try {
        emitter.complete();
      } catch (IllegalStateException e) {
        // the container has ended the stream before us, as it does when it stops
        return;
      }
    }
  }

  /**
   * @return false if it had left before
   */
  private boolean dropped() {
    synchronized (this) {
      if (left) {
        return false;
      }
      left = true;
      queue.clear();
    }
    gone.accept(this);
    return true;
  }
}
