package evenpair.traceability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import evenpair.web.Refusal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class SerialListTests {
  private static List<String> read(String csv) {
    return SerialList.read(csv.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void takesOneSerialALineWithOrWithoutATitle() {
    assertThat(read("SG2-1\nSG2-2\n")).containsExactly("SG2-1", "SG2-2");
    assertThat(read("Serial\r\nSG2-1\r\n\r\nSG2-2")).containsExactly("SG2-1", "SG2-2");
  }

  @Test
  void findsTheColumnWhereverItStands() {
    assertThat(read("carton;serial;weight\n7;\"SG2-1\";0.1\n8;SG2-2;0.2\n"))
        .containsExactly("SG2-1", "SG2-2");
  }

  @Test
  void passesOverAByteOrderMark() {
    assertThat(read("\uFEFFserial\nSG2-1")).containsExactly("SG2-1");
  }

  @Test
  void namesTheLineWithoutASerial() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> read("carton,serial\n7,SG2-1\n8\n"))
        .satisfies(refusal -> assertThat(refusal.members()).containsEntry("place", "line 3"));
  }

  @Test
  void refusesBytesThatAreNoText() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> SerialList.read(new byte[] {(byte) 0xff, (byte) 0xfe, 'S'}))
        .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(400));
  }
}
