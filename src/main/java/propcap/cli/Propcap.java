package propcap.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.channels.ClosedByInterruptException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import propcap.cli.kit.Day;
import propcap.cli.kit.FileName;
import propcap.cli.kit.Program;
import propcap.cli.kit.RunOptions;
import propcap.cli.question.BottleneckCommand;
import propcap.cli.question.CalendarCommand;
import propcap.cli.question.CompareCommand;
import propcap.cli.question.LatestCommand;
import propcap.cli.question.NowCommand;
import propcap.cli.question.OrderCommand;
import propcap.cli.question.PlanCommand;
import propcap.cli.question.ReviewCommand;
import propcap.cli.question.RunCommand;
import propcap.cli.question.ShiftCommand;
import propcap.cli.question.SizeCommand;
import propcap.cli.question.SweepCommand;
import propcap.cli.record.CropsCommand;
import propcap.cli.record.FitCommand;
import propcap.cli.record.FrostCommand;
import propcap.cli.record.GerminationCommand;
import propcap.cli.record.PretendCommand;
import propcap.cli.record.WeatherCommand;
import propcap.files.text.FaultsException;
import propcap.study.BadQuestionException;
import propcap.study.EngineException;
import propcap.study.TooLargeException;

/** Where the program starts. */
@Command(
    name = "propcap",
    description = "Tells, before a seed is sown, whether a spring's trays fit in the house.",
    versionProvider = Propcap.Version.class,
    mixinStandardHelpOptions = true,
    subcommands = {
      RunCommand.class,
      CompareCommand.class,
      BottleneckCommand.class,
      SizeCommand.class,
      ShiftCommand.class,
      NowCommand.class,
      LatestCommand.class,
      SweepCommand.class,
      FitCommand.class,
      GerminationCommand.class,
      FrostCommand.class,
      WeatherCommand.class,
      PlanCommand.class,
      CalendarCommand.class,
      OrderCommand.class,
      NewCommand.class,
      CropsCommand.class,
      ReviewCommand.class,
      PretendCommand.class,
      OpenCommand.class,
      HelpCommand.class,
      AutoComplete.GenerateCompletion.class
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "1:a fault of the program",
      "2:bad input or usage; nothing was written",
      "3:the answer is no: nothing tried reaches the goal",
      "130:stopped; nothing was written but the best plan of a search, and what a sweep had done"
    })
public final class Propcap extends Program implements Callable<Integer> {
  @Spec private CommandSpec spec;

  Propcap() {
    this(InstantSource.system(), InputStream.nullInputStream());
  }

  private Propcap(InstantSource clock, InputStream in) {
    super(clock, in);
  }

  /** Runs a command and ends with its exit code. */
  public static void main(String[] args) {
    System.setProperty("java.awt.headless", "true");
    CountDownLatch finished = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(stopping(Thread.currentThread(), finished));
    int exitCode =
        run(InstantSource.system(), System.in, writer(System.out), writer(System.err), args);
    finished.countDown();
    System.exit(exitCode);
  }

  /** On Ctrl-C: stops the command and gives it time to clear away what it was writing. */
  private static Thread stopping(Thread command, CountDownLatch finished) {
    return new Thread(
        () -> {
          command.interrupt();
          try {
            // A search that is stopped still holds its best plan against the old one.
            var unused = finished.await(15, TimeUnit.SECONDS);
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        });
  }

  private static PrintWriter writer(PrintStream stream) {
    return new PrintWriter(stream, true, StandardCharsets.UTF_8);
  }

  /**
   * Runs a command and returns its exit code.
   *
   * @param clock gives the moment to a command that writes it down
   * @param in what is typed while the command runs; never the program's own in a test, where it may
   *     be what the one who runs the tests talks through
   */
  static int run(
      InstantSource clock, InputStream in, PrintWriter out, PrintWriter err, String... args) {
    try {
      return new CommandLine(new Propcap(clock, in))
          .setOut(out)
          .setErr(err)
          .setCaseInsensitiveEnumValuesAllowed(true)
          .registerConverter(int.class, new RunOptions.WholeNumber())
          .registerConverter(Integer.class, new RunOptions.WholeNumber())
          .registerConverter(long.class, RunOptions.WholeNumber::whole)
          .registerConverter(double.class, new RunOptions.FiniteNumber())
          .registerConverter(Double.class, new RunOptions.FiniteNumber())
          .registerConverter(LocalDate.class, new Day())
          .registerConverter(Path.class, new FileName())
          .setExecutionExceptionHandler((e, command, parsed) -> failed(e, command))
          .execute(args);
    } catch (OutOfMemoryError e) {
      err.println(TooLargeException.outOfMemory().getMessage());
      return BAD_INPUT;
    }
  }

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "Say what to do, such as: propcap run FILE");
  }

  static int failed(Exception e, CommandLine command) {
    PrintWriter err = command.getErr();
    if (e instanceof FaultsException faults) {
      faults.faults().forEach(err::println);
      return BAD_INPUT;
    }
    if (e instanceof InterruptedException || e instanceof ClosedByInterruptException) {
      err.println("Stopped. Nothing was written.");
      return STOPPED;
    }
    if (e instanceof IOException
        || e instanceof BadQuestionException
        || e instanceof EngineException
        || e instanceof TooLargeException) {
      err.println(e.getMessage());
      return BAD_INPUT;
    }
    err.println("Propcap has failed, and it is not your files' fault: " + e);
    for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
      err.println("  because of " + cause);
    }
    err.println("  at " + e.getStackTrace()[0]);
    err.println("Earlier results are untouched. Please report this with your files.");
    return FAULT_OF_OURS;
  }

  /** The version as picocli asks for it. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"propcap " + version()};
    }
  }
}
