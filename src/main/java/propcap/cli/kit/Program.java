package propcap.cli.kit;

import java.io.InputStream;
import java.time.Instant;
import java.time.InstantSource;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** The program that a command is one of: its version, its clock, what is typed, how it ends. */
public abstract class Program {
  public static final int DONE = 0;
  public static final int FAULT_OF_OURS = 1;
  public static final int BAD_INPUT = 2;
  public static final int NO = 3;
  public static final int STOPPED = 130;

  private final InstantSource clock;
  private final InputStream in;

  /**
   * A program.
   *
   * @param clock gives the moment to a command that writes it down
   * @param in what is typed while a command runs
   */
  public Program(InstantSource clock, InputStream in) {
    this.clock = clock;
    this.in = in;
  }

  /** The moment, as it is for the program that a command is one of. */
  public static Instant now(CommandSpec command) {
    return ((Program) command.root().userObject()).clock.instant();
  }

  /** What is typed while a command runs. */
  public static InputStream in(CommandSpec command) {
    return ((Program) command.root().userObject()).in;
  }

  /** Refuses how a command is used, unless something holds. */
  public static void require(CommandSpec command, boolean holds, String otherwise) {
    if (!holds) {
      throw new ParameterException(command.commandLine(), otherwise);
    }
  }

  /** The version that the jar was built as. */
  public static String version() {
    String version = Program.class.getPackage().getImplementationVersion();
    return version == null ? "from source" : version;
  }
}
