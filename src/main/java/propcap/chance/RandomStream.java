package propcap.chance;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import umontreal.ssj.rng.LFSR258;

/**
 * A stream of uniforms for one key, with a substream for each season: L'Ecuyer's LFSR258, whose
 * seed is a digest of the run's seed and the key. Neither other keys nor the order in which streams
 * are made has any part in it.
 */
public final class RandomStream {
  /** Each word of the generator's state must be at least this. */
  private static final long[] LEAST = {2, 512, 4096, 131072, 8388608};

  private final LFSR258 generator;
  private int season;

  /**
   * The stream of a key.
   *
   * @param key what is drawn and for whom, such as "tray", its sowing and its number
   */
  public RandomStream(long seed, String... key) {
    generator = generator(seed, String.join("\0", key));
  }

  /** Moves to the start of a season's substream. Going forwards is fast. */
  public void toSeason(int number) {
    if (number < season) {
      generator.resetStartStream();
      season = 0;
    }
    generator.resetStartSubstream();
    for (; season < number; season++) {
      generator.resetNextSubstream();
    }
  }

  /** The next uniform of the season, in (0, 1). */
  public double next() {
    return generator.nextDouble();
  }

  /** The next uniforms of the season, a tray's block of them. */
  double[] nextBlock() {
    double[] block = new double[DrawPurpose.COUNT];
    for (int i = 0; i < block.length; i++) {
      block[i] = generator.nextDouble();
    }
    return block;
  }

  /** Synchronised, for SSJ's constructor counts up seeds of its own that all threads share. */
  private static synchronized LFSR258 generator(long seed, String key) {
    ByteBuffer digest =
        ByteBuffer.wrap(sha512().digest((seed + "\0" + key).getBytes(StandardCharsets.UTF_8)));
    long[] state = new long[LEAST.length];
    for (int i = 0; i < state.length; i++) {
      state[i] = digest.getLong();
      while (Long.compareUnsigned(state[i], LEAST[i]) < 0) {
        state[i] += LEAST[i];
      }
    }
    LFSR258 generator = new LFSR258();
    generator.setSeed(state);
    return generator;
  }

  private static MessageDigest sha512() {
    try {
      return MessageDigest.getInstance("SHA-512");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("a Java without SHA-512", e);
    }
  }
}
