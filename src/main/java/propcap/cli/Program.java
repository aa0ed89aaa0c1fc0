package propcap.cli;

import java.io.InputStream;
import java.time.Instant;
import java.time.InstantSource;
import picocli.CommandLine.Model.CommandSpec;

/** The program that a command is one of: its version, its clock, what is typed, how it ends. */
abstract class Program {
  static final int DONE = 0;
  static final int FAULT_OF_OURS = 1;
  static final int BAD_INPUT = 2;
  static final int NO = 3;
  static final int STOPPED = 130;

  private final InstantSource clock;
  private final InputStream in;

  /**
   * A program.
   *
   * @param clock gives the moment to a command that writes it down
   * @param in what is typed while a command runs
   */
  Program(InstantSource clock, InputStream in) {
    this.clock = clock;
    this.in = in;
  }

  /** The moment, as it is for the program that a command is one of. */
  static Instant now(CommandSpec command) {
    return ((Program) command.root().userObject()).clock.instant();
  }

  /** What is typed while a command runs. */
  static InputStream in(CommandSpec command) {
    return ((Program) command.root().userObject()).in;
  }

  /** The version that the jar was built as. */
  static String version() {
    String version = Program.class.getPackage().getImplementationVersion();
    return version == null ? "from source" : version;
  }
}
