package evenpair.print;

import evenpair.acoustics.Grid;

/** How paper names a point of the grid: people read the preferred number, not the exact one. */
public final class PreferredFrequency {
  private PreferredFrequency() {}

  /**
   * @param hz an exact grid frequency, Hz
   * @return its rounded R80 number (ISO 3), Hz: 8500 for 8413.95
   */
  public static double of(double hz) {
    return Grid.label(Grid.nearest(hz));
  }
}
