package evenpair.inspections;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * Lets requests with one name in one after the other, before any of them has a database connection:
 * a rig that repeats itself impatiently must not use up the connections of all others. Between
 * processes the database's own locks do that, with one connection a process at most.
 */
final class KeyTurns {
  private final Map<String, Turn> turns = new ConcurrentHashMap<>();

  private static final class Turn {
    private final ReentrantLock lock = new ReentrantLock(true);
    private int users;
  }

  <T> T alone(String name, Supplier<T> work) {
    Turn turn = turns.compute(name, (any, known) -> joined(known));
    turn.lock.lock();
    try {
      return work.get();
    } finally {
      turn.lock.unlock();
      turns.compute(name, (any, known) -> left(turn));
    }
  }

  private static Turn joined(Turn known) {
    Turn turn = known == null ? new Turn() : known;
    turn.users++;
    return turn;
  }

  private static Turn left(Turn turn) {
    turn.users--;
    return turn.users == 0 ? null : turn;
  }

  /**
   * @return how many names are in use or waited for
   */
  int names() {
    return turns.size();
  }
}
