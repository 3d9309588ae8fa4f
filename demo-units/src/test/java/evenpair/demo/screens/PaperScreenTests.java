package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Response;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.Signature;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

/** Papers from the screens, and the public page behind a certificate's code. */
@BrowserTest
class PaperScreenTests {
  @Test
  void printsTheLabelOfAPassByItsKey(Screen screen) {
    screen.open("#/unit/" + RunningService.GOOD_UNIT).shows(".record-word", "PASS");
    screen.shows(".record .print-button", "Print label");

    Response paper =
        screen
            .page()
            .waitForResponse(answer -> answer.url().endsWith("/label"), () -> screen.press("F9"));

    assertThat(paper.status()).isEqualTo(200);
    assertThat(paper.headerValue("content-type")).isEqualTo("application/pdf");
    screen.shows(".record .print-offer .paper-why", "print dialog");
  }

  @Test
  void printsTheReworkSlipOfAFailByItsButton(Screen screen) {
    screen.open("#/unit/" + RunningService.BAD_UNIT).shows(".record-word", "FAIL");

    Response paper =
        screen
            .page()
            .waitForResponse(
                answer -> answer.url().endsWith("/rework-slip"),
                () -> screen.at(".record .print-button").click());

    assertThat(paper.status()).isEqualTo(200);
  }

  @Test
  void printsEveryCertificateOfABatchAndGoesOnAfterAReload(Screen screen) {
    screen.open("#/batch/" + RunningService.BATCH + "?tuning=plain");
    screen.shows(".papers", "Print all certificates");
    screen.at(".papers button").click();
    screen.shows(".papers-pdf", "Save certificates (");
    screen.page().reload();
    screen.shows(".papers-pdf", "Save certificates (");

    // Fetched by the page: what the browser's own saving does is no business of this test.
    Object begins =
        screen.evaluate(
            "async () => { const answer = await fetch(document.querySelector('.papers-pdf').href);"
                + " const bytes = new Uint8Array(await answer.arrayBuffer());"
                + " return answer.status + ' ' + String.fromCharCode(...bytes.slice(0, 5)) }");
    assertThat(begins).isEqualTo("200 %PDF-");
  }

  @Test
  void showsThePublicWhatTheCertificateShows(Screen screen, RunningService service) {
    String code = service.recordCode(RunningService.GOOD_UNIT);
    screen.page().navigate(service.address() + "/check/" + code.replace("-", ""));

    screen.shows(".verdict", "PASS");
    screen.shows(".facts", RunningService.GOOD_UNIT);
    screen.shows(".regions", "treble");
    screen.until("document.querySelectorAll('.plots svg').length === 2");
    assertThat(screen.at("#code").inputValue()).isEqualTo(code);
    assertThat(screen.at("nav").count()).isZero();
  }

  @Test
  void saysThatACodeIsMistypedOrUnknown(Screen screen, RunningService service) {
    screen.expectComplaint("status of 400").expectComplaint("status of 404");
    screen.page().navigate(service.address() + "/check");
    screen.at("#code").fill("ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-C");
    screen.at("#code").press("Enter");
    screen.shows(".refusal", "mistyped");

    screen.at("#code").fill("zzzz zzzz zzzz zzzz zzzz b");
    screen.at("#code").press("Enter");
    screen.shows(".refusal", "no certificate with this code");
  }

  /** By the form that the page tells, with a key of its own: shares no code with what prints it. */
  @Test
  void checksASignedSummaryInTheBrowserAlone(Screen screen, RunningService service)
      throws GeneralSecurityException {
    KeyPair maker = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(maker.getPublic().getEncoded());
    String facts =
        "EVENPAIR-1 "
            + HexFormat.of().formatHex(Arrays.copyOf(digest, 8))
            + " "
            + "A".repeat(43)
            + " 左-004217 PASS 2026-11-25T07:45:12Z";
    Signature signature = Signature.getInstance("Ed25519");
    signature.initSign(maker.getPrivate());
    signature.update(facts.getBytes(StandardCharsets.UTF_8));
    String summary =
        facts + " " + Base64.getUrlEncoder().withoutPadding().encodeToString(signature.sign());

    screen.page().navigate(service.address() + "/public/summary.html");
    screen.at("#key").fill(Base64.getEncoder().encodeToString(maker.getPublic().getEncoded()));
    screen.at("#text").fill(summary);
    screen.at("button").click();
    screen.shows("#answer", "The maker's key signed this");
    screen.shows("#facts", "左-004217");

    screen.at("#text").fill(summary.replace("004217", "004218"));
    screen.at("button").click();
    screen.shows("#answer", "NOT what the maker signed");
    assertThat(screen.at("#facts dd").count()).isZero();
  }
}
