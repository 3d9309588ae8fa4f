package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.DropFolderStates.State;
import java.time.Instant;

/** What a watched folder has come to since this process started. Read by other threads. */
final class Progress {
  private State state;

  Progress(String station) {
    this.state = new State(station, false, 0, 0, 0, null, null);
  }

  synchronized State state() {
    return state;
  }

  synchronized void elsewhere() {
    state =
        new State(
            state.station(), false, 0, state.taken(), state.refused(), state.lastTakenAt(), null);
  }

  /**
   * @return true if the problem is news
   */
  synchronized boolean unreachable(String problem) {
    boolean news = !problem.equals(state.problem());
    state =
        new State(
            state.station(),
            false,
            state.waiting(),
            state.taken(),
            state.refused(),
            state.lastTakenAt(),
            problem);
    return news;
  }

  /**
   * @param problem null if none
   */
  synchronized void looked(int waiting, String problem) {
    state =
        new State(
            state.station(),
            true,
            waiting,
            state.taken(),
            state.refused(),
            state.lastTakenAt(),
            problem);
  }

  synchronized void taken(Instant at) {
    state =
        new State(
            state.station(),
            true,
            state.waiting(),
            state.taken() + 1,
            state.refused(),
            at,
            state.problem());
  }

  synchronized void refused() {
    state =
        new State(
            state.station(),
            true,
            state.waiting(),
            state.taken(),
            state.refused() + 1,
            state.lastTakenAt(),
            state.problem());
  }
}
