package evenpair.demo.earpiece;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * One side of a pair: drivers that add up in front of one canal.
 *
 * @param drivers every driver, dead ones too
 * @param canal the canal at nominal insertion
 * @param ventHz corner of the high-pass that the shell's vent makes, Hz
 * @param pascalPerVolt sound pressure for a response of 1, Pa/V; negative if the plug's wires are
 *     swapped
 * @param motion how far the dynamic drivers are from linear
 */
public record Earpiece(
    List<Driver> drivers, Canal canal, double ventHz, double pascalPerVolt, Motion motion) {
  private static final String DYNAMIC = "dynamic";

  /**
   * Acoustic path and front ends of a capture, seconds: what puts the arrival a little behind the
   * electrical signal.
   */
  private static final double PATH_SECONDS = 90e-6;

  public Earpiece {
    drivers = List.copyOf(drivers);
  }

  /**
   * Sound pressure at the simulator's microphone over the voltage at the terminals.
   *
   * @param hz frequencies in hertz, 0 upwards
   * @return H(f) in Pa/V, without the path's delay
   */
  public Phasors response(double[] hz, Mounting mounting) {
    Phasors sum = driven(hz);
    Section.firstOrderHighPass(ventHz).applyTo(sum);
    return mounting.applyTo(sum, canal).scale(pascalPerVolt);
  }

  /**
   * @return the sum of the drivers over the voltage, before vent and canal
   */
  public Phasors driven(double[] hz) {
    Phasors sum = Phasors.constant(hz, 0);
    drivers.forEach(driver -> sum.add(driver.response(hz)));
    return sum;
  }

  /**
   * From the drivers to a recording: vent, canal, seating, sensitivity and the path's delay, Pa/V.
   */
  public Phasors path(double[] hz, Mounting mounting) {
    Phasors path = Section.firstOrderHighPass(ventHz).applyTo(Phasors.constant(hz, pascalPerVolt));
    return mounting.applyTo(path, canal).delay(PATH_SECONDS);
  }

  /**
   * @return how loud the dynamic drivers are together: what {@link Motion} radiates comes from them
   */
  public double dynamicGain() {
    return drivers.stream()
        .filter(driver -> driver.name().startsWith(DYNAMIC))
        .mapToDouble(Driver::gain)
        .sum();
  }

  /**
   * @return the earpiece with another sensitivity
   */
  public Earpiece louder(double db) {
    return new Earpiece(drivers, canal, ventHz, pascalPerVolt * Math.pow(10, db / 20), motion);
  }

  /**
   * @return the earpiece with its two wires swapped: every driver moves the wrong way
   */
  public Earpiece reversed() {
    return new Earpiece(drivers, canal, ventHz, -pascalPerVolt, motion);
  }

  /**
   * @return the earpiece with one driver changed
   */
  Earpiece with(String driver, UnaryOperator<Driver> change) {
    if (drivers.stream().noneMatch(d -> d.name().equals(driver))) {
      throw new IllegalArgumentException("no driver \"" + driver + "\" among " + driverNames());
    }
    return withDrivers(
        drivers.stream().map(d -> d.name().equals(driver) ? change.apply(d) : d).toList());
  }

  Earpiece withDrivers(List<Driver> changed) {
    return new Earpiece(changed, canal, ventHz, pascalPerVolt, motion);
  }

  /**
   * @return the earpiece whose dynamic drivers move another way
   */
  Earpiece moving(UnaryOperator<Motion> change) {
    return new Earpiece(drivers, canal, ventHz, pascalPerVolt, change.apply(motion));
  }

  /**
   * A weak magnet or a stiff surround: the dynamic drivers lose their lowest octaves.
   *
   * @param hz corner of the first-order low shelf
   * @param gainDb its gain, below 0 for a loss
   */
  public Earpiece weakBass(double hz, double gainDb) {
    Section shelf = Section.lowShelf(hz, gainDb);
    return withDrivers(
        drivers.stream()
            .map(driver -> driver.name().startsWith(DYNAMIC) ? driver.and(shelf) : driver)
            .toList());
  }

  /**
   * @return the drivers' names in order
   */
  public List<String> driverNames() {
    return drivers.stream().map(Driver::name).toList();
  }

  /**
   * @return what is true of it, for the record: sensitivity, and each driver's gain, crossover and
   *     resonances
   */
  public Map<String, Object> truth() {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("pascalPerVolt", pascalPerVolt);
    facts.put("motion", motion.truth());
    facts.put("drivers", drivers.stream().map(Driver::truth).toList());
    return facts;
  }

  /**
   * @return the earpiece whose sensitivity is such that this voltage gives this level at 1 kHz at
   *     nominal mounting
   */
  Earpiece calibrated(double millivoltsRms, double levelDb) {
    double wantedPascal = 20e-6 * Math.pow(10, levelDb / 20);
    double now =
        Math.sqrt(response(new double[] {1000}, Mounting.NOMINAL).power(0)) * millivoltsRms / 1000;
    return new Earpiece(drivers, canal, ventHz, pascalPerVolt * wantedPascal / now, motion);
  }
}
