package evenpair.web;

import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.module.SimpleModule;

/**
 * JSON knows no NaN. Coming in, only a finite number is a number (not the word "NaN"). Going out, a
 * NaN in an array is an absent point of a curve and becomes null; anywhere else, and any infinity,
 * is a mistake of ours and is refused.
 */
@Configuration(proxyBeanMethods = false)
class FiniteNumbers {
  @Bean
  JsonMapperBuilderCustomizer finiteNumbersOnly() {
    return builder -> builder.addModule(module());
  }

  static SimpleModule module() {
    SimpleModule module = new SimpleModule("finite numbers");
    module
        .addDeserializer(double.class, new Reader(0.0))
        .addDeserializer(Double.class, new Reader(null));
    module
        .addSerializer(Double.class, new ScalarWriter())
        .addSerializer(double.class, new ScalarWriter());
    module
        .addSerializer(double[].class, new DoublesWriter())
        .addSerializer(float[].class, new FloatsWriter());
    return module;
  }

  private static final class Reader extends ValueDeserializer<Double> {
    private final Double whenNull;

    private Reader(Double whenNull) {
      this.whenNull = whenNull;
    }

    @Override
    public Double deserialize(JsonParser parser, DeserializationContext context) {
      JsonToken token = parser.currentToken();
      if (token == JsonToken.VALUE_NUMBER_INT || token == JsonToken.VALUE_NUMBER_FLOAT) {
        double value = parser.getDoubleValue();
        if (Double.isFinite(value)) {
          return value;
        }
      }
      return (Double)
          context.handleWeirdNativeValue(
              context.constructType(Double.class), parser.getString(), parser);
    }

    @Override
    public Double getNullValue(DeserializationContext context) {
      if (whenNull != null) {
        return context.reportInputMismatch(this, "must be a finite number, not null");
      }
      return null;
    }
  }

  private static final class ScalarWriter extends ValueSerializer<Double> {
    @Override
    public void serialize(Double value, JsonGenerator json, SerializationContext context) {
      json.writeNumber(finite(value));
    }
  }

  private static final class DoublesWriter extends ValueSerializer<double[]> {
    @Override
    public void serialize(double[] values, JsonGenerator json, SerializationContext context) {
      json.writeStartArray();
      for (double value : values) {
        if (Double.isNaN(value)) {
          json.writeNull();
        } else {
          json.writeNumber(finite(value));
        }
      }
      json.writeEndArray();
    }
  }

  private static final class FloatsWriter extends ValueSerializer<float[]> {
    @Override
    public void serialize(float[] values, JsonGenerator json, SerializationContext context) {
      json.writeStartArray();
      for (float value : values) {
        if (Float.isNaN(value)) {
          json.writeNull();
        } else {
          finite(value);
          json.writeNumber(value);
        }
      }
      json.writeEndArray();
    }
  }

  private static double finite(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalStateException("a number that is to be written as JSON is " + value);
    }
    return value;
  }
}
