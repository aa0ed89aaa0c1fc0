package propcap.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/** A command as a user runs it: its exit code and what it printed. */
record Run(int exitCode, String out, String err) {
  static Run of(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int exitCode = Propcap.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Run(exitCode, out.toString(), err.toString());
  }
}
