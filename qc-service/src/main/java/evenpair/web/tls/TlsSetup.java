package evenpair.web.tls;

import evenpair.web.DataFolder;
import java.time.Clock;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.web.server.ConfigurableWebServerFactory;
import org.springframework.boot.web.server.Ssl;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Gives the web server the certificate that was made here, where one is wanted. */
@Configuration(proxyBeanMethods = false)
class TlsSetup {
  @Bean
  WebServerFactoryCustomizer<ConfigurableWebServerFactory> selfSignedCertificate(
      TlsSettings tls, DataFolder data, Clock clock, @Value("${server.address:}") String address) {
    return factory -> {
      if (tls.selfSigned()) {
        factory.setSsl(ssl(new CertificateStore(data.folder("tls"), clock), tls, address));
      }
    };
  }

  private static Ssl ssl(CertificateStore store, TlsSettings tls, String address) {
    CertificateStore.Ready ready = store.ready(names(tls), addresses(address));
    Ssl ssl = new Ssl();
    ssl.setKeyStore(ready.file().toUri().toString());
    ssl.setKeyStoreType("PKCS12");
    ssl.setKeyStorePassword(ready.password());
    ssl.setEnabledProtocols(new String[] {"TLSv1.2", "TLSv1.3"});
    return ssl;
  }

  private static Set<String> names(TlsSettings tls) {
    Set<String> names = new TreeSet<>(tls.hostNames());
    names.add("localhost");
    names.addAll(OwnNames.ofThisMachine());
    return names;
  }

  private static Set<String> addresses(String address) {
    Set<String> addresses = new TreeSet<>(Set.of("127.0.0.1", "0:0:0:0:0:0:0:1"));
    addresses.addAll(OwnNames.addresses(address));
    return addresses;
  }
}
