package evenpair.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MerkleTests {
  /**
   * The leaves of the reference test vectors of certificate-transparency logs (RFC 6962 hashing),
   * from memory.
   */
  private static final List<String> INPUTS =
      List.of(
          "",
          "00",
          "10",
          "2021",
          "3031",
          "40414243",
          "5051525354555657",
          "606162636465666768696a6b6c6d6e6f");

  private static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex);
  }

  private static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(bytes);
  }

  private static List<byte[]> leaves(int count) {
    return INPUTS.subList(0, count).stream().map(MerkleTests::bytes).map(Merkle::leaf).toList();
  }

  @Test
  void theRootOfNothingIsTheDigestOfNothing() {
    // RFC 6962, 2.1: MTH({}) = SHA-256(); the value is that of FIPS 180 for the empty message.
    assertThat(hex(Merkle.root(List.of())))
        .isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  }

  @Test
  void aLeafIsPrefixedByAZeroByte() {
    // SHA-256 of the single byte 00, from memory: the first of the reference vectors.
    assertThat(hex(Merkle.leaf(new byte[0])))
        .isEqualTo("6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d");
  }

  /** Roots over the first n reference leaves, from memory. */
  @ParameterizedTest
  @CsvSource({
    "1, 6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
    "2, fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
    "3, aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
    "4, d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    "5, 4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
    "6, 76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
    "7, ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
    "8, 5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328"
  })
  void agreesWithTheReferenceVectors(int leaves, String root) {
    assertThat(hex(Merkle.root(leaves(leaves)))).isEqualTo(root);
  }

  /**
   * A slow second route: pairs are joined level by level, a last one without a partner moves up as
   * it is.
   */
  private static byte[] levelByLevel(List<byte[]> leaves) {
    List<byte[]> level = leaves;
    while (level.size() > 1) {
      List<byte[]> above = new ArrayList<>();
      for (int i = 0; i < level.size(); i += 2) {
        above.add(
            i + 1 < level.size()
                ? Digests.sha256(new byte[] {1}, level.get(i), level.get(i + 1))
                : level.get(i));
      }
      level = above;
    }
    return level.get(0);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 15, 16, 17, 31, 100, 257})
  void agreesWithJoiningPairsLevelByLevel(int count) {
    List<byte[]> leaves = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      leaves.add(Merkle.leaf(Integer.toString(i).getBytes(StandardCharsets.US_ASCII)));
    }
    assertThat(Merkle.root(leaves)).isEqualTo(levelByLevel(leaves));
  }
}
