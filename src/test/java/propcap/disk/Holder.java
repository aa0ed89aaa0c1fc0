package propcap.disk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;

/** A program that keeps a folder until it is killed. */
public final class Holder {
  private Holder() {}

  public static void main(String[] args) throws IOException {
    try (FileSet set = FileSet.open(Path.of(args[0]), args[1])) {
      Objects.requireNonNull(set);
      System.out.println("holds");
      // Nobody writes to it: it waits.
      int unused = System.in.read();
    }
  }
}
