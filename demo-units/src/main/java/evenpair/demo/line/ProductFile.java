package evenpair.demo.line;

import evenpair.acoustics.FilterChain;
import evenpair.acoustics.TuningFilters;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * The tunings of a product as its {@code product.yaml} in limits/ states them, so that the
 * simulated USB cable carries the very filters that the golden responses were made with. The
 * service checks that file; this reads no more than it needs.
 *
 * @param product the product's key
 * @param cables one for each tuning, in the file's order
 */
public record ProductFile(String product, List<Cable> cables) {
  public ProductFile {
    cables = List.copyOf(cables);
  }

  /**
   * @param product the product's key, the folder's name below limits/
   * @throws IllegalStateException if the packed limits have no such product
   */
  public static ProductFile read(String product) {
    String place = "/limits/" + product + "/product.yaml";
    try (InputStream file = ProductFile.class.getResourceAsStream(place)) {
      if (file == null) {
        throw new IllegalStateException("no " + place + " among the packed limits");
      }
      Map<String, Object> root = new Yaml(new SafeConstructor(new LoaderOptions())).load(file);
      List<Cable> cables = new ArrayList<>();
      for (Map<String, Object> tuning : maps(root.get("tunings"))) {
        cables.add(cable(tuning));
      }
      return new ProductFile(product, cables);
    } catch (IOException e) {
      throw new IllegalStateException("cannot read " + place, e);
    }
  }

  /**
   * @return the cable of a tuning; it must exist
   */
  public Cable cable(String tuning) {
    return cables.stream().filter(cable -> cable.tuning().equals(tuning)).findFirst().orElseThrow();
  }

  private static Cable cable(Map<String, Object> tuning) {
    String name = (String) tuning.get("name");
    boolean required = (Boolean) tuning.get("required");
    if (!tuning.containsKey("from")) {
      return Cable.plain(name, required);
    }
    double rateHz = number(tuning, "sample-rate-hz");
    List<TuningFilters.Filter> filters =
        maps(tuning.get("filters")).stream().map(ProductFile::filter).toList();
    FilterChain chain = new TuningFilters(filters, number(tuning, "gain-db"), rateHz).chain();
    return Cable.usb(name, required, chain.filters(), rateHz);
  }

  private static TuningFilters.Filter filter(Map<String, Object> filter) {
    String word = (String) filter.get("kind");
    TuningFilters.Kind kind =
        TuningFilters.Kind.of(word)
            .orElseThrow(
                () ->
                    new IllegalStateException(
                        "the simulated cable has no filter of kind \"" + word + "\""));
    return new TuningFilters.Filter(
        kind, number(filter, "hz"), number(filter, "gain-db"), number(filter, "q"));
  }

  private static double number(Map<String, Object> map, String key) {
    return ((Number) map.get(key)).doubleValue();
  }

  @SuppressWarnings("unchecked")
  private static List<Map<String, Object>> maps(Object list) {
    return (List<Map<String, Object>>) list;
  }
}
