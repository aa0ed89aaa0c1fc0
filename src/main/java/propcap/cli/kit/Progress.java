package propcap.cli.kit;

import java.io.PrintWriter;

/** A bar that fills while seasons run: on a terminal only, never in a pipe. */
final class Progress implements AutoCloseable {
  private static final int WIDTH = 40;

  private final PrintWriter terminal;
  private final boolean shown;
  private int shownMarks = -1;

  private Progress(PrintWriter terminal, boolean shown) {
    this.terminal = terminal;
    this.shown = shown;
  }

  // Newer Javas give a console in a pipe as well, unless -Djdk.console=java.base, as ./propcap
  // says.
  @SuppressWarnings("SystemConsoleNull")
  static Progress onTerminal(PrintWriter terminal) {
    return new Progress(terminal, System.console() != null);
  }

  /** Any thread may call it, with the share done, 0 to 1. */
  synchronized void show(double share) {
    int marks = (int) Math.round(share * WIDTH);
    if (shown && marks > shownMarks) {
      shownMarks = marks;
      terminal.printf(
          "\r[%s%s] %3.0f %% of the springs",
          "=".repeat(marks), " ".repeat(WIDTH - marks), 100 * share);
      terminal.flush();
    }
  }

  /** Clears the line. */
  @Override
  public void close() {
    if (shown) {
      terminal.print("\r" + " ".repeat(WIDTH + 30) + "\r");
      terminal.flush();
    }
  }
}
