package evenpair.print;

import evenpair.web.Refusal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/** How papers are asked for and answered over HTTP. */
public final class PdfAnswer {
  private PdfAnswer() {}

  /**
   * @param fileName under which a reader saves it
   * @return the document, to be shown where it is opened
   */
  public static ResponseEntity<byte[]> of(byte[] pdf, String fileName) {
    return ResponseEntity.ok()
        .contentType(MediaType.APPLICATION_PDF)
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.inline()
                .filename(fileName, StandardCharsets.UTF_8)
                .build()
                .toString())
        .body(pdf);
  }

  /**
   * @param word the parameter {@code paper} of the request
   * @throws Refusal 400 naming the sizes, if it is none of them
   */
  public static PaperSize size(String word) {
    return PaperSize.named(word)
        .orElseThrow(
            () ->
                new Refusal(
                        400, "unknown-paper", "paper must be a4 or letter, was \"" + word + "\".")
                    .with("field", "paper")
                    .with(
                        "choices",
                        Arrays.stream(PaperSize.values()).map(PaperSize::word).toList()));
  }
}
