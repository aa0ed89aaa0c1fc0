package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The code that a phone reads from the terminal. */
class SharingTest {
  private static final int PIXELS = 4;

  private static final String LINK =
      "http://192.168.1.20:40123/AbCdEfGhIjKlMnOpQrStUvWxYz0123456789-_AbCdE/";

  /** Four modules all around, two of them in a line (ISO/IEC 18004). */
  @Test
  void itIsLightAroundTheCode() {
    List<String> lines = Sharing.code(LINK).lines().toList();
    assertThat(lines).allSatisfy(line -> assertThat(line).startsWith("████").endsWith("████"));
    for (int line : new int[] {0, 1, lines.size() - 2, lines.size() - 1}) {
      assertThat(lines.get(line)).matches("█+");
    }
  }

  @Test
  void aPhoneReadsTheLinkFromTheCode() throws Exception {
    List<String> lines = Sharing.code(LINK).lines().toList();
    assertThat(lines).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    int width = lines.get(0).length() * PIXELS;
    int height = 2 * lines.size() * PIXELS;
    int[] pixels = new int[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        char block = lines.get(y / PIXELS / 2).charAt(x / PIXELS);
        boolean isUpper = y / PIXELS % 2 == 0;
        boolean isLight = block == '\u2588' || block == (isUpper ? '\u2580' : '\u2584');
        pixels[y * width + x] = isLight ? 0xffffff : 0;
      }
    }
    BinaryBitmap photo =
        new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, height, pixels)));
    assertThat(new QRCodeReader().decode(photo).getText()).isEqualTo(LINK);
  }
}
