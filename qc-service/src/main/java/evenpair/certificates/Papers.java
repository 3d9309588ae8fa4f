package evenpair.certificates;

import evenpair.certificates.Certificates.Page;
import evenpair.print.PdfAnswer;
import evenpair.web.Refusal;
import jakarta.servlet.http.HttpServletResponse;
import java.util.function.Supplier;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;

/** Answers with a PDF, or says that its record is not sealed yet. */
final class Papers {
  private static final String RETRY_SECONDS = "2";

  private Papers() {}

  /**
   * @throws Refusal 503 with Retry-After while the record is not sealed
   */
  static ResponseEntity<byte[]> answer(Supplier<Page> make, HttpServletResponse response) {
    try {
      Page page = make.get();
      return PdfAnswer.of(page.pdf(), page.fileName());
    } catch (NotYetSealed e) {
      response.setHeader(HttpHeaders.RETRY_AFTER, RETRY_SECONDS);
      throw new Refusal(
          503,
          "not-yet-sealed",
          "The record is not yet sealed. Ask again in " + RETRY_SECONDS + " s.");
    }
  }
}
