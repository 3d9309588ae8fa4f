package evenpair.web.tls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.web.StartRefused;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.env.MockEnvironment;

class ListeningRuleTests {
  private static void start(MockEnvironment settings, String address, String managementPort) {
    new ListeningRule(new TlsSettings(settings), address, managementPort, address, false);
  }

  @Nested
  class WithoutTls {
    private final MockEnvironment settings = new MockEnvironment();

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "192.168.0.7", "::", "", "no.such.host.invalid"})
    void otherMachinesMayNotConnect(String address) {
      assertThatThrownBy(() -> start(settings, address, ""))
          .isInstanceOf(StartRefused.class)
          .hasMessageContaining("server.address is \"" + address + "\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.1", "localhost", "::1", "127.0.0.2"})
    void thisMachineMay(String address) {
      assertThatCode(() -> start(settings, address, "8081")).doesNotThrowAnyException();
    }
  }

  @Nested
  class WithTls {
    @Test
    void otherMachinesMayConnectWhoeverMadeTheCertificate() {
      MockEnvironment made = new MockEnvironment().withProperty("evenpair.tls", "self-signed");
      MockEnvironment own = new MockEnvironment().withProperty("server.ssl.bundle", "plant");

      assertThatCode(() -> start(made, "0.0.0.0", "")).doesNotThrowAnyException();
      assertThatCode(() -> start(own, "0.0.0.0", "")).doesNotThrowAnyException();
    }

    @Test
    void aPortOfItsOwnForManagementIsNotForgotten() {
      MockEnvironment made = new MockEnvironment().withProperty("evenpair.tls", "self-signed");

      assertThatThrownBy(() -> start(made, "0.0.0.0", "8081"))
          .isInstanceOf(StartRefused.class)
          .hasMessageContaining("management.server.address");
    }

    @Test
    void ofAnUnknownKindIsRefused() {
      MockEnvironment odd = new MockEnvironment().withProperty("evenpair.tls", "yes");

      assertThatThrownBy(() -> new TlsSettings(odd)).hasMessage("evenpair.tls is \"yes\".");
    }

    @Test
    void switchedOffIsNone() {
      MockEnvironment off =
          new MockEnvironment()
              .withProperty("server.ssl.key-store", "plant.p12")
              .withProperty("server.ssl.enabled", "false");

      assertThat(new TlsSettings(off).encrypted()).isFalse();
    }
  }
}
