package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import org.junit.jupiter.api.Test;

class RoomTest {
  private final Room room = new Room("Chamber", 3);

  @Test
  void whatIsTakenIsNotFreeUntilItIsLeft() {
    room.take(2);
    assertThat(room.free()).isEqualTo(1);
    room.leave(1);
    assertThat(room.free()).isEqualTo(2);
    assertThat(room.used()).isEqualTo(1);
  }

  @Test
  void aSpaceThatIsNotThereCannotBeTaken() {
    room.take(2);
    assertThatIllegalStateException()
        .isThrownBy(() -> room.take(2))
        .withMessage("Chamber has no room for 2 trays more");
    assertThat(room.used()).isEqualTo(2);
  }

  @Test
  void noSpaceIsFreedTwice() {
    room.take(1);
    room.leave(1);
    assertThatIllegalStateException()
        .isThrownBy(() -> room.leave(1))
        .withMessage("1 trays leave Chamber, which holds 0");
  }
}
