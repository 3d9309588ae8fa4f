package evenpair.acoustics;

import java.util.Arrays;
import java.util.Optional;

/**
 * Types of ear simulator (coupler) by their standard, with the range for which the standard
 * specifies them. Captures and limit sets of different types never meet.
 */
public enum EarSimulator {
  /**
   * Occluded-ear simulator for insert earphones; specified 100 Hz … 10 kHz (IEC 60318-4:2010,
   * catalogue abstract).
   */
  IEC_60318_4("IEC 60318-4", new Band(100, 10_000)),
  /** 2 cm³ coupler for insert earphones; specified 125 Hz … 8 kHz (IEC 60318-5, from memory). */
  IEC_60318_5("IEC 60318-5", new Band(125, 8_000));

  private final String label;
  private final Band specified;

  EarSimulator(String label, Band specified) {
    this.label = label;
    this.specified = specified;
  }

  /**
   * @return the standard's name as limit sets write it
   */
  public String label() {
    return label;
  }

  /**
   * @return the span in which values may be taken to represent what the standard says; outside,
   *     they only compare
   */
  public Band specifiedRange() {
    return specified;
  }

  /**
   * @return the type whose label is exactly this, if known
   */
  public static Optional<EarSimulator> named(String label) {
    return Arrays.stream(values()).filter(type -> type.label.equals(label)).findFirst();
  }
}
