package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import evenpair.EvenpairDatabaseTest;
import evenpair.acoustics.EarSimulator;
import evenpair.ledger.Ledger;
import evenpair.products.Products.StoredLimitSet;
import evenpair.products.VersionRows.Limits;
import evenpair.web.Ids;
import evenpair.web.StartRefused;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.env.MockEnvironment;
import org.springframework.transaction.support.TransactionTemplate;

/** Each test loads a product of its own, since the database is shared. */
@EvenpairDatabaseTest
class LimitsLoaderTests {
  static final Instant LONG_AGO = Instant.parse("2001-01-01T00:00:00Z");

  @Autowired LimitsLoader loader;
  @Autowired StoredProducts products;
  @Autowired VersionStore store;
  @Autowired GoldenDesk desk;
  @Autowired SignedVersions signed;
  @Autowired Ids ids;
  @Autowired Ledger ledger;
  @Autowired TransactionTemplate transaction;
  @Autowired JdbcClient jdbc;

  /** A folder with the example's product under another key, one file a version. */
  static LimitsFolder folder(String key, double goldenDb, int... versions) {
    Map<String, byte[]> files = new HashMap<>();
    files.put(
        "product.yaml",
        Examples.bytes(Examples.PRODUCT.replace("product: sedge-2", "product: " + key)));
    files.put("plain-golden.csv", Examples.bytes(Examples.golden(hz -> goldenDb)));
    for (int version : versions) {
      String yaml =
          Examples.judgeable("plain", version).replace("product: sedge-2", "product: " + key);
      files.put("plain-" + version + ".yaml", Examples.bytes(yaml));
    }
    return new LimitsFolder(key, files);
  }

  private static LimitsFolder with(LimitsFolder folder, String file, String from, String to) {
    Map<String, byte[]> files = new HashMap<>(folder.files());
    files.compute(
        file,
        (name, bytes) ->
            Examples.bytes(
                new String(bytes, java.nio.charset.StandardCharsets.UTF_8).replace(from, to)));
    return new LimitsFolder(folder.name(), files);
  }

  private LimitsLoader restarted(String... settings) {
    MockEnvironment environment = new MockEnvironment();
    for (int i = 0; i < settings.length; i += 2) {
      environment.setProperty(settings[i], settings[i + 1]);
    }
    return new LimitsLoader(store, signed, ids, transaction, environment);
  }

  @Test
  void theServiceStartedWithThePackedLimits() {
    assertThat(products.all()).extracting(Products.Product::key).contains("sedge-2", "reed-1");
    assertThat(products.find("reed-1").orElseThrow().earSimulator())
        .isEqualTo(EarSimulator.IEC_60318_5);
    for (Products.Product product : products.all()) {
      if (List.of("sedge-2", "reed-1").contains(product.key())) {
        assertThat(product.tunings())
            .allSatisfy(
                tuning ->
                    assertThat(products.activeAt(product.key(), tuning.key(), Instant.now()))
                        .isPresent());
      }
    }
  }

  @Test
  void approvesANewProductAndSealsItsDigests() {
    loader.load(List.of(folder("heron-1", 101.5, 1)));

    StoredLimitSet active = products.activeAt("heron-1", "plain", Instant.now()).orElseThrow();
    assertThat(active.set().version()).isEqualTo(1);
    assertThat(active.golden().level().at(100)).isEqualTo(101.5);
    assertThat(products.find("heron-1").orElseThrow().tuning("warm").orElseThrow().required())
        .isTrue();
    String sealed =
        jdbc.sql(
                "select convert_from(content, 'UTF8') from ledger_entry where kind = ? and subject"
                    + " = ?")
            .params("limit-set-approved", active.id())
            .query(String.class)
            .single();
    assertThat(sealed)
        .contains("\"from\":\"file\"")
        .contains(active.digest())
        .contains("\"goldenDigest\"");
  }

  @Test
  void letsTheFirstVersionJudgeWhatWasMeasuredBeforeIt() {
    loader.load(List.of(folder("heron-2", 100, 1)));

    assertThat(products.activeAt("heron-2", "plain", LONG_AGO)).isPresent();
    assertThat(products.activeAt("heron-2", "warm", Instant.now())).isEmpty();
  }

  @Test
  void changesNothingWhenTheSameFilesAreLoadedAgain() {
    LimitsFolder files = folder("heron-3", 100, 1);
    loader.load(List.of(files));
    long before = store.changeNumber();

    restarted().load(List.of(with(files, "plain-1.yaml", "mv-rms: 180", "mv-rms: 180.00")));

    assertThat(store.changeNumber()).isEqualTo(before);
    assertThat(products.snapshot().limitSets("heron-3", "plain")).hasSize(1);
  }

  @Test
  void activatesANewerFileFromNowOnAndPassesOverAnOlderOne() {
    loader.load(List.of(folder("heron-4", 100, 2)));
    Instant between = Instant.now();

    restarted().load(List.of(folder("heron-4", 100, 5)));
    restarted().load(List.of(folder("heron-4", 100, 3)));

    assertThat(products.snapshot().limitSets("heron-4", "plain"))
        .extracting(Limits::version)
        .containsExactly(2, 5);
    assertThat(products.activeAt("heron-4", "plain", Instant.now()).orElseThrow().set().version())
        .isEqualTo(5);
    assertThat(products.activeAt("heron-4", "plain", between).orElseThrow().set().version())
        .isEqualTo(2);
    assertThat(products.snapshot().goldens("heron-4", "plain"))
        .as("the same golden response is kept once")
        .hasSize(1);
  }

