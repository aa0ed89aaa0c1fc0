package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Place;
import propcap.files.scenario.ScenarioReader;

/** The command that serves the page. */
class OpenCommandTest {
  @Test
  void aFileThatIsNotThereIsBadInput() {
    Run run = Run.of("open", "scenarios/sprung.yaml", "--no-browser");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains("no file 'scenarios/sprung.yaml'");
  }

  private static Run typing(String answers, String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int exitCode =
        Propcap.run(
            InstantSource.system(),
            new ByteArrayInputStream(answers.getBytes(StandardCharsets.UTF_8)),
            new PrintWriter(out),
            new PrintWriter(err),
            args);
    return new Run(exitCode, out.toString(), err.toString());
  }

  @Test
  void withoutAnAnswerItSaysWhatToGive() {
    Run run = typing("", "open", "--no-browser");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.out()).contains("Folder for its files [my-farm]: ");
    assertThat(run.err())
        .contains("--new FOLDER --heat TRAYS --tables TRAYS --hardening TRAYS")
        .contains("name a scenario's file");
  }

  @Test
  void whatCannotBeMeantIsAskedAgainOrRefused(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("scenario.yaml"), "name: There\n");
    Path other = folder.resolve("other");
    Run run = typing(folder + "\n" + other + "\nmany\n0\n12\n", "open", "--no-browser");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.out())
        .contains("a farm is there already; 'propcap open ")
        .contains("must be a whole number of trays, from 1 to 99999, was 'many'")
        .contains("was '0'")
        .contains("Trays that fit on tables in the house [66]: ");
    assertThat(other).doesNotExist();
    Run wrong = typing("", "open", "--new", other.toString(), "--heat", "-3");
    assertThat(wrong.err()).contains("--heat must be a whole number of trays");
    Run both = typing("", "open", "spring.yaml", "--new", other.toString());
    assertThat(both.err()).contains("--new begins a farm");
  }

  @Test
  void aFarmIsBegunFromAFolderAndThreeNumbersAndOpened(@TempDir Path folder) throws Exception {
    Path farm = folder.resolve("tern");
    Thread thread = Thread.currentThread();
    StringWriter printed =
        new StringWriter() {
          @Override
          public void write(String text, int from, int length) {
            super.write(text, from, length);
            if (text.contains("Enter prints a new link")) {
              // It is open: this is Ctrl-C.
              thread.interrupt();
            }
          }
        };
    int exitCode =
        Propcap.run(
            InstantSource.system(),
            new ByteArrayInputStream((farm + "\n12\n\n20\n").getBytes(StandardCharsets.UTF_8)),
            new PrintWriter(printed),
            new PrintWriter(new StringWriter()),
            "open",
            "--no-browser");
    assertThat(exitCode).isEqualTo(Propcap.STOPPED);
    assertThat(printed.toString()).contains("wrote " + farm.resolve("sowings.csv"));
    assertThat(ScenarioReader.read(farm.resolve("scenario.yaml")).places())
        .extracting(Place::name, Place::spaces)
        .containsExactly(tuple("Mats", 12), tuple("House", 66), tuple("Yard", 20));
  }

  @Test
  void theLinkThatIsPrintedOpensThePageUntilItIsStopped() throws Exception {
    PipedWriter printed = new PipedWriter();
    PipedOutputStream keys = new PipedOutputStream();
    PipedInputStream enter = new PipedInputStream(keys);
    try (BufferedReader lines = new BufferedReader(new PipedReader(printed))) {
      FutureTask<Integer> command =
          new FutureTask<>(
              () ->
                  Propcap.run(
                      InstantSource.system(),
                      enter,
                      new PrintWriter(printed, true),
                      new PrintWriter(new StringWriter()),
                      "open",
                      "src/test/resources/propcap/example/scenario.yaml",
                      "--no-browser"));
      Thread thread = new Thread(command);
      thread.start();
      assertThat(lines.readLine()).contains("this machine alone");
      String link = lines.readLine().strip();
      HttpResponse<String> opened =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(URI.create(link)).build(),
                  HttpResponse.BodyHandlers.ofString());
      assertThat(opened.statusCode()).isEqualTo(303);
      assertThat(lines.readLine()).contains("Enter prints a new link");
      keys.write('\n');
      keys.flush();
      assertThat(lines.readLine().strip()).startsWith("http").isNotEqualTo(link);
      thread.interrupt();
      assertThat(command.get(60, TimeUnit.SECONDS)).isEqualTo(Propcap.STOPPED);
    }
  }
}
