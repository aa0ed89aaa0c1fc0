package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
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
import java.time.InstantSource;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** The command that serves the page. */
class OpenCommandTest {
  @Test
  void aFileThatIsNotThereIsBadInput() {
    Run run = Run.of("open", "scenarios/sprung.yaml", "--no-browser");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err()).contains("no file 'scenarios/sprung.yaml'");
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
