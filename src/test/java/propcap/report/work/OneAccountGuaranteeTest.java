package propcap.report.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.farm.Scenario;
import propcap.farm.TrayTask;
import propcap.study.work.WorkCalendar;

/** The same as {@link OneAccountTest} on many farms. */
@Tag("guarantees")
class OneAccountGuaranteeTest {
  private static final int FARMS = 1_500;
  private static final int SEASONS = 6;

  @Test
  void allTellingsAgreeOnManyFarms() throws InterruptedException {
    List<String> misfits = new ArrayList<>();
    int limited = 0;
    int waiting = 0;
    for (long seed = 10_000; seed < 10_000 + FARMS; seed++) {
      Scenario farm = OneAccountTest.farm(seed);
      WorkCalendar calendar = OneAccountTest.calendar(farm, SEASONS);
      for (String misfit : OneAccountTest.misfits(calendar)) {
        misfits.add("seed " + seed + ": " + misfit);
      }
      limited += farm.labour().isLimited() ? 1 : 0;
      waiting +=
          calendar.tasks(TrayTask.SOW).stream()
                  .anyMatch(t -> t.planned() != null && t.planned().later() > 0)
              ? 1
              : 0;
    }
    Tried.row(
        "guarantees",
        "`calendar`: trays, days and hours are the same on the terminal, week and month sheets, in"
            + " csv, json, ics and labels, and those of the forecast; no day has more work than"
            + " hours",
        "%,d made-up farms, %,d of them with too few hours, %,d with sowings that wait; %d springs"
            .formatted(FARMS, limited, waiting, SEASONS),
        misfits.size() + " misfits");
    assertThat(misfits).isEmpty();
  }
}