  @Test
  void stopsTheStartWhenAVersionChangedAndNamesBothDigests() {
    LimitsFolder files = folder("heron-5", 100, 1);
    loader.load(List.of(files));
    String stored = products.limitSet("heron-5", "plain", 1).orElseThrow().digest();

    assertThatExceptionOfType(StartRefused.class)
        .isThrownBy(
            () ->
                restarted()
                    .load(List.of(with(files, "plain-1.yaml", "match-db: 1.5", "match-db: 1.6"))))
        .withMessageContaining(stored)
        .withMessageContaining("limits/heron-5/plain-1.yaml")
        .withMessageMatching("(?s).*digest [0-9a-f]{64}.*digest [0-9a-f]{64}.*");
  }

  @Test
  void stopsTheStartWhenOnlyTheGoldenResponseChanged() {
    loader.load(List.of(folder("heron-6", 100, 1)));

    assertThatExceptionOfType(StartRefused.class)
        .isThrownBy(() -> restarted().load(List.of(folder("heron-6", 100.5, 1))))
        .withMessageContaining("plain-golden.csv");
    assertThat(products.snapshot().goldens("heron-6", "plain")).hasSize(1);
  }

  @Test
  void makesDraftsWhereFilesAreNotTrustedAndApprovesThemOnceTheyAre() {
    LimitsFolder files = folder("heron-7", 100, 1);
    restarted("evenpair.limits.trust-files", "false").load(List.of(files));

    assertThat(products.limitSet("heron-7", "plain", 1)).isPresent();
    assertThat(products.activeAt("heron-7", "plain", Instant.now())).isEmpty();

    restarted().load(List.of(files));

    assertThat(products.activeAt("heron-7", "plain", Instant.now())).isPresent();
  }

  @Test
  void takesNothingWhenAnyFileIsWrongAndListsEveryProblem() {
    LimitsFolder wrong =
        with(
            folder("heron-8", 100, 1),
            "plain-1.yaml",
            "ear-simulator: IEC 60318-4",
            "ear-simulator: IEC 60318-5");
    LimitsFolder worse =
        with(folder("heron-9", 100, 1), "product.yaml", "maker: Saltmarsh Works", "maker: ''");

    assertThatExceptionOfType(StartRefused.class)
        .isThrownBy(() -> loader.load(List.of(wrong, worse)))
        .withMessageContaining("limits/heron-8/plain-1.yaml line 5, column 16, ear-simulator")
        .withMessageContaining("limits/heron-9/product.yaml line 3, column 8, maker");
    assertThat(products.find("heron-8")).isEmpty();
  }

  @Test
  void takesOverAChangedProductAndDropsTuningsThatItNoLongerLists() {
    LimitsFolder files = folder("heron-10", 100, 1);
    loader.load(List.of(files));
    String plainOnly =
        Examples.PRODUCT
            .replace("product: sedge-2", "product: heron-10")
            .replace("Sedge 2", "Heron 10")
            .replaceAll("(?s)  - name: warm.*", "");
    Map<String, byte[]> changed = new HashMap<>(files.files());
    changed.put("product.yaml", Examples.bytes(plainOnly));

    restarted().load(List.of(new LimitsFolder("heron-10", changed)));

    assertThat(products.find("heron-10").orElseThrow().name()).isEqualTo("Heron 10");
    assertThat(products.find("heron-10").orElseThrow().tuning("warm")).isEmpty();
  }

  @Test
  void isNoticedByAnotherProcessAtOnce() {
    StoredProducts elsewhere = new StoredProducts(store, desk, Clock.systemUTC());
    assertThat(elsewhere.find("heron-11")).isEmpty();

    loader.load(List.of(folder("heron-11", 100, 1)));

    assertThat(elsewhere.find("heron-11")).isPresent();
  }

  @Test
  void readsAFolderOfThePlantsOwn(@TempDir Path plant) throws Exception {
    Path product = Files.createDirectory(plant.resolve("heron-12"));
    for (Map.Entry<String, byte[]> file : folder("heron-12", 100, 1).files().entrySet()) {
      Files.write(product.resolve(file.getKey()), file.getValue());
    }
    Files.writeString(plant.resolve("notes.txt"), "not limits");

    restarted("evenpair.limits", plant.toString()).afterSingletonsInstantiated();

    assertThat(products.activeAt("heron-12", "plain", Instant.now())).isPresent();
    assertThatExceptionOfType(StartRefused.class)
        .isThrownBy(
            () ->
                restarted("evenpair.limits", plant.resolve("missing").toString())
                    .afterSingletonsInstantiated())
        .withMessageContaining("missing");
  }

  @Test
  void keepsVersionsFromBeingChangedByTheServicesRole() {
    loader.load(List.of(folder("heron-13", 100, 1)));

    for (String table :
        List.of(
            "golden_response",
            "limit_set",
            "golden_response_sign_off",
            "limit_set_sign_off",
            "limit_set_activation")) {
      assertThatExceptionOfType(DataAccessException.class)
          .as(table)
          .isThrownBy(() -> jdbc.sql("delete from " + table).update());
    }
    assertThatExceptionOfType(DataAccessException.class)
        .isThrownBy(
            () -> jdbc.sql("update limit_set set version = 9 where product = 'heron-13'").update());
  }
}
