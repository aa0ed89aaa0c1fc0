package propcap.files.text;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/**
 * The text of a file that may be packed with gzip, as weather services hand them out. It is never
 * held as a whole, so that its length costs time alone.
 */
public final class PackedText extends Reader {
  private static final int BUFFER = 1 << 15;
  private static final int MAGIC = 0x1f8b;

  private final InputStream in;
  private final boolean isPacked;
  private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
  private final ByteBuffer bytes = ByteBuffer.allocate(BUFFER).flip();
  private final CharBuffer text = CharBuffer.allocate(BUFFER).flip();
  private long taken;
  private int line = 1;
  private boolean begun;
  private boolean ended;

  private PackedText(InputStream in, boolean isPacked) {
    this.in = in;
    this.isPacked = isPacked;
  }

  /** Why it is no text of a grower's. */
  public static final class UnreadableException extends IOException {
    private static final long serialVersionUID = 1;

    private final int line;
    private final String right;

    private UnreadableException(int line, String found, String right) {
      super(found);
      this.line = line;
      this.right = right;
    }

    public int line() {
      return line;
    }

    public String found() {
      return String.valueOf(getMessage());
    }

    public String right() {
      return right;
    }
  }

  public static PackedText of(Path file) throws IOException {
    InputStream in = new BufferedInputStream(Files.newInputStream(file), BUFFER);
    try {
      in.mark(2);
      boolean isPacked = (in.read() << 8 | in.read()) == MAGIC;
      in.reset();
      return new PackedText(isPacked ? new GZIPInputStream(in, BUFFER) : in, isPacked);
    } catch (ZipException | EOFException e) {
      in.close();
      throw notWhole();
    } catch (IOException e) {
      in.close();
      throw e;
    }
  }

  private static UnreadableException notWhole() {
    return new UnreadableException(0, "cannot be unpacked", "a whole gzip file");
  }

  @Override
  public int read(char[] into, int offset, int length) throws IOException {
    while (!text.hasRemaining()) {
      if (ended) {
        return -1;
      }
      decode();
    }
    int given = Math.min(length, text.remaining());
    text.get(into, offset, given);
    return given;
  }

  private void decode() throws IOException {
    fill();
    text.clear();
    CoderResult result = decoder.decode(bytes, text, ended);
    text.flip();
    if (!begun && text.hasRemaining()) {
      begun = true;
      if (text.charAt(0) == '\uFEFF') {
        text.get();
      }
    }
    for (int i = text.position(); i < text.limit(); i++) {
      char c = text.get(i);
      if (c == '\n') {
        line++;
      } else if (c == '\0') {
        throw noText();
      }
    }
    if (result.isError()) {
      throw noText();
    }
  }

  private UnreadableException noText() {
    return new UnreadableException(line, "bytes that are no text", "a text file in UTF-8");
  }

  private void fill() throws IOException {
    bytes.compact();
    try {
      int read = in.read(bytes.array(), bytes.position(), bytes.remaining());
      ended = read < 0;
      bytes.position(bytes.position() + Math.max(0, read));
      taken += Math.max(0, read);
    } catch (ZipException | EOFException e) {
      throw isPacked ? notWhole() : e;
    }
    bytes.flip();
    if (taken > SourceText.MOST_BYTES) {
      throw new UnreadableException(0, SourceText.TOO_LARGE, SourceText.AT_MOST);
    }
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
