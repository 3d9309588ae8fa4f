package evenpair.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class FixedMarksTests {
  private static final Instant DATED = Instant.parse("2026-11-25T07:45:12Z");

  @Test
  void replacesDatesPrefixesAndIdentifiersWithoutMovingAnything() {
    String before =
        "/CreationDate(D:20270101120000+01'00')/ModDate(D:20270101120000Z)"
            + " /BaseFont/QXZABC+DejaVuSans /FontName/QXZABC+DejaVuSans"
            + " /BaseFont/JJJJJJ+DejaVuSans-Bold /ID [<0011aabb><0011aabb>]";

    String after = fixed(before);

    assertThat(after)
        .hasSameSizeAs(before)
        .contains("/CreationDate(D:20261125074512+00'00')", "/ModDate(D:20261125074512Z)")
        .contains(
            "/BaseFont/AAAAAA+DejaVuSans",
            "/FontName/AAAAAA+DejaVuSans",
            "/BaseFont/AAAAAB+DejaVuSans-Bold")
        .doesNotContain("0011aabb");
  }

  @Test
  void makesTheIdentifierFromTheRest() {
    String identifier = " /ID [<0011aabb><0011aabb>]";

    assertThat(fixed("one" + identifier))
        .isEqualTo(fixed("one" + identifier.replace("0011aabb", "ffffffff")));
    assertThat(fixed("one" + identifier))
        .isNotEqualTo(fixed("two" + identifier).replace("two", "one"));
  }

  private static String fixed(String pdf) {
    return new String(
        FixedMarks.of(pdf.getBytes(StandardCharsets.ISO_8859_1), DATED),
        StandardCharsets.ISO_8859_1);
  }
}
