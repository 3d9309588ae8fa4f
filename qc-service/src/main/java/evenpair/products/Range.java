package evenpair.products;

/** The numbers that a key allows, ends included unless the lower one is said to be outside. */
record Range(double lowest, boolean lowestAllowed, double highest) {
  static Range from(double lowest, double highest) {
    return new Range(lowest, true, highest);
  }

  static Range above(double lowest, double highest) {
    return new Range(lowest, false, highest);
  }

  boolean holds(double value) {
    return (lowestAllowed ? value >= lowest : value > lowest) && value <= highest;
  }

  /**
   * @return such as {@code a number above 0, at most 40}
   */
  String words() {
    return (lowestAllowed ? "a number from " : "a number above ")
        + Decimal.text(lowest)
        + (lowestAllowed ? " to " : ", at most ")
        + Decimal.text(highest);
  }
}
