package propcap.report.review;

import java.util.List;
import propcap.farm.Season;
import propcap.report.kit.Csv;
import propcap.report.kit.Dates;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.review.Review;
import propcap.study.review.Review.Came;
import propcap.study.review.Review.Figure;
import propcap.study.review.Review.ForecastCheck;
import propcap.study.review.Review.Range;

/** The tables of a look back. */
final class ReviewTables {
  private ReviewTables() {}

  /** How often the ranges of each forecast held. */
  static Table<ForecastCheck> looks(Review review) {
    ReviewWords words = new ReviewWords(review);
    return new Table<ForecastCheck>("Forecast of", words::name)
        .number("Sowings", "not over then", l -> Words.count(l.sowings()))
        .cell(
            "Within their ranges",
            "sowings",
            l -> Cell.of(Words.count(l.inside())).strongIf(!l.isAsItShould()))
        .number("To be expected", "sowings", l -> Words.count(l.expected()))
        .number(
            "Usual",
            "in 95 springs of 100",
            l -> Words.count(l.low()) + " to " + Words.count(l.high()));
  }

  /** Each sowing that is over, beside the forecasts. */
  static Table<Came> sowings(Review review) {
    Season season = review.scenario().season();
    Table<Came> table =
        new Table<Came>("Sowing", c -> c.sowing().id(), c -> c.sowing().crop())
            .csv("sowing", c -> c.sowing().id())
            .csv("crop", c -> c.sowing().crop())
            .csv("plants-needed", c -> c.sowing().plantsNeeded())
            .csv("bed-by", c -> c.sowing().bedBy())
            .csv("came", Came::came)
            .csv("counted", c -> c.isCounted() ? "yes" : "")
            .number("Needed", "plants", c -> Words.count(c.sowing().plantsNeeded()))
            .cell(
                "Came on time",
                "plants",
                c ->
                    Cell.of(Words.count(c.came()), c.isCounted() ? "" : "likely")
                        .strongIf(c.came() < c.sowing().plantsNeeded()));
    List<ForecastCheck> looks = review.looks();
    int last = looks.size() - 1;
    for (int i = 0; i <= last; i++) {
      int look = i;
      String name = i == 0 ? "winter" : looks.get(i).day().toString();
      table
          .csv(name, c -> c.forecasts().get(look).mean())
          .csv(name + "-low", c -> c.forecasts().get(look).low())
          .csv(name + "-high", c -> c.forecasts().get(look).high());
      // On the page there is room for few: the first, the one in the middle and the last.
      if (i == 0 || i == last || i == (last + 1) / 2) {
        table.cell(
            i == 0 ? "Winter" : Dates.shortDay(looks.get(i).day(), season),
            "8 springs of 10",
            c -> range(c, c.forecasts().get(look)));
      }
    }
    return table;
  }

  private static Cell range(Came came, Range range) {
    boolean holds = came.came() >= range.low() && came.came() <= range.high();
    return Cell.of(
            Words.count(range.mean()),
            range.low() == range.high() ? "" : Words.range(range.low(), range.high()))
        .strongIf(!holds);
  }

  static Table<Figure> figures(Review review) {
    return new Table<Figure>("Crop", Figure::crop)
        .csv("crop", Figure::crop)
        .csv("figure", f -> Csv.word(f.figure()))
        .csv("trays", Figure::trays)
        .csv("assumed", Figure::assumed)
        .csv("seen", Figure::seen)
        .csv("standard-errors", Figure::off)
        .words("Number", f -> ReviewWords.name(f.figure()))
        .number("Trays", "in the log", f -> Words.count(f.trays()))
        .number("Assumed", "", f -> ReviewWords.amount(f, f.assumed()))
        .number("Seen", "", f -> ReviewWords.amount(f, f.seen()))
        .cell(
            "Off by",
            "standard errors",
            f ->
                Cell.of(Words.signedAmount(f.off()))
                    .strongIf(Math.abs(f.off()) > review.byChance()));
  }
}
