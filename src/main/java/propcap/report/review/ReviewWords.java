package propcap.report.review;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.study.review.LogFigure;
import propcap.study.review.Review;
import propcap.study.review.Review.Figure;
import propcap.study.review.Review.ForecastCheck;

/** A look back in words. */
final class ReviewWords {
  /** So many figures are told one by one. */
  static final int MOST_FIGURES = 3;

  private static final int MOST_NAMED = 6;

  private final Review review;
  private final Season season;

  ReviewWords(Review review) {
    this.review = review;
    season = review.scenario().season();
  }

  /** Whether the forecasts held: the verdict first. */
  List<String> forecasts() {
    List<String> told = new ArrayList<>();
    List<ForecastCheck> looks = review.looks().stream().filter(l -> l.sowings() > 0).toList();
    if (looks.isEmpty()) {
      return List.of(
          "No sowing is over by "
              + Dates.day(review.scenario().today(), season)
              + ", so there is nothing yet to compare a forecast with.");
    }
    told.add(verdict(looks.get(0)));
    looks.forEach(look -> told.add(held(look)));
    return told;
  }

  /** Of one forecast alone: of several one would be astray by luck too often. */
  private static String verdict(ForecastCheck winter) {
    if (winter.isAsItShould()) {
      return "Winter's forecast held, as far as one spring can tell.";
    }
    return winter.inside() < winter.low()
        ? "Winter's forecast did not hold: what came lay outside of its ranges too often."
        : "Winter's forecast held too well: its ranges are wider than they need be.";
  }

  /** Such as {@code winter} or {@code 1 April}. */
  String name(ForecastCheck look) {
    return look.day().equals(season.start()) ? "winter" : Dates.day(look.day(), season);
  }

  /** How often the ranges of one forecast held. */
  String held(ForecastCheck look) {
    return "%s: %s of %s came within %s of 8 springs of 10; %s are usual."
        .formatted(
            Words.capital(name(look)),
            Words.count(look.inside()),
            Words.plural(look.sowings(), "sowing"),
            look.sowings() == 1 ? "its range" : "their ranges",
            Words.fromTo(look.low(), look.high()));
  }

  /** What is not over, and what is not certain. */
  List<String> leftOut() {
    List<String> told = new ArrayList<>();
    if (!review.notOver().isEmpty() && !review.sowings().isEmpty()) {
      told.add(
          "Left out, as not over yet: "
              + some(review.notOver().stream().map(Sowing::id).toList())
              + ".");
    }
    List<String> notCounted =
        review.sowings().stream().filter(c -> !c.isCounted()).map(c -> c.sowing().id()).toList();
    if (!notCounted.isEmpty()) {
      told.add(
          "Not counted to the end, so what came is what is likely by the log: "
              + some(notCounted)
              + ".");
    }
    return told;
  }

  private static String some(List<String> names) {
    int more = names.size() - MOST_NAMED;
    return more <= 1
        ? Words.list(names)
        : String.join(", ", names.subList(0, MOST_NAMED)) + " and " + more + " more";
  }

  /** Which numbers were wrong, the most wrong first. */
  List<String> figures() {
    List<String> told = new ArrayList<>();
    List<Figure> wrong = review.wrong();
    if (review.figures().isEmpty()) {
      told.add("The log says too little of any crop to hold its numbers against it.");
    } else if (Double.isInfinite(review.byChance())) {
      told.add(
          "Fewer than 19 springs do not tell whether a number of the crop list is off by more than"
              + " chance.");
    } else if (wrong.isEmpty()) {
      told.add(
          "No number of the crop list is off by more than chance explains; the farthest: "
              + figure(review.figures().get(0)));
    } else {
      told.add(
          wrong.size() == 1 ? "Off by more than chance:" : "Off by more than chance, worst first:");
      wrong.stream().limit(MOST_FIGURES).forEach(f -> told.add(figure(f)));
    }
    return told;
  }

  /** Such as {@code zinnia, cells with a seedling: 88 % assumed, 71 % seen (6.2 errors)}. */
  static String figure(Figure f) {
    return "%s, %s: %s assumed, %s seen (%s standard errors)"
        .formatted(
            f.crop(),
            name(f.figure()),
            amount(f, f.assumed()),
            amount(f, f.seen()),
            Words.amount(Math.abs(f.off())));
  }

  static String name(LogFigure figure) {
    return switch (figure) {
      case STAND -> "cells with a seedling";
      case IN_HEAT -> "days in the heat";
      case ON_TABLE -> "days on the table";
      case LOST_ON_TABLE -> "lost on the table";
      case LOST_OUTSIDE -> "lost outside";
    };
  }

  static String amount(Figure f, double number) {
    return f.figure().isDays() ? Words.amount(number) : Words.percent(Math.max(0, number));
  }

  /** What mends the numbers; nothing where none is wrong. */
  List<String> mending(String log, String scenario) {
    List<Figure> wrong = review.wrong().stream().limit(MOST_FIGURES).toList();
    boolean ofSeed =
        wrong.stream()
            .anyMatch(f -> f.figure() == LogFigure.STAND || f.figure() == LogFigure.IN_HEAT);
    List<String> told = new ArrayList<>();
    if (!wrong.isEmpty()) {
      told.add("To mend them: ./propcap fit stages " + log + " --scenario " + scenario);
    }
    if (ofSeed) {
      told.add("And for what happens in the heat a test: ./propcap fit germination COUNTS");
    }
    return told;
  }
}
