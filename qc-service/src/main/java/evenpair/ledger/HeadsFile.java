package evenpair.ledger;

import evenpair.web.DataFolder;
import evenpair.web.DurableFiles;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Signed heads outside the database, one JSON line each, synced: who rewrites the database
 * afterwards disagrees with this file (or with a copy of it elsewhere, which is better still).
 * Written after the block's commit, so it never knows a block that the database does not; what a
 * crash kept from it, the next run adds.
 */
@Component
class HeadsFile {
  private static final HexFormat HEX = HexFormat.of();
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final int A_TIME = 1000;

  private final Path file;

  /** Number of the last block in the file; −1 until it has been read. */
  private long last = -1;

  HeadsFile(DataFolder data) {
    this.file = data.folder("heads").resolve("heads.jsonl");
  }

  /**
   * @param line as it stands in the file
   */
  record Head(long number, String line) {}

  /** Adds every block that the file does not hold yet. */
  synchronized void witness(BlockTable blocks) {
    try {
      if (last < 0) {
        last = repair();
      }
      for (List<Block> more = blocks.after(last, A_TIME);
          !more.isEmpty();
          more = blocks.after(last, A_TIME)) {
        append(more);
        last = more.get(more.size() - 1).head().number();
      }
    } catch (IOException e) {
      last = -1; // what has arrived is looked up again
      throw new UncheckedIOException(
          "signed heads cannot be written to " + file + ": " + e.getMessage(), e);
    }
  }

  private void append(List<Block> blocks) throws IOException {
    StringBuilder lines = new StringBuilder();
    blocks.forEach(block -> lines.append(line(block)).append('\n'));
    boolean isNew = !Files.exists(file);
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      DurableFiles.writeAll(channel, lines.toString().getBytes(StandardCharsets.UTF_8));
      channel.force(true);
    }
    if (isNew) {
      DurableFiles.syncFolder(file.getParent());
    }
  }

  /**
   * @return the line that witnesses a block
   */
  static String line(Block block) {
    BlockHead head = block.head();
    return new String(
        CanonicalJson.of(
            Map.of(
                "block", head.number(),
                "previous", HEX.formatHex(head.previous()),
                "root", HEX.formatHex(head.root()),
                "entries", head.entries(),
                "at", head.at(),
                "keyId", head.keyId(),
                "signature", HEX.formatHex(block.signature()),
                "digest", HEX.formatHex(block.digest()))),
        StandardCharsets.UTF_8);
  }

  /**
   * Cuts off a line that a crash left unfinished. @return the number of the last whole one, 0 if
   * there is none
   */
  private long repair() throws IOException {
    if (!Files.exists(file)) {
      return 0;
    }
    byte[] content = Files.readAllBytes(file);
    int whole = content.length;
    while (whole > 0 && content[whole - 1] != '\n') {
      whole--;
    }
    if (whole < content.length) {
      try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
        channel.truncate(whole);
        channel.force(true);
      }
    }
    List<Head> heads = read();
    return heads.isEmpty() ? 0 : heads.get(heads.size() - 1).number();
  }

  /**
   * @return the whole lines, as they stand; a line that is no head has number −1
   */
  synchronized List<Head> read() throws IOException {
    return witnessed().heads();
  }

  /**
   * @param unfinished what stands behind the last whole line; empty but for a crash while it was
   *     written
   */
  record Witnessed(List<Head> heads, String unfinished) {}

  synchronized Witnessed witnessed() throws IOException {
    if (!Files.exists(file)) {
      return new Witnessed(List.of(), "");
    }
    // byte for byte: what is not UTF-8 is no head either, and must not stop the check
    String content = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
    int whole = content.lastIndexOf('\n') + 1;
    List<Head> heads = new ArrayList<>();
    for (String line : content.substring(0, whole).split("\n")) {
      if (whole > 0) {
        heads.add(head(line));
      }
    }
    return new Witnessed(heads, content.substring(whole));
  }

  private static Head head(String line) {
    try {
      JsonNode json = JSON.readTree(line);
      return new Head(json.path("block").asLong(-1), line);
    } catch (JacksonException e) {
      return new Head(-1, line);
    }
  }
}
