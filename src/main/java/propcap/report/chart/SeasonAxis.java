package propcap.report.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import propcap.farm.Season;
import propcap.report.kit.Dates;

/**
 * The days of a season from left to right, in day numbers, marked at the first of each month; a
 * short season is marked each Monday or each day. It knows no hours and so no time zone.
 */
public final class SeasonAxis extends NumberAxis {
  private static final int MONTHS_FROM_DAYS = 63;
  private static final int WEEKS_FROM_DAYS = 14;

  private final transient Season season;

  public SeasonAxis(Season season) {
    super(null);
    this.season = season;
    ChartStyle.axis(this);
    setRange(0, season.days());
  }

  @Override
  @SuppressWarnings("rawtypes")
  public List refreshTicks(Graphics2D pen, AxisState state, Rectangle2D area, RectangleEdge edge) {
    List<NumberTick> ticks = new ArrayList<>();
    for (int day = 0; day < season.days(); day++) {
      LocalDate date = season.date(day);
      if (isMarked(date)) {
        ticks.add(
            new NumberTick(
                day,
                label(date, ticks.isEmpty()),
                TextAnchor.TOP_CENTER,
                TextAnchor.TOP_CENTER,
                0));
      }
    }
    return ticks;
  }

  /** In a season of two years, the first mark and the new year's have their year. */
  private String label(LocalDate date, boolean isFirst) {
    boolean isOfTwoYears = season.start().getYear() < season.end().getYear();
    String day = Dates.shortDayOfAnyYear(date);
    return isOfTwoYears && (isFirst || date.getDayOfYear() == 1) ? day + " " + date.getYear() : day;
  }

  private boolean isMarked(LocalDate date) {
    if (season.days() >= MONTHS_FROM_DAYS) {
      return date.getDayOfMonth() == 1;
    }
    return season.days() < WEEKS_FROM_DAYS || date.getDayOfWeek() == DayOfWeek.MONDAY;
  }
}
