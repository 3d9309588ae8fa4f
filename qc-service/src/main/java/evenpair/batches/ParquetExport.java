package evenpair.batches;

import evenpair.inspections.InspectionStream.StreamedInspection;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.conf.ParquetConfiguration;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.hadoop.ParquetFileWriter;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.api.WriteSupport;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.io.LocalOutputFile;
import org.apache.parquet.io.OutputFile;

/**
 * Writes a Parquet file (format of the Apache Parquet project) to the local disk: curves as lists
 * of 32-bit floats, times as UTC instants, what the columns mean in the file's key-value metadata.
 */
final class ParquetExport implements AutoCloseable {
  /** What is held before it is written, bytes. */
  private static final long ROW_GROUP = 16L << 20;

  private final ParquetWriter<StreamedInspection> writer;

  /**
   * @param metadata key-value pairs that the file carries
   */
  ParquetExport(Path file, Map<String, String> metadata) throws IOException {
    this.writer =
        new Builder(new LocalOutputFile(file), metadata)
            .withConf(new PlainParquetConfiguration())
            .withCodecFactory(new SnappyCodecs())
            .withCompressionCodec(CompressionCodecName.SNAPPY)
            .withByteStreamSplitEncoding(true)
            .withRowGroupSize(ROW_GROUP)
            .withWriteMode(ParquetFileWriter.Mode.OVERWRITE)
            .build();
  }

  void add(StreamedInspection row) {
    try {
      writer.write(row);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    writer.close();
  }

  private static final class Builder extends ParquetWriter.Builder<StreamedInspection, Builder> {
    private final Map<String, String> metadata;

    Builder(OutputFile file, Map<String, String> metadata) {
      super(file);
      this.metadata = metadata;
    }

    @Override
    protected Builder self() {
      return this;
    }

    @Override
    protected WriteSupport<StreamedInspection> getWriteSupport(Configuration unused) {
      return new ParquetRows(metadata);
    }

    @Override
    protected WriteSupport<StreamedInspection> getWriteSupport(ParquetConfiguration unused) {
      return new ParquetRows(metadata);
    }
  }
}
