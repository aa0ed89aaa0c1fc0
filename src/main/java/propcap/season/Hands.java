package propcap.season;

import propcap.farm.Work;

/**
 * People's hours while a season runs. Work may be begun while anything is left of the day; what it
 * takes beyond that is owed, and is the first thing that the next working day goes into. So no day
 * has more than its hours, and a tray that takes more than a day is done all the same.
 */
final class Hands {
  private final WorkRates rates;

  /** By day and work, thousandths of a minute; what is above 35,000 hours is left out. */
  private final int[] spent;

  private final long[] owed = new long[WorkRates.WORKS];
  private int today;
  private long left;

  Hands(WorkRates rates) {
    this.rates = rates;
    spent = new int[rates.days() * WorkRates.WORKS];
  }

  /** A working day begins: what is owed comes first. */
  void begin(int day) {
    today = day;
    left = rates.ofDay(day);
    for (int work = 0; work < owed.length; work++) {
      long paid = Math.min(owed[work], left);
      owed[work] -= paid;
      use(work, paid);
    }
  }

  /** Whether a piece of work can be begun; what takes no time always can. */
  boolean canBegin(Work work) {
    return left > 0 || rates.each(work) == 0;
  }

  /** Does so many trays or plants, as the work is counted. */
  void spend(Work work, int units) {
    long takes = rates.each(work) * units;
    long now = Math.min(takes, left);
    use(work.ordinal(), now);
    owed[work.ordinal()] += takes - now;
  }

  private void use(int work, long time) {
    left -= time;
    int at = today * WorkRates.WORKS + work;
    spent[at] = (int) Math.min(Integer.MAX_VALUE, spent[at] + time);
  }

  /** By day and work, thousandths of a minute. */
  int[] spent() {
    return spent;
  }
}
