package propcap.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;
import propcap.disk.Child;
import propcap.disk.FailingDisk;
import propcap.disk.FileSet;
import propcap.report.Forecasts;
import propcap.report.Put;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.order.SuppliesAnswer;
import propcap.report.shift.ShiftsAnswer;
import propcap.study.forecast.Forecast;

/** Programs that are killed while they write results, at every call and at any moment. */
@Tag("attack")
class KilledWritingTest {
  private static final AnswerKind ORDER = SuppliesAnswer.KIND;
  private static final int RANDOM_KILLS = 60;

  @TempDir Path desk;
  private int folders;

  private static Map<String, String> texts(String text) {
    Map<String, String> texts = new TreeMap<>();
    ORDER.files().forEach(name -> texts.put(name, (text + " of " + name + "\n").repeat(500)));
    return texts;
  }

  private static void put(Path folder, String text) throws IOException {
    try (ResultsFolder results =
        ResultsFolder.open(folder, ORDER, Put.asker(Path.of("spring.yaml"), true))) {
      List<Path> told = results.write(texts(text));
      assertThat(told).hasSize(3);
    }
  }

  private Path oldFolder() throws IOException {
    Path folder = desk.resolve("results" + ++folders);
    put(folder, "old");
    Files.writeString(folder.resolve("notes.txt"), "mine");
    return folder;
  }

  /** Finishes, and says which answer is there, whole and with nothing else. */
  private static String answerIn(Path folder) throws IOException {
    ResultsFolder.open(folder, ORDER, Put.asker(Path.of("spring.yaml"), true)).close();
    Map<String, String> found = Put.contents(folder);
    assertThat(found.remove("notes.txt")).isEqualTo("mine");
    String answer = String.valueOf(found.get("order.csv")).split(" ", -1)[0];
    assertThat(found).isEqualTo(texts(answer));
    assertThat(folder.toFile().list()).hasSize(5);
    return answer;
  }

  /** Writes a new answer, and ends at a call to the disk without a word. */
  public static final class Halting {
    private Halting() {}

    public static void main(String[] args) throws IOException {
      int last = Integer.parseInt(args[1]);
      FailingDisk disk =
          new FailingDisk(
              (call, what) -> {
                if (call == last) {
                  Runtime.getRuntime().halt(137);
                }
              });
      put(disk.at(Path.of(args[0])), "new");
    }
  }

  @Test
  void aProcessThatEndsAtAnyCallLeavesTheOldAnswerOrTheNewOne() throws Exception {
    FailingDisk sound = FailingDisk.sound();
    put(sound.at(oldFolder()), "new");
    int isNew = 0;
    for (int last = 1; last <= sound.calls(); last++) {
      Path folder = oldFolder();
      try (Child child = Child.start(Halting.class, folder.toString(), "" + last)) {
        assertThat(child.rest()).isEmpty();
        assertThat(child.exitCode()).isEqualTo(137);
      }
      isNew += answerIn(folder).equals("new") ? 1 : 0;
    }
    assertThat(isNew).isBetween(1, sound.calls() - 1);
    Tried.row(
        "attack",
        "a run that ends at a call to the file system leaves the old answer or the new one",
        sound.calls() + " processes, ended at each call in turn",
        "the old one " + (sound.calls() - isNew) + " times, the new one " + isNew + " times");
  }

  /** Killed, and the next one killed as well, which may have been finishing the first's work. */
  @Test
  void twoKillsOneAfterTheOther() throws Exception {
    FailingDisk sound = FailingDisk.sound();
    put(sound.at(oldFolder()), "new");
    Map<String, Integer> answers = new TreeMap<>();
    int pairs = 0;
    for (int first = 1; first <= sound.calls(); first++) {
      boolean isKilled = true;
      for (int second = 1; isKilled; second += 3) {
        Path folder = oldFolder();
        FailingDisk one = FailingDisk.killedAt(first);
        assertThatThrownBy(() -> put(one.at(folder), "new")).isInstanceOf(FailingDisk.Killed.class);
        try {
          put(FailingDisk.killedAt(second).at(folder), "newer");
          isKilled = false;
        } catch (FailingDisk.Killed e) {
          pairs++;
        }
        answers.merge(answerIn(folder), 1, Integer::sum);
      }
    }
    assertThat(answers).containsOnlyKeys("old", "new", "newer");
    Tried.row(
        "attack",
        "two kills, the second of the run that finds what the first left",
        pairs + " pairs of calls",
        "always a whole answer: " + answers);
  }

  /** Writes answers in turn, as fast as it can, and says each that is written. */
  public static final class Writing {
    private Writing() {}

    public static void main(String[] args) throws IOException {
      for (int n = 0; ; n++) {
        put(Path.of(args[0]), n % 2 == 0 ? "new" : "old");
        System.out.println("wrote");
      }
    }
  }

  @Test
  void aKillAtAnyMoment() throws Exception {
    SplittableRandom random = new SplittableRandom(11);
    int unfinished = 0;
    int cleared = 0;
    for (int kills = 0; kills < RANDOM_KILLS; kills++) {
      Path folder = oldFolder();
      try (Child child = Child.start(Writing.class, folder.toString())) {
        for (int lines = random.nextInt(1, 12); lines > 0; lines--) {
          assertThat(child.line()).isEqualTo("wrote");
        }
        // Somewhere within the next answer: how far it comes is the machine's chance.
        for (int spin = random.nextInt(200_000); spin > 0; spin--) {
          Thread.onSpinWait();
        }
        child.kill();
      }
      unfinished += FileSet.isUnfinished(folder) ? 1 : 0;
      cleared += Files.exists(folder.resolve(".propcap")) ? 1 : 0;
      answerIn(folder);
    }
    assertThat(cleared).isPositive();
    Tried.row(
        "attack",
        "kill -9 at any moment of writing",
        RANDOM_KILLS + " processes that wrote answers without a pause",
        "always a whole answer; "
            + cleared
            + " were killed at work, "
            + unfinished
            + " of them while files were moved into place");
  }

  /** A real forecast's seven files, killed at each call, in the same process. */
  @Test
  void aForecastThatIsKilledAtAnyCall() throws Exception {
    Forecast old = Forecasts.bare();
    Forecast fresh = Forecasts.spring();
    Path whole = desk.resolve("whole");
    Put.in(whole, new ForecastAnswer(old));
    Map<String, String> before = Put.contents(whole);
    FailingDisk sound = FailingDisk.sound();
    Put.in(sound.at(whole), new ForecastAnswer(fresh));
    Map<String, String> after = Put.contents(whole);
    int isNew = 0;
    for (int last = 1; last <= sound.calls(); last++) {
      Path folder = desk.resolve("forecast" + last);
      Put.in(folder, new ForecastAnswer(old));
      FailingDisk disk = FailingDisk.killedAt(last);
      assertThatThrownBy(() -> Put.in(disk.at(folder), new ForecastAnswer(fresh)))
          .isInstanceOf(FailingDisk.Killed.class);
      Put.nothingIn(folder, ShiftsAnswer.KIND);
      assertThat(Put.contents(folder)).isIn(before, after);
      isNew += Put.contents(folder).equals(after) ? 1 : 0;
    }
    Tried.row(
        "attack",
        "a forecast of seven files, ended at a call to the file system",
        sound.calls() + " calls, each in turn",
        "the old one " + (sound.calls() - isNew) + " times, the new one " + isNew + " times");
  }
}
