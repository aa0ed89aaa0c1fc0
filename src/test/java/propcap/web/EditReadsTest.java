package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.disk.FailingDisk;
import propcap.web.desk.Desk;
import propcap.web.request.RequestFields;

/** How often a change on the page goes to the disk. */
class EditReadsTest {
  private static final String EDITS =
      """
      {"edits": [
        {"do": "place", "name": "Chamber", "key": "spaces", "value": "9"},
        {"do": "crop", "name": "cabbage", "key": "cells", "value": "50"},
        {"do": "sowing", "row": 0, "keys": {"trays": "31"}}]}
      """;

  private final FailingDisk disk = FailingDisk.sound();
  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void aDesk() throws Exception {
    desk = new Desk(disk.at(Farm.in(folder)));
    var unused = State.of(desk.view(""));
  }

  /** The change, and what the page then shows of it. */
  private List<String> readsOfAnEdit() throws Exception {
    disk.reads().clear();
    Edits edits = new Edits(desk.folder(), RequestFields.of(EDITS).each("edits"));
    desk.change("", desk.version(), edits::write);
    assertThat(State.of(desk.view("")).toString()).contains("\"spaces\":\"9\"");
    return disk.reads().stream().filter(f -> !f.startsWith(".")).toList();
  }

  @Test
  void anEditOfThreeChangesReadsNoFileThatIsAsItWas() throws Exception {
    assertThat(readsOfAnEdit()).isEmpty();
  }

  @Test
  void filesThatOthersHaveChangedAreReadOnceEach() throws Exception {
    List<String> files = List.of("crops.yaml", "small.yaml", "sowings.csv", "weather.csv");
    for (String file : files) {
      Files.setLastModifiedTime(folder.resolve(file), FileTime.fromMillis(1));
    }
    assertThat(readsOfAnEdit()).containsExactlyInAnyOrderElementsOf(files);
  }
}
