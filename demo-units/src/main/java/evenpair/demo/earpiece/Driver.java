package evenpair.demo.earpiece;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One driver with its resonance and crossover: gain · Π sections.
 *
 * @param name such as {@code upper tweeter}
 * @param gain linear, its sign is the driver's own polarity; 0 is a dead driver
 * @param sections crossover and resonances
 */
record Driver(String name, double gain, List<Section> sections) {
  Driver {
    sections = List.copyOf(sections);
  }

  static Driver of(String name, double gain, Section... sections) {
    return new Driver(name, gain, List.of(sections));
  }

  Driver louder(double db) {
    return new Driver(name, gain * Math.pow(10, db / 20), sections);
  }

  Driver dead() {
    return new Driver(name, 0, sections);
  }

  /**
   * @return the driver with every crossover and resonance at factor times its frequency
   */
  Driver tuned(double factor) {
    return new Driver(name, gain, sections.stream().map(section -> section.tuned(factor)).toList());
  }

  /**
   * @return the driver with its first section, the crossover, at factor times its frequency
   */
  Driver crossedOverAt(double factor) {
    List<Section> moved = new ArrayList<>(sections);
    moved.set(0, moved.get(0).tuned(factor));
    return new Driver(name, gain, moved);
  }

  /**
   * @return the driver behind one more section
   */
  Driver and(Section section) {
    List<Section> more = new ArrayList<>(sections);
    more.add(section);
    return new Driver(name, gain, more);
  }

  /**
   * @return name, gain, and the frequencies of its sections in order, the crossover first
   */
  Map<String, Object> truth() {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("name", name);
    facts.put("gain", gain);
    facts.put("hz", sections.stream().map(Section::hz).toList());
    return facts;
  }

  Phasors response(double[] hz) {
    Phasors response = Phasors.constant(hz, gain);
    sections.forEach(section -> section.applyTo(response));
    return response;
  }
}
