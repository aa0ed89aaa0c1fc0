package propcap.cli;

import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Instant;

/** A command as a user runs it: its exit code and what it printed. */
record Run(int exitCode, String out, String err) {
  /** The evening before the season is planned, for what a command writes down of the moment. */
  static final Instant EVENING = Instant.parse("2026-11-30T17:45:10Z");

  static Run of(String... args) {
    return at(EVENING, args);
  }

  static Run at(Instant moment, String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int exitCode = exitCode(moment, new PrintWriter(out), new PrintWriter(err), args);
    return new Run(exitCode, out.toString(), err.toString());
  }

  /** With nobody at the keyboard. */
  static int exitCode(Instant moment, PrintWriter out, PrintWriter err, String... args) {
    return Propcap.run(() -> moment, InputStream.nullInputStream(), out, err, args);
  }
}
