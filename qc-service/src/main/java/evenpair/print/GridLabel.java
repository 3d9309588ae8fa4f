package evenpair.print;

import evenpair.acoustics.Grid;

/** Frequencies as paper shows them. */
public final class GridLabel {
  private GridLabel() {}

  /** @return the rounded preferred number (ISO 3, R80) of the grid point nearest to a frequency, Hz: 8500 for 8413.95 */
  public static double of(double hz) {
    return Grid.label(Grid.nearest(hz));
  }
}
