package evenpair.inspections.plant;

/** Whether this process hears of what others record. */
public interface OtherProcesses {
  /**
   * @return false while the connection for live events is down
   */
  boolean heard();
}
