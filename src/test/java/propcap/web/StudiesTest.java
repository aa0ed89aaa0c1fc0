package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
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
}
