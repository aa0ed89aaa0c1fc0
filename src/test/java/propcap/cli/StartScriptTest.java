package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Which program ./propcap starts: the one that can use a Spark cluster is built with much more, and
 * only where an address asks for it. Java is a script here that says what it was given.
 */
@DisabledOnOs(OS.WINDOWS)
class StartScriptTest {
  @TempDir private Path home;

  private String started(String words) throws IOException, InterruptedException {
    Files.copy(Path.of("propcap"), home.resolve("propcap"));
    Files.createDirectories(home.resolve("src/main"));
    Files.createDirectories(home.resolve("src/spark"));
    Files.writeString(home.resolve("pom.xml"), "");
    Files.createDirectories(home.resolve("target"));
    for (String jar : List.of("propcap-all.jar", "propcap-spark.jar")) {
      Files.writeString(home.resolve("target").resolve(jar), "");
    }
    Path bin = Files.createDirectory(home.resolve("bin"));
    for (String program : List.of("java", "mvn")) {
      Path file = Files.writeString(bin.resolve(program), "#!/bin/sh\necho " + program + " \"$@\"");
      assertThat(file.toFile().setExecutable(true)).isTrue();
    }
    List<String> command = new ArrayList<>(List.of("sh", home.resolve("propcap").toString()));
    command.addAll(List.of(words.split(" ")));
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectErrorStream(true).redirectInput(new File("/dev/null"));
    builder.environment().merge("PATH", bin.toString(), (path, own) -> own + ":" + path);
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return said;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "run scenarios/spring.yaml",
        "now scenarios/in-season.yaml --on 2027-04-10",
        "now scenarios/in-season.yaml --on=2027-04-10 --seasons 10"
      })
  void aDayToGoOnFromTakesNoCluster(String words) throws Exception {
    assertThat(started(words)).startsWith("java ").contains("propcap-all.jar " + words);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "run scenarios/spring.yaml --on spark://10.0.0.5:7077",
        "run scenarios/spring.yaml --on=spark://10.0.0.5:7077",
        "run scenarios/in-season.yaml --on 2027-04-10 --on spark://10.0.0.5:7077"
      })
  void anAddressTakesTheProgramThatCanUseIt(String words) throws Exception {
    assertThat(started(words)).startsWith("java ").contains("propcap-spark.jar", words);
  }
}
