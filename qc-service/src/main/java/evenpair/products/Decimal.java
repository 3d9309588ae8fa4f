package evenpair.products;

import java.math.BigDecimal;

/**
 * Numbers as limits are written: the shortest decimal that reads back as the same double, without
 * exponent or {@code .0}.
 */
final class Decimal {
  private Decimal() {}

  static String text(double value) {
    if (value == 0) {
      return "0";
    }
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }
}
