package evenpair.web.tls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.web.DataFolder;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Set;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLHandshakeException;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServer;
import org.springframework.mock.env.MockEnvironment;

class SelfSignedTests {
  private static final Instant NOW = Instant.now();
  private static final Set<String> ADDRESSES = Set.of("127.0.0.1");

  @TempDir Path folder;

  private CertificateStore at(Instant now) {
    return new CertificateStore(folder, Clock.fixed(now, ZoneOffset.UTC));
  }

  private X509Certificate ready(Instant now, String... names) {
    return at(now).ready(Set.of(names), ADDRESSES).certificate();
  }

  private X509Certificate published() throws Exception {
    try (InputStream in = Files.newInputStream(folder.resolve("evenpair.crt"))) {
      return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(in);
    }
  }

  @Nested
  class TheCertificate {
    @Test
    void isMadeOnceAndStaysWhatBrowsersTrust() throws Exception {
      X509Certificate first = ready(NOW, "localhost");

      assertThat(ready(NOW.plus(Duration.ofDays(100)), "localhost")).isEqualTo(first);
      assertThat(published()).isEqualTo(first);
    }

    @Test
    void isGoodForItsNamesAndCanSignNoOther() throws Exception {
      X509Certificate made = ready(NOW, "localhost", "qc.plant.example");

      assertThat(SelfSigned.namesOf(made))
          .containsExactlyInAnyOrder("localhost", "qc.plant.example", "127.0.0.1");
      assertThat(made.getBasicConstraints()).as("-1: no authority").isEqualTo(-1);
      assertThat(made.getKeyUsage()[5]).as("may sign certificates").isFalse();
      made.verify(made.getPublicKey());
    }

    @Test
    void isMadeAnewForANewNameAndBeforeItRunsOut() {
      X509Certificate first = ready(NOW, "localhost");
      X509Certificate named = ready(NOW, "localhost", "qc.plant.example");
      X509Certificate late =
          ready(NOW.plus(SelfSigned.VALID).minus(Duration.ofDays(29)), "localhost");

      assertThat(named).isNotEqualTo(first);
      assertThat(late).isNotEqualTo(named);
    }

    @Test
    void hasFilesThatOnlyTheirOwnerReads() throws Exception {
      ready(NOW, "localhost");

      for (String file : new String[] {"evenpair.p12", "password"}) {
        assertThat(
                PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(file))))
            .isEqualTo("rw-------");
      }
    }
  }

  /** A web server as the service has it, without the service. */
  @Nested
  class AServer {
    @Test
    void speaksTlsThatABrowserAcceptsOnceItTrustsTheCertificate() throws Exception {
      MockEnvironment settings = new MockEnvironment().withProperty("evenpair.tls", "self-signed");
      TomcatServletWebServerFactory factory = new TomcatServletWebServerFactory(0);
      new TlsSetup()
          .selfSignedCertificate(
              new TlsSettings(settings), new DataFolder(folder), Clock.systemUTC(), "127.0.0.1")
          .customize(factory);
      WebServer server = factory.getWebServer();
      server.start();
      try {
        URI address = URI.create("https://localhost:" + server.getPort() + "/");
        HttpRequest request = HttpRequest.newBuilder(address).build();
        folder = folder.resolve("tls");
        HttpClient trusting = HttpClient.newBuilder().sslContext(trusting()).build();

        assertThat(trusting.send(request, BodyHandlers.discarding()).statusCode()).isEqualTo(404);
        assertThatThrownBy(
                () -> HttpClient.newHttpClient().send(request, BodyHandlers.discarding()))
            .isInstanceOf(SSLHandshakeException.class);
      } finally {
        server.stop();
        server.destroy();
      }
    }

    private SSLContext trusting() throws Exception {
      KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
      store.load(null, null);
      store.setCertificateEntry("evenpair", published());
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(store);
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, trust.getTrustManagers(), null);
      return context;
    }
  }
}
