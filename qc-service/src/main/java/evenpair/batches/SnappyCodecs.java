package evenpair.batches;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.apache.parquet.bytes.BytesInput;
import org.apache.parquet.compression.CompressionCodecFactory;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.xerial.snappy.Snappy;

/** Raw Snappy blocks, as the format has them, without the codecs of a cluster. */
final class SnappyCodecs implements CompressionCodecFactory {
  @Override
  public BytesInputCompressor getCompressor(CompressionCodecName name) {
    requireSnappy(name);
    return new BytesInputCompressor() {
      @Override
      public BytesInput compress(BytesInput bytes) throws IOException {
        return BytesInput.from(Snappy.compress(bytes.toByteArray()));
      }

      @Override
      public CompressionCodecName getCodecName() {
        return CompressionCodecName.SNAPPY;
      }

      @Override
      public void release() {
        // holds nothing
      }
    };
  }

  @Override
  public BytesInputDecompressor getDecompressor(CompressionCodecName name) {
    requireSnappy(name);
    return new BytesInputDecompressor() {
      @Override
      public BytesInput decompress(BytesInput bytes, int decompressedSize) throws IOException {
        return BytesInput.from(Snappy.uncompress(bytes.toByteArray()));
      }

      @Override
      public void decompress(
          ByteBuffer input, int compressedSize, ByteBuffer output, int decompressedSize)
          throws IOException {
        byte[] compressed = new byte[compressedSize];
        input.get(compressed);
        output.put(Snappy.uncompress(compressed));
      }

      @Override
      public void release() {
        // holds nothing
      }
    };
  }

  private static void requireSnappy(CompressionCodecName name) {
    if (name != CompressionCodecName.SNAPPY) {
      throw new IllegalArgumentException("only SNAPPY is written and read here, asked for " + name);
    }
  }

  @Override
  public void release() {
    // holds nothing
  }
}
