package propcap.files.weather;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Set;

/** The invented weather records that Propcap comes with, known by their text. */
public final class ExampleWeather {
  /** SHA-256 of the starter's record and of the demonstration's. */
  private static final Set<String> RECORDS =
      Set.of(
          "aa119582bb007db28b483353dc2dd9e8e3cd23df23a833f7174bef28f126ee89",
          "57c4d43ff0b5045fbbf1d638d96803bdb3da599604fd3247d75ca36782632476");

  private ExampleWeather() {}

  /** Whether a record is one of these, to the letter: what a grower changed is the grower's. */
  public static boolean is(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return RECORDS.contains(HexFormat.of().formatHex(digest));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
