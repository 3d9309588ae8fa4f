package evenpair.inspections;

import evenpair.products.Products;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Units by their inspections' rows, some hundred at a time. */
@Component
@Transactional(readOnly = true)
class UnitRegister implements KnownUnits {
  private static final int AT_ONCE = 500;

  private final InspectionRows rows;
  private final Products products;

  UnitRegister(InspectionRows rows, Products products) {
    this.rows = rows;
    this.products = products;
  }

  @Override
  public Map<String, KnownUnit> of(Collection<String> sent) {
    Map<String, String> stored = new LinkedHashMap<>();
    sent.forEach(name -> Names.accept(name).ifPresent(serial -> stored.put(name, serial)));
    List<String> serials = new ArrayList<>(new java.util.LinkedHashSet<>(stored.values()));
    Map<String, KnownUnit> known = new HashMap<>();
    for (int from = 0; from < serials.size(); from += AT_ONCE) {
      List<String> some = serials.subList(from, Math.min(serials.size(), from + AT_ONCE));
      rows.findBySerialIn(some).stream()
          .collect(Collectors.groupingBy(InspectionRow::serial))
          .forEach((serial, ofUnit) -> known.put(serial, unit(serial, ofUnit)));
    }
    Map<String, KnownUnit> found = new LinkedHashMap<>();
    stored.forEach(
        (name, serial) -> {
          if (known.containsKey(serial)) {
            found.put(name, known.get(serial));
          }
        });
    return found;
  }

  private KnownUnit unit(String serial, List<InspectionRow> ofUnit) {
    InspectionRow newest =
        ofUnit.stream().max(Comparator.comparing(InspectionRow::id)).orElseThrow();
    String verdict =
        products
            .find(newest.product())
            .map(product -> UnitVerdict.of(product.tunings(), ofUnit).verdict())
            .orElse("INCOMPLETE");
    return new KnownUnit(serial, newest.product(), newest.batch(), verdict);
  }
}
