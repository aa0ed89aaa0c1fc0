package propcap.cli;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Collections;
import java.util.Map;

/** How a phone in the same network finds the page. */
final class Sharing {
  /** Light modules around a code, as its standard asks (ISO/IEC 18004). */
  private static final int QUIET_ZONE = 4;

  private Sharing() {}

  /**
   * This machine's address in the network that it is in.
   *
   * @throws IOException where it is in none
   */
  static InetAddress address() throws IOException {
    try {
      for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        if (!each.isUp() || each.isLoopback() || each.isPointToPoint() || each.isVirtual()) {
          continue;
        }
        for (InetAddress address : Collections.list(each.getInetAddresses())) {
          if (address instanceof Inet4Address && address.isSiteLocalAddress()) {
            return address;
          }
        }
      }
    } catch (SocketException e) {
      throw new IOException("this machine's networks cannot be looked at: " + e.getMessage(), e);
    }
    throw new IOException(
        "this machine is in no network of a home or a farm (addresses of 10., 172.16. to 172.31. or"
            + " 192.168.)");
  }

  /**
   * A link as a QR code of block characters, for a terminal that is dark on light or the reverse.
   */
  static String code(String link) {
    BitMatrix code;
    try {
      code =
          new QRCodeWriter()
              .encode(link, BarcodeFormat.QR_CODE, 0, 0, Map.of(EncodeHintType.MARGIN, QUIET_ZONE));
    } catch (WriterException e) {
      throw new IllegalArgumentException("a link that no code holds: " + link, e);
    }
    StringBuilder lines = new StringBuilder();
    for (int y = 0; y < code.getHeight(); y += 2) {
      for (int x = 0; x < code.getWidth(); x++) {
        // Light is drawn, so that it is right where letters are light on dark, as most are.
        boolean upper = !code.get(x, y);
        boolean lower = y + 1 >= code.getHeight() || !code.get(x, y + 1);
        lines.append(upper ? (lower ? '\u2588' : '\u2580') : (lower ? '\u2584' : ' '));
      }
      lines.append('\n');
    }
    return lines.toString();
  }
}
