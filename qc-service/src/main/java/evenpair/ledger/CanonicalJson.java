package evenpair.ledger;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.erdtman.jcs.JsonCanonicalizer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.json.JsonWriteFeature;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;

/**
 * RFC 8785 canonical JSON: the same content always has the same bytes. Instants are cut to
 * microseconds, which is what the database keeps. Numbers are IEEE doubles there; what a double
 * cannot hold exactly is refused, NaN and infinities too.
 */
final class CanonicalJson {
  /** 2^53 − 1: beyond it neighbouring whole numbers share one double. */
  private static final long LARGEST_EXACT = (1L << 53) - 1;

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .disable(
              JsonWriteFeature
                  .WRITE_NAN_AS_STRINGS) // a bare NaN is no JSON, so the canonicalizer refuses it
          .addModule(
              new SimpleModule("canonical")
                  .addSerializer(Instant.class, new InstantWriter())
                  .addSerializer(Long.class, new LongWriter())
                  .addSerializer(long.class, new LongWriter())
                  .addSerializer(BigInteger.class, new Refused<>())
                  .addSerializer(BigDecimal.class, new Refused<>()))
          .build();

  private CanonicalJson() {}

  /**
   * @param content any object that Jackson writes as JSON
   * @return UTF-8
   * @throws IllegalArgumentException if it holds a number that a double cannot carry
   */
  static byte[] of(Object content) {
    String json = MAPPER.writeValueAsString(content);
    try {
      return new JsonCanonicalizer(json).getEncodedUTF8();
    } catch (IOException e) {
      throw new IllegalArgumentException("not canonical JSON: " + e.getMessage(), e);
    }
  }

  private static final class InstantWriter extends ValueSerializer<Instant> {
    @Override
    public void serialize(Instant value, JsonGenerator json, SerializationContext context) {
      json.writeString(value.truncatedTo(ChronoUnit.MICROS).toString());
    }
  }

  private static final class LongWriter extends ValueSerializer<Long> {
    @Override
    public void serialize(Long value, JsonGenerator json, SerializationContext context) {
      if (Math.abs(value) > LARGEST_EXACT || value == Long.MIN_VALUE) {
        throw new IllegalArgumentException(value + " is beyond 2^53 − 1: write it as a string");
      }
      json.writeNumber(value);
    }
  }

  private static final class Refused<T> extends ValueSerializer<T> {
    @Override
    public void serialize(T value, JsonGenerator json, SerializationContext context) {
      throw new IllegalArgumentException(
          value.getClass().getSimpleName() + " is no double: write it as a string");
    }
  }
}
