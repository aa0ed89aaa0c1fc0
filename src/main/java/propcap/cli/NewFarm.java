package propcap.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import propcap.cli.kit.FileName;
import propcap.files.edit.Starter;
import propcap.files.edit.StarterSizes;
import propcap.files.text.FaultsException;

/** A farm begun from nothing: a folder and three numbers, each given as an option or asked for. */
final class NewFarm {
  private static final String ALL_GIVEN =
      "--new FOLDER --heat TRAYS --tables TRAYS --hardening TRAYS";
  private static final String SCENARIO = "scenario.yaml";

  @Option(
      names = "--new",
      paramLabel = "FOLDER",
      description = "Begins a farm in a new folder. What is not given with it is asked.")
  private @Nullable Path folder;

  @Option(
      names = "--heat",
      paramLabel = "TRAYS",
      description = "With --new: how many trays fit on heat, where they germinate.")
  private @Nullable Integer heat;

  @Option(
      names = "--tables",
      paramLabel = "TRAYS",
      description = "With --new: how many fit on tables in the house.")
  private @Nullable Integer tables;

  @Option(
      names = "--hardening",
      paramLabel = "TRAYS",
      description = "With --new: how many fit where they harden off.")
  private @Nullable Integer hardening;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  /** Whether any of it was given. */
  boolean isAsked() {
    return folder != null || heat != null || tables != null || hardening != null;
  }

  /**
   * Writes the farm.
   *
   * @param typed the answers, a line each
   * @return its scenario
   */
  Path begin(BufferedReader typed, PrintWriter out) throws IOException, FaultsException {
    Questions questions = new Questions(typed, out);
    if (folder == null || heat == null || tables == null || hardening == null) {
      out.println(
          "To begin a farm, answer what is asked. Enter alone takes what stands in brackets.");
    }
    Path into = folder == null ? questions.folder() : folder;
    StarterSizes sizes =
        new StarterSizes(
            questions.trays(heat, "--heat", "Trays that fit on heat, where seed germinates", 32),
            questions.trays(tables, "--tables", "Trays that fit on tables in the house", 66),
            questions.trays(
                hardening, "--hardening", "Trays that fit outdoors, to harden off", 40));
    Starter.write(into, sizes).forEach(path -> out.println("wrote " + path));
    out.println("Its crops, sowings and weather are an example: change them to yours on the page.");
    return into.resolve(SCENARIO);
  }

  /** Asks on the terminal until the answer can be used. */
  private final class Questions {
    private final BufferedReader typed;
    private final PrintWriter out;

    Questions(BufferedReader typed, PrintWriter out) {
      this.typed = typed;
      this.out = out;
    }

    Path folder() throws IOException {
      return ask(
          "Folder for its files",
          "my-farm",
          text -> {
            Path named = new FileName().convert(text);
            if (Files.exists(named.resolve(SCENARIO))) {
              throw new TypeConversionException(
                  "a farm is there already; 'propcap open "
                      + named.resolve(SCENARIO)
                      + "' opens it. Another folder");
            }
            return named;
          });
    }

    int trays(@Nullable Integer given, String option, String words, int usual) throws IOException {
      if (given == null) {
        return ask(words, String.valueOf(usual), text -> whole(text, "That"));
      }
      try {
        return whole(given.toString(), option);
      } catch (TypeConversionException e) {
        throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
      }
    }

    private int whole(String text, String what) {
      try {
        int trays = Integer.parseInt(text);
        var unused = new StarterSizes(trays, trays, trays);
        return trays;
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(
            "%s must be a whole number of trays, from 1 to %s, was '%s'"
                .formatted(what, StarterSizes.MOST, text));
      }
    }

    private <T> T ask(String words, String usual, Function<String, T> read) throws IOException {
      while (true) {
        out.print(words + " [" + usual + "]: ");
        out.flush();
        String line = typed.readLine();
        if (line == null) {
          out.println();
          throw new ParameterException(
              spec.commandLine(),
              "Nobody answers: name a scenario's file, or begin a farm with " + ALL_GIVEN);
        }
        try {
          return read.apply(line.isBlank() ? usual : line.strip());
        } catch (TypeConversionException e) {
          out.println(e.getMessage());
        }
      }
    }
  }
}
