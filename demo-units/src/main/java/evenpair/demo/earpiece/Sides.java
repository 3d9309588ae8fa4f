package evenpair.demo.earpiece;

import evenpair.tolerance.Channel;
import java.util.function.UnaryOperator;

/** The two earpieces of one pair. */
public record Sides(Earpiece left, Earpiece right) {
  /**
   * @return the earpiece of that side
   */
  public Earpiece of(Channel side) {
    return side == Channel.LEFT ? left : right;
  }

  /**
   * @return the pair with left and right changed places: a swap study's second half
   */
  public Sides swapped() {
    return new Sides(right, left);
  }

  /**
   * @return the pair with one earpiece changed
   */
  public Sides with(Channel side, UnaryOperator<Earpiece> change) {
    return side == Channel.LEFT
        ? new Sides(change.apply(left), right)
        : new Sides(left, change.apply(right));
  }
}
