package evenpair.stations;

import evenpair.acoustics.EarSimulator;
import jakarta.persistence.AttributeConverter;

/** Ear simulators are stored by their standard's name, as limit sets write it. */
class EarSimulatorColumn implements AttributeConverter<EarSimulator, String> {
  @Override
  public String convertToDatabaseColumn(EarSimulator type) {
    return type == null ? null : type.label();
  }

  @Override
  public EarSimulator convertToEntityAttribute(String label) {
    return label == null ? null : EarSimulator.named(label).orElseThrow();
  }
}
