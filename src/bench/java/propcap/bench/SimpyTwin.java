package propcap.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;

/**
 * The same spring here and in SimPy, by turns: what it takes of a processor, and whether both come
 * to the same plants. It needs Debian's python3-simpy3, and says so where there is none.
 */
final class SimpyTwin {
  private static final String FOLDER = "src/bench/simpy";
  private static final int ROUNDS = 5;
  private static final int SPRINGS = 2000;
  private static final String SPRINGS_IN_SIMPY = "100";

  private static final OperatingSystemMXBean MACHINE =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  private SimpyTwin() {}

  static void tell() throws FaultsException, IOException, InterruptedException {
    Scenario scenario = ScenarioReader.read(Path.of(FOLDER, "stage.yaml"));
    double[] ratios = new double[ROUNDS];
    for (int i = -1; i < ROUNDS; i++) {
      long begun = MACHINE.getProcessCpuTime();
      Forecast forecast =
          Forecasting.forecast(scenario, new RunSettings(1, SPRINGS, null, 1), share -> {});
      double here = (MACHINE.getProcessCpuTime() - begun) / 1e9 / SPRINGS;
      String[] told = inSimpy();
      if (told.length != 3) {
        System.out.println("SimPy: not measured, Debian's python3-simpy3 is not there");
        return;
      }
      ratios[Math.max(0, i)] = Double.parseDouble(told[2]) / here;
      if (i == ROUNDS - 1) {
        System.out.printf(
            Locale.ROOT,
            "  on time here %.0f plants, in SimPy %s (standard error %s); %.2f ms and %.2f ms%n",
            forecast.onTime().mean(),
            told[0],
            told[1],
            1000 * here,
            1000 * Double.parseDouble(told[2]));
      }
    }
    Arrays.sort(ratios);
    System.out.printf(
        Locale.ROOT,
        "springs for one of SimPy's, median of %d rounds %.0f, %.0f to %.0f%n",
        ROUNDS,
        ratios[ROUNDS / 2],
        ratios[0],
        ratios[ROUNDS - 1]);
  }

  /** Mean of plants on time, its standard error, and seconds of a processor a spring. */
  private static String[] inSimpy() throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder("/usr/bin/python3", FOLDER + "/stage.py", FOLDER, SPRINGS_IN_SIMPY)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return process.waitFor() == 0 ? told.strip().split(" ", -1) : new String[0];
  }
}
