package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;
import propcap.disk.Child;

/** A station's file of the full 64 MiB is read in less memory than it is long. */
@Tag("attack")
class StationAtItsLimitTest {
  private static final int MOST_BYTES = 64 << 20;

  @TempDir Path folder;

  /** As many rows as fit, thirty kinds of value a day, from 1763 on. */
  private Path file(boolean isPacked) throws IOException {
    Path file = folder.resolve(isPacked ? "limit.csv.gz" : "limit.csv");
    int left = MOST_BYTES;
    try (OutputStream plain = Files.newOutputStream(file);
        OutputStream out = isPacked ? new GZIPOutputStream(plain) : plain) {
      for (LocalDate date = LocalDate.of(1763, 1, 1); left > 0; date = date.plusDays(1)) {
        for (int kind = 0; kind < 30; kind++) {
          String element =
              kind == 0 ? "TMIN,10" : kind == 1 ? "TMAX,120" : "WT%02d,1".formatted(kind);
          String row =
              "XX000000001," + date.toString().replace("-", "") + "," + element + ",,,7,\n";
          left -= row.length();
          if (left >= 0) {
            out.write(row.getBytes(StandardCharsets.UTF_8));
          }
        }
      }
    }
    return file;
  }

  @Test
  void itIsReadInAHeapOf48MebibytesPackedOrNot() throws Exception {
    for (boolean isPacked : new boolean[] {false, true}) {
      List<String> command =
          Child.java(Propcap.class, "weather", file(isPacked).toString()).stream()
              .map(word -> word.equals("-Xmx256m") ? "-Xmx48m" : word)
              .collect(Collectors.toList());

      try (Child child = Child.start(command)) {
        String said = child.rest();

        assertThat(child.exitCode()).as(said).isZero();
        assertThat(said).contains("Station XX000000001: ").contains("1 January 1763 to ");
      }
    }
    Tried.row(
        "attack",
        "A station’s file at its limit of 64 MiB is read",
        "two files of 64 MiB, one packed, each with a heap of 48 MiB",
        "both read to their last day");
  }
}
