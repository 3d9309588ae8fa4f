package evenpair.print;

import java.util.Locale;

/** How tightly a table is set, so that a page with many rows stays one page. */
enum Density {
  /** As drawn. */
  ROOMY(1.0, 1.0),
  /** Rows at two thirds of their height: for tables that would push the plot off the page. */
  TIGHT(0.66, 0.8);

  private final double rowScale;
  private final double typeScale;

  Density(double rowScale, double typeScale) {
    this.rowScale = rowScale;
    this.typeScale = typeScale;
  }

  /**
   * @return a type size in points, for this density
   */
  double scaledType(double points) {
    return points * typeScale;
  }

  /**
   * @return a height in points, for this density
   */
  double scaled(double points) {
    return points * rowScale;
  }

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
