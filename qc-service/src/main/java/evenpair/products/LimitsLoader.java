package evenpair.products;

import evenpair.acoustics.Grid;
import evenpair.products.FileLimits.FileSet;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.tolerance.LimitSet;
import evenpair.web.Ids;
import evenpair.web.StartRefused;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Takes over limits/ before the service listens: a newer version becomes approved (or a draft,
 * where files are not trusted), an older one is passed over, and the same version with another
 * content stops the start. The first version of a tuning judges whatever was measured before it,
 * since nothing else could.
 */
@Component
class LimitsLoader implements SmartInitializingSingleton {
  private static final Logger LOG = LoggerFactory.getLogger(LimitsLoader.class);

  private final VersionStore store;
  private final SignedVersions signed;
  private final Ids ids;
  private final TransactionTemplate transaction;
  private final String folder;
  private final boolean trusted;
  private final Set<String> inFiles = ConcurrentHashMap.newKeySet();

  LimitsLoader(
      VersionStore store,
      SignedVersions signed,
      Ids ids,
      TransactionTemplate transaction,
      Environment environment) {
    this.store = store;
    this.signed = signed;
    this.ids = ids;
    this.transaction = transaction;
    this.folder = environment.getProperty("evenpair.limits", "");
    this.trusted = environment.getProperty("evenpair.limits.trust-files", Boolean.class, true);
  }

  @Override
  public void afterSingletonsInstantiated() {
    load(LimitsFolder.all(folder));
  }

  /**
   * @return true if that very version stood in limits/ when this process started
   */
  boolean inFiles(String digest) {
    return inFiles.contains(digest);
  }

  void load(List<LimitsFolder> folders) {
    List<FileLimits> all = read(folders);
    if (all.isEmpty()) {
      LOG.warn("there is no product in {}", folder.isBlank() ? "the packed limits" : folder);
    }
    transaction.executeWithoutResult(status -> take(all));
    tellUnexpected(all);
  }

  /** A measured golden response may differ from its expectation, so that this is no refusal. */
  private void tellUnexpected(List<FileLimits> all) {
    List<FileSet> derived = all.stream().flatMap(FileLimits::derived).toList();
    if (!derived.isEmpty()) {
      Snapshot known = Snapshot.of(store);
      derived.forEach(file -> tellUnexpected(file, known));
    }
  }

  private void tellUnexpected(FileSet file, Snapshot known) {
    Expectation.of(known, file.set().product(), file.set().tuning(), signed.now())
        .map(expected -> expected.deviation(file.golden()))
        .filter(Expectation.Deviation::notable)
        .ifPresent(
            deviation ->
                LOG.warn(
                    "{} lies {} dB from what the tuning's filters let expect, at {} Hz",
                    file.goldenPath(),
                    String.format(Locale.ROOT, "%+.1f", deviation.deviationDb()),
                    Decimal.text(Grid.label(Grid.nearest(deviation.atHz())))));
  }

  private static List<FileLimits> read(List<LimitsFolder> folders) {
    List<LimitsProblem> problems = new ArrayList<>();
    List<FileLimits> all =
        folders.stream()
            .map(folder -> FileLimits.read(folder, problems))
            .flatMap(Optional::stream)
            .toList();
    if (!problems.isEmpty()) {
      String list =
          problems.stream().map(problem -> "  " + problem).collect(Collectors.joining("\n"));
      throw new StartRefused(
          "The limits cannot be taken:\n" + list, "Mend each place and start again.");
    }
    return all;
  }

  private void take(List<FileLimits> all) {
    store.lock();
    boolean changed = false;
    for (FileLimits limits : all) {
      changed |= take(limits.product());
    }
    Snapshot known = Snapshot.of(store);
    for (FileLimits limits : all) {
      for (FileSet file : limits.sets()) {
        if (take(file, known)) {
          changed = true;
          known = Snapshot.of(store);
        }
      }
    }
    if (changed) {
      store.changed();
    }
  }

  private boolean take(ProductDefinition product) {
    if (store.productDigest(product.key()).filter(Canonical.digest(product)::equals).isPresent()) {
      return false;
    }
    store.put(product, signed.now());
    return true;
  }

  private boolean take(FileSet file, Snapshot known) {
    LimitSet set = file.set();
    String digest = Canonical.digest(set, Canonical.digest(file.golden()));
    inFiles.add(digest);
    List<Limits> versions = known.limitSets(set.product(), set.tuning());
    Optional<Limits> same =
        versions.stream().filter(row -> row.version() == set.version()).findFirst();
    same.filter(row -> !row.digest().equals(digest)).ifPresent(row -> refuse(file, row, digest));
    if (same.isPresent()) {
      return trusted && same.get().signOff() == null && approve(same.get(), known);
    }
    if (versions.stream().anyMatch(row -> row.version() > set.version())) {
      LOG.info(
          "passed over {}: a newer version of {} {} is known",
          file.path(),
          set.product(),
          set.tuning());
      return false;
    }
    Golden golden = golden(file, known);
    Limits limits =
        new Limits(
            ids.next(),
            set.product(),
            set.tuning(),
            set.version(),
            golden.id(),
            Canonical.text(set),
            digest,
            null,
            signed.now(),
            null);
    store.add(limits);
    LOG.info(
        "took {}: {} {} version {}, digest {}",
        file.path(),
        set.product(),
        set.tuning(),
        set.version(),
        digest);
    return !trusted || approve(limits, Snapshot.of(store));
  }

  private static void refuse(FileSet file, Limits stored, String digest) {
    throw new StartRefused(
        file.path()
            + " (with "
            + file.goldenPath()
            + ") is version "
            + stored.version()
            + " of "
            + stored.product()
            + " "
            + stored.tuning()
            + " with digest "
            + digest
            + ", but the database holds that version with digest "
            + stored.digest()
            + ".",
        "A version never changes: give the file a higher version, or put back what it was.");
  }

  private Golden golden(FileSet file, Snapshot known) {
    LimitSet set = file.set();
    String digest = Canonical.digest(file.golden());
    List<Golden> versions = known.goldens(set.product(), set.tuning());
    Optional<Golden> same =
        versions.stream()
            .filter(g -> g.digest().equals(digest) && g.name().equals(set.golden()))
            .findFirst();
    if (same.isPresent()) {
      return same.get();
    }
    int version = versions.stream().mapToInt(Golden::version).max().orElse(0) + 1;
    Golden golden =
        new Golden(
            ids.next(),
            set.product(),
            set.tuning(),
            version,
            set.golden(),
            file.golden(),
            digest,
            null,
            signed.now(),
            null,
            null);
    store.add(golden);
    return golden;
  }

  private boolean approve(Limits limits, Snapshot known) {
    Golden golden = known.golden(limits.goldenId());
    if (golden.signOff() == null) {
      signed.approve(golden, null, null);
      signed.activate(golden, signed.now());
    }
    signed.approve(limits, golden, null, null);
    boolean first =
        known.limitSets(limits.product(), limits.tuning()).stream()
            .noneMatch(row -> row.signOff() != null);
    signed.activate(limits, first ? Instant.EPOCH : signed.now());
    return true;
  }
}
