package evenpair.batches;

import static org.apache.parquet.schema.LogicalTypeAnnotation.listType;
import static org.apache.parquet.schema.LogicalTypeAnnotation.stringType;
import static org.apache.parquet.schema.LogicalTypeAnnotation.timestampType;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.BINARY;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.BOOLEAN;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.DOUBLE;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.FLOAT;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.INT32;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.INT64;

import evenpair.batches.ExportColumn.Kind;
import evenpair.inspections.InspectionStream.StreamedInspection;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionView;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.conf.ParquetConfiguration;
import org.apache.parquet.hadoop.api.WriteSupport;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.io.api.RecordConsumer;
import org.apache.parquet.schema.LogicalTypeAnnotation.TimeUnit;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.Type;
import org.apache.parquet.schema.Types;

/** The schema of the file, and how a row is written into it. Every field may be null. */
final class ParquetRows extends WriteSupport<StreamedInspection> {
  private static final Type TEXT_ELEMENT = Types.optional(BINARY).as(stringType()).named("element");

  private final Map<String, String> metadata;
  private RecordConsumer out;

  ParquetRows(Map<String, String> metadata) {
    this.metadata = metadata;
  }

  static MessageType schema() {
    List<Type> fields = new ArrayList<>();
    for (ExportColumn column : ExportColumn.ALL) {
      fields.add(field(column.name(), column.kind()));
    }
    return new MessageType("inspections", fields);
  }

  private static Type field(String name, Kind kind) {
    return switch (kind) {
      case TEXT -> Types.optional(BINARY).as(stringType()).named(name);
      case BOOLEAN -> Types.optional(BOOLEAN).named(name);
      case INTEGER -> Types.optional(INT32).named(name);
      case DOUBLE -> Types.optional(DOUBLE).named(name);
      case INSTANT -> Types.optional(INT64).as(timestampType(true, TimeUnit.MICROS)).named(name);
      case CURVE -> list(name, Types.optional(FLOAT).named("element"));
      case REASONS -> list(name, struct(reason(null)));
      case REGIONS -> list(name, struct(region(null)));
    };
  }

  /** The three-level list of the format: {@code name.list.element}. */
  private static Type list(String name, Type element) {
    return Types.optionalGroup()
        .as(listType())
        .addField(Types.repeatedGroup().addField(element).named("list"))
        .named(name);
  }

  private static Type struct(Map<String, Object> fields) {
    Types.GroupBuilder<org.apache.parquet.schema.GroupType> group = Types.optionalGroup();
    fields.forEach((name, value) -> group.addField(typed(name, value)));
    return group.named("element");
  }

  private static Type typed(String name, Object value) {
    if (value instanceof Class<?> type && type == Boolean.class) {
      return Types.optional(BOOLEAN).named(name);
    }
    return value == Double.class
        ? Types.optional(DOUBLE).named(name)
        : value == List.class
            ? list(name, TEXT_ELEMENT)
            : Types.optional(BINARY).as(stringType()).named(name);
  }

  /**
   * @param view null: the types instead of the values
   */
  private static Map<String, Object> reason(ReasonView view) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("check", view == null ? String.class : view.kind());
    fields.put("channel", view == null ? String.class : view.channel());
    fields.put("region", view == null ? String.class : view.region());
    fields.put("at_hz", view == null ? Double.class : view.frequencyHz());
    fields.put("measured", view == null ? Double.class : view.measuredDb());
    fields.put("limit", view == null ? Double.class : view.limitDb());
    fields.put("also_regions", view == null ? List.class : view.alsoRegions());
    fields.put("text", view == null ? String.class : view.text());
    return fields;
  }

  /**
   * @param view null: the types instead of the values
   */
  private static Map<String, Object> region(RegionView view) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("check", view == null ? String.class : view.check());
    fields.put("region", view == null ? String.class : view.name());
    fields.put("channel", view == null ? String.class : view.channel());
    fields.put("judged", view == null ? Boolean.class : (Object) view.judged());
    fields.put("state", view == null ? String.class : view.state());
    fields.put("margin", view == null ? Double.class : view.marginDb());
    fields.put("at_hz", view == null ? Double.class : view.atHz());
    fields.put("measured", view == null ? Double.class : view.measuredDb());
    fields.put("limit", view == null ? Double.class : view.limitDb());
    fields.put("guard", view == null ? Double.class : view.guardDb());
    fields.put("unit", view == null ? String.class : view.unit());
    return fields;
  }

  @Override
  public WriteContext init(Configuration unused) {
    return new WriteContext(schema(), metadata);
  }

  @Override
  public WriteContext init(ParquetConfiguration unused) {
    return new WriteContext(schema(), metadata);
  }

  @Override
  public void prepareForWrite(RecordConsumer consumer) {
    this.out = consumer;
  }

  @Override
  public void write(StreamedInspection row) {
    out.startMessage();
    for (int i = 0; i < ExportColumn.ALL.size(); i++) {
      ExportColumn column = ExportColumn.ALL.get(i);
      field(column.name(), i, column.of(row));
    }
    out.endMessage();
  }

  /** A field that is null is left out. */
  private void field(String name, int index, Object value) {
    if (value != null) {
      out.startField(name, index);
      value(value);
      out.endField(name, index);
    }
  }

  private void value(Object value) {
    if (value instanceof String text) {
      out.addBinary(Binary.fromString(text));
    } else if (value instanceof Boolean flag) {
      out.addBoolean(flag);
    } else if (value instanceof Integer number) {
      out.addInteger(number);
    } else if (value instanceof Double number) {
      out.addDouble(number);
    } else if (value instanceof Instant at) {
      out.addLong(ChronoUnit.MICROS.between(Instant.EPOCH, at));
    } else if (value instanceof float[] curve) {
      curve(curve);
    } else if (value instanceof List<?> list) {
      list(list);
    } else if (value instanceof ReasonView view) {
      group(reason(view));
    } else if (value instanceof RegionView view) {
      group(region(view));
    } else {
      throw new IllegalStateException("no column holds a " + value.getClass());
    }
  }

  private void group(Map<String, Object> fields) {
    out.startGroup();
    int index = 0;
    for (Map.Entry<String, Object> field : fields.entrySet()) {
      field(field.getKey(), index++, field.getValue());
    }
    out.endGroup();
  }

  private void list(List<?> elements) {
    out.startGroup();
    if (!elements.isEmpty()) {
      out.startField("list", 0);
      for (Object element : elements) {
        out.startGroup();
        field("element", 0, element);
        out.endGroup();
      }
      out.endField("list", 0);
    }
    out.endGroup();
  }

  /** An absent point is an element without a value. */
  private void curve(float[] levels) {
    out.startGroup();
    out.startField("list", 0);
    for (float level : levels) {
      out.startGroup();
      if (!Float.isNaN(level)) {
        out.startField("element", 0);
        out.addFloat(level);
        out.endField("element", 0);
      }
      out.endGroup();
    }
    out.endField("list", 0);
    out.endGroup();
  }
}
