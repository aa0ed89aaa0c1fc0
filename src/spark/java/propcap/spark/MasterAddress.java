package propcap.spark;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import propcap.study.EngineException;

/**
 * Where a cluster's master listens. Spark itself asks a silent one for a minute; a knock is
 * quicker.
 */
final class MasterAddress {
  private static final Pattern STANDALONE =
      Pattern.compile("spark://(?<host>\\[[0-9a-fA-F:]+\\]|[^:/,]+):(?<port>[0-9]{1,5})");

  private static final int KNOCK_MS = 5000;

  private MasterAddress() {}

  /**
   * Checks that somebody listens there.
   *
   * @throws EngineException where the address is none, the host is unknown or nobody answers
   */
  static void check(String address) {
    Matcher matcher = STANDALONE.matcher(address);
    if (!matcher.matches() || Integer.parseInt(matcher.group("port")) > 65_535) {
      throw new EngineException(
          "--on "
              + address
              + ": a Spark master's address is written spark://HOST:PORT, such as"
              + " spark://10.0.0.5:7077");
    }
    String host = matcher.group("host");
    InetSocketAddress master = new InetSocketAddress(host, Integer.parseInt(matcher.group("port")));
    if (master.isUnresolved()) {
      throw new EngineException("--on " + address + ": no machine is known as " + host);
    }
    try (Socket knock = new Socket()) {
      knock.connect(master, KNOCK_MS);
    } catch (IOException e) {
      throw new EngineException(
          "--on "
              + address
              + ": nothing answers there; is the cluster's master running, and is this its port?",
          e);
    }
  }
}
