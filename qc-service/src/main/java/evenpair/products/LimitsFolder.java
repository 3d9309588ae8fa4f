package evenpair.products;

import evenpair.web.StartRefused;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/**
 * The files of one product.
 *
 * @param name the folder's name
 * @param files by file name: YAML and CSV, each cut one byte beyond the largest size that a reader
 *     takes
 */
record LimitsFolder(String name, Map<String, byte[]> files) {

  /**
   * @param folder the plant's own folder; null or empty for the one packed with the service
   * @throws StartRefused if the folder does not exist or cannot be read
   */
  static List<LimitsFolder> all(String folder) {
    try {
      return grouped(folder == null || folder.isBlank() ? packed() : inside(Path.of(folder)));
    } catch (IOException e) {
      throw new StartRefused(
          "The limits cannot be read: " + e.getMessage() + ".", "Check evenpair.limits.", e);
    }
  }

  private static List<Resource> packed() throws IOException {
    PathMatchingResourcePatternResolver resolver = new PathMatchingResourcePatternResolver();
    List<Resource> found = new ArrayList<>();
    found.addAll(List.of(resolver.getResources("classpath*:limits/*/*.yaml")));
    found.addAll(List.of(resolver.getResources("classpath*:limits/*/*.csv")));
    return found;
  }

  private static List<Resource> inside(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new StartRefused(
          "evenpair.limits names " + folder + ", which is not a folder.",
          "Name the folder that holds one folder a product.");
    }
    try (Stream<Path> files = Files.walk(folder, 2)) {
      return files
          .filter(file -> folder.relativize(file).getNameCount() == 2 && Files.isRegularFile(file))
          .filter(file -> file.toString().endsWith(".yaml") || file.toString().endsWith(".csv"))
          .map(file -> (Resource) new FileSystemResource(file))
          .toList();
    }
  }

  private static List<LimitsFolder> grouped(List<Resource> resources) throws IOException {
    Map<String, Map<String, byte[]>> folders = new TreeMap<>();
    for (Resource resource : resources) {
      String[] path = resource.getURL().getPath().split("/");
      Map<String, byte[]> files =
          folders.computeIfAbsent(path[path.length - 2], name -> new TreeMap<>());
      try (InputStream in = resource.getInputStream()) {
        files.put(resource.getFilename(), in.readNBytes(YamlText.LARGEST + 1));
      }
    }
    return folders.entrySet().stream()
        .map(entry -> new LimitsFolder(entry.getKey(), entry.getValue()))
        .toList();
  }

  /**
   * @return the name for problems, such as {@code limits/sedge-2/plain.yaml}
   */
  String path(String file) {
    return "limits/" + name + "/" + file;
  }
}
