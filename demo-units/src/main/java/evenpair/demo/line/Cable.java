package evenpair.demo.line;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.FilterChain;
import java.util.List;
import java.util.Optional;

/**
 * What stands between the stimulus and the earphone's terminals: a plain cable (the bench's own
 * output), or a USB cable whose signal processor carries one of the product's tunings.
 *
 * @param tuning the tuning's key
 * @param required whether a unit must pass it
 * @param filters empty for the plain cable; else the tuning's filters in order, its overall gain
 *     among them
 */
public record Cable(String tuning, boolean required, Optional<FilterChain> filters) {
  /**
   * Output of the USB cable for digital full scale, V: such that −12 dBFS gives 180 mV r.m.s.
   * through a straight wire.
   */
  static final double USB_VOLTS_PER_FULL_SCALE = Math.sqrt(2) * 0.180 / Math.pow(10, -12.0 / 20);

  /**
   * @return true for the cable without signal processing, driven by the bench's own output
   */
  public boolean plain() {
    return filters.isEmpty();
  }

  /**
   * @param frames true: its supply lets the bus's frames through
   * @return what it puts into the earpiece while nothing plays
   */
  Hum hum(boolean frames) {
    if (plain()) {
      return Hum.NONE;
    }
    return frames ? Hum.USB_FRAMES : Hum.USB;
  }

  /**
   * @param stimulus re full scale
   * @param benchVoltsPerFullScale the bench's own output, V
   * @return the voltage at the earphone's terminals, V
   */
  double[] drive(double[] stimulus, double benchVoltsPerFullScale) {
    double[] signal = filters.map(chain -> chain.filter(stimulus)).orElseGet(stimulus::clone);
    double voltsPerFullScale = plain() ? benchVoltsPerFullScale : USB_VOLTS_PER_FULL_SCALE;
    for (int n = 0; n < signal.length; n++) {
      signal[n] *= voltsPerFullScale;
    }
    return signal;
  }

  static Cable plain(String tuning, boolean required) {
    return new Cable(tuning, required, Optional.empty());
  }

  static Cable usb(String tuning, boolean required, List<Biquad> filters, double rateHz) {
    return new Cable(tuning, required, Optional.of(new FilterChain(filters, rateHz)));
  }
}
