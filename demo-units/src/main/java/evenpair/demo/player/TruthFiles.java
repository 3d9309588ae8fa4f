package evenpair.demo.player;

import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Mounting;
import evenpair.demo.line.Bench;
import evenpair.demo.line.Cable;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.line.LineRecorder;
import evenpair.demo.line.Take;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes down what is true of each simulated unit and capture, where the service never looks:
 * {@code <data>/demo/<batch>/<serial>/truth.json}, one {@code <tuning>-<try>.json} a capture, and
 * {@code truth.csv} a batch.
 */
final class TruthFiles {
  private final JsonMapper json =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private final Path folder;

  /**
   * @param folder such as {@code <evenpair.data>/demo}
   */
  TruthFiles(Path folder) {
    this.folder = folder;
  }

  Path folder() {
    return folder;
  }

  /**
   * @return the unit's own folder
   */
  Path of(DemoUnit unit) {
    return folder.resolve(unit.batch()).resolve(unit.serial());
  }

  void writeUnit(DemoUnit unit) {
    Map<String, Object> truth = new LinkedHashMap<>();
    truth.put("serial", unit.serial());
    truth.put("batch", unit.batch());
    truth.put("product", unit.design().product());
    truth.put("fault", unit.fault().label());
    truth.put("side", side(unit));
    truth.put("expected", expected(unit));
    truth.put("left", unit.sides().left().truth());
    truth.put("right", unit.sides().right().truth());
    write(of(unit).resolve("truth.json"), json.writeValueAsString(truth) + "\n");
  }

  void noteCapture(
      DemoUnit unit, Bench bench, Cable cable, int attempt, LineRecorder.PairCapture capture) {
    Map<String, Object> truth = new LinkedHashMap<>();
    truth.put("bench", bench.name());
    truth.put("tuning", cable.tuning());
    truth.put("try", attempt);
    truth.put("startSeconds", capture.take().startSeconds());
    truth.put(
        "flaw",
        capture.take().flaw() == Take.Flaw.NONE
            ? null
            : capture.take().flaw().name().toLowerCase(Locale.ROOT));
    truth.put("left", mounting(capture.leftMounting()));
    truth.put("right", mounting(capture.rightMounting()));
    write(
        of(unit).resolve(cable.tuning() + "-" + attempt + ".json"),
        json.writeValueAsString(truth) + "\n");
  }

  void writeBatch(DemoBatch batch) {
    StringBuilder text = new StringBuilder("serial,fault,side,expected\n");
    for (DemoUnit unit : batch.units()) {
      text.append(String.join(",", unit.serial(), unit.fault().label(), side(unit), expected(unit)))
          .append('\n');
    }
    write(folder.resolve(batch.name()).resolve("truth.csv"), text.toString());
  }

  /** Leaves a capture as a file, for trying the Bench screen by hand. */
  void writeCapture(DemoUnit unit, Cable cable, LineRecorder.PairCapture capture) {
    write(of(unit).resolve(cable.tuning() + "-left.wav"), capture.left());
    write(of(unit).resolve(cable.tuning() + "-right.wav"), capture.right());
  }

  private static String side(DemoUnit unit) {
    return switch (unit.fault()) {
      case NONE, CLIPPED_CAPTURE, NOISY_CAPTURE, MISMATCHED_PAIR, USB_FRAME_NOISE -> "both";
      default -> unit.side().word();
    };
  }

  private static String expected(DemoUnit unit) {
    return unit.fault().expected().name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static Map<String, Object> mounting(Mounting mounting) {
    Map<String, Object> truth = new LinkedHashMap<>();
    truth.put("depthPercent", 100 * mounting.depth());
    truth.put("bassDb", mounting.bassDb());
    truth.put("leakHz", mounting.leakHz());
    truth.put("leakOrder", mounting.leakHz() > 0 ? mounting.leakOrder() : null);
    return truth;
  }

  private static void write(Path file, String text) {
    write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  private static void write(Path file, byte[] bytes) {
    try {
      Files.createDirectories(file.getParent());
      Files.write(file, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot write " + file + ": " + e.getMessage(), e);
    }
  }
}
