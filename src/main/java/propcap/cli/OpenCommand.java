package propcap.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.Program;
import propcap.files.text.FaultsException;
import propcap.results.ResultsFolder;
import propcap.web.Server;

/** A page on which to play with a scenario. */
@Command(
    name = "open",
    description =
        "Opens a scenario as a page in the browser, served on this machine alone; without one,"
            + " begins a farm and opens it.",
    mixinStandardHelpOptions = true)
final class OpenCommand implements Callable<Integer> {
  private static final int MOST_PORT = 65_535;

  @Parameters(
      paramLabel = "SCENARIO",
      arity = "0..1",
      description = "The scenario's file, such as spring.yaml. Without one, a farm is begun.")
  private @Nullable Path named;

  @Mixin private NewFarm farm;

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "0",
      description = "The port to listen on. Default: any that is free.")
  private int port;

  @Option(names = "--no-browser", description = "Prints the link and opens no browser.")
  private boolean isQuiet;

  @Option(
      names = "--share",
      description =
          "Lets phones in the same network read the forecast and the answers, by a link of their"
              + " own. They can change nothing.")
  private boolean isShared;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    Program.require(
        spec,
        port >= 0 && port <= MOST_PORT,
        "--port must be from 0 to " + MOST_PORT + ", was " + port);
    BufferedReader typed =
        new BufferedReader(new InputStreamReader(Program.in(spec), Charset.defaultCharset()));
    Path file = file(typed, out);
    ResultsFolder.finishIn(file.resolveSibling("results"));
    try (Server server = Server.start(file, port, Program.version())) {
      String link = server.newLink();
      out.println("The page, for this machine alone; the link opens once:");
      out.println("  " + link);
      out.println("Enter prints a new link, Ctrl-C ends. What is not saved comes back.");
      if (isShared) {
        share(server, out);
      }
      if (!isQuiet) {
        browse(link);
      }
      printLinksOnEnter(server, typed, out);
      new CountDownLatch(1).await();
    } catch (InterruptedException e) {
      out.println("Stopped. What is not saved comes back the next time.");
    }
    return Program.STOPPED;
  }

  private Path file(BufferedReader typed, PrintWriter out) throws IOException, FaultsException {
    Path given = named;
    if (given == null) {
      return farm.begin(typed, out);
    }
    Program.require(spec, !farm.isAsked(), "--new begins a farm: leave it out, or '" + given + "'");
    if (!Files.isRegularFile(given)) {
      throw new IOException("no file '" + given + "'; the name of a scenario that is there");
    }
    return given;
  }

  /** Where there is no network to share in, the page is open all the same. */
  private static void share(Server server, PrintWriter out) {
    String link;
    try {
      link = server.share(Sharing.address());
    } catch (IOException e) {
      out.println("Nothing is shared: " + e.getMessage());
      return;
    }
    out.println("To read on a phone in the same network:");
    out.println("  " + link);
    out.print(Sharing.code(link));
    out.println(
        "Whoever has this link can read the forecast and the answers until Propcap ends, and");
    out.println("change nothing. It is not encrypted: share in a network that you trust alone.");
  }

  /** Where there is no browser to open, the link is printed all the same. */
  private static void browse(String link) {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    List<String> opener =
        system.contains("mac")
            ? List.of("open", link)
            : system.contains("win")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", link)
                : List.of("xdg-open", link);
    try {
      var unused =
          new ProcessBuilder(opener)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException e) {
      // The grower opens the link.
    }
  }

  private static void printLinksOnEnter(Server server, BufferedReader typed, PrintWriter out) {
    Thread reader =
        new Thread(
            () -> {
              try {
                while (typed.readLine() != null) {
                  out.println("  " + server.newLink());
                }
              } catch (IOException e) {
                // No terminal to press Enter on.
              }
            },
            "enter");
    reader.setDaemon(true);
    reader.start();
  }
}
