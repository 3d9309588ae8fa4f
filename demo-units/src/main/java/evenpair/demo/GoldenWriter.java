package evenpair.demo;

import evenpair.acoustics.Grid;
import evenpair.demo.earpiece.Design;
import evenpair.demo.line.Cable;
import evenpair.demo.line.Golden;
import evenpair.demo.line.ProductFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Writes the golden responses of the demo's products into limits/: {@code GoldenWriter <path of
 * limits>}. To be run again when a design or a tuning's filters in {@code product.yaml} change; a
 * test compares what it writes with what is there.
 */
public final class GoldenWriter {
  private GoldenWriter() {}

  /**
   * @param args the folder limits/ of a working copy
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      throw new IllegalArgumentException(
          "needs one argument: the folder limits/ of a working copy");
    }
    for (Map.Entry<String, String> file : files().entrySet()) {
      Path target = Path.of(args[0]).resolve(file.getKey());
      Files.writeString(target, file.getValue());
      System.out.println("wrote " + target);
    }
  }

  /**
   * @return content by path below limits/
   */
  static Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    for (Design design : Design.values()) {
      for (Cable cable : ProductFile.read(design.product()).cables()) {
        files.put(
            design.product() + "/" + cable.tuning() + "-golden.csv", csv(Golden.of(design, cable)));
      }
    }
    return files;
  }

  private static String csv(Golden golden) {
    StringBuilder text = new StringBuilder("frequency_hz,level_db,phase_deg\n");
    for (int i = 0; i < Grid.POINTS; i++) {
      text.append(
          String.format(
              Locale.ROOT,
              "%.4f,%.3f,%.2f\n",
              Grid.hz(i),
              golden.levelDb()[i],
              golden.phaseDeg()[i]));
    }
    return text.toString();
  }
}
