package evenpair.acoustics;

/**
 * A span of frequency. It holds the grid points with from ≤ f ≤ to, compared on the rounded R80
 * labels, so that {@code [20, 200]} holds the points labelled 20 Hz and 200 Hz.
 *
 * @param fromHz lower end in hertz, above 0
 * @param toHz upper end in hertz, not below the lower end
 */
public record Band(double fromHz, double toHz) {
  /**
   * @throws IllegalArgumentException if an end is not finite, not above 0, or the ends are in the
   *     wrong order
   */
  public Band {
    if (!(fromHz > 0) || !Double.isFinite(toHz) || !(toHz >= fromHz)) {
      throw new IllegalArgumentException(
          "a band must rise from above 0 Hz, was " + fromHz + " … " + toHz + " Hz");
    }
  }

  /**
   * @return true if the grid point's label lies in the band
   */
  public boolean holds(int gridIndex) {
    double label = Grid.label(gridIndex);
    return label >= fromHz && label <= toHz;
  }

  /**
   * @return the first grid index inside, or 241 if the band holds no point above its lower end
   */
  public int firstIndex() {
    int index = 0;
    while (index < Grid.POINTS && Grid.label(index) < fromHz) {
      index++;
    }
    return index;
  }

  /**
   * @return the last grid index inside, or −1 if the band holds no point below its upper end
   */
  public int lastIndex() {
    int index = Grid.POINTS - 1;
    while (index >= 0 && Grid.label(index) > toHz) {
      index--;
    }
    return index;
  }

  /**
   * @return how many grid points the band holds; 0 if it lies between two points or outside the
   *     grid
   */
  public int points() {
    return Math.max(0, lastIndex() - firstIndex() + 1);
  }
}
