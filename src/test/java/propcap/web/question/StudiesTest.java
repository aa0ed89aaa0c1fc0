package propcap.web.question;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

/** The line of studies outlives whatever one of them does. */
class StudiesTest {
  @Test
  void aStudyThatThrowsAnErrorDoesNotStopTheNext() throws Exception {
    CountDownLatch over = new CountDownLatch(2);
    try (Studies studies =
        new Studies(
            study -> {
              if (study.isOver()) {
                over.countDown();
              }
            })) {
      Study broken =
          studies.add(
              "broken",
              false,
              progress -> {
                throw new StackOverflowError("too deep");
              });
      Study full =
          studies.add(
              "full",
              false,
              progress -> {
                throw new OutOfMemoryError("no room");
              });

      assertThat(over.await(20, TimeUnit.SECONDS)).isTrue();
      assertThat(broken.stage()).isEqualTo(Study.Stage.FAILED);
      assertThat(broken.trouble()).contains("not your files' fault", "too deep");
      assertThat(full.trouble()).contains("is not enough for this", "PROPCAP_OPTS");
    }
  }

  /** Who is told that a study is over and looks at the line at once does not find it there. */
  @Test
  void whatIsToldToBeOverIsInTheLineNoMore() throws Exception {
    CountDownLatch over = new CountDownLatch(1);
    AtomicReference<Studies> line = new AtomicReference<>();
    List<Study> left = new CopyOnWriteArrayList<>();
    try (Studies studies =
        new Studies(
            study -> {
              if (study.isOver()) {
                left.addAll(requireNonNull(line.get()).all());
                over.countDown();
              }
            })) {
      line.set(studies);
      Study only = studies.add("only", false, progress -> {});
      assertThat(over.await(20, TimeUnit.SECONDS)).isTrue();
      assertThat(only.stage()).isEqualTo(Study.Stage.DONE);
      assertThat(left).isEmpty();
    }
  }
}
