package evenpair.inspections.dropfolder;

import java.time.Instant;
import java.util.List;

/** How the watched folders are doing. */
public interface DropFolderStates {
  /**
   * @return one for each folder of the settings, in their order; empty where none is set
   */
  List<State> states();

  /**
   * @param station whose files they are
   * @param watching true: this process watches it; false: another one does, or it cannot be reached
   * @param waiting sets that are not whole yet or cannot be taken at the moment
   * @param taken sets taken since this process started
   * @param refused sets refused since then
   * @param lastTakenAt null if none was since then
   * @param problem why nothing gets through, in English; null if all is well
   */
  record State(
      String station,
      boolean watching,
      int waiting,
      long taken,
      long refused,
      Instant lastTakenAt,
      String problem) {}
}
