package propcap.report.kit;

import java.util.List;
import propcap.study.statistics.Difference;

/** The page of an answer to a question, as text and charts that its template only has to set. */
public record AnswerPage(
    String scenario,
    String question,
    List<Fact> facts,
    String version,
    List<Part> parts,
    List<Term> reading) {

  /** What words of the page mean. */
  public record Term(String words, String meaning) {}

  public static final Term SPRING =
      new Term(
          "A spring",
          "is one season tried with its own weather and luck. All that is compared on this page was"
              + " tried on the same springs, so that what differs is the change and not the luck."
              + " The same files and the same random start always give the same page.");

  public static final Term PLUS_MINUS =
      new Term(
          "± after a difference",
          "is half its interval: the error that comes from trying only so many springs. An"
              + " interval that spans 0 tells neither a gain nor a loss, and no such word is said of"
              + " it here. It says nothing of whether the crop list, the plan and the weather record"
              + " are right.");

  public static final Term FEW_SPRINGS =
      new Term(
          "In 6 springs",
          "and no ± stands where fewer than "
              + Difference.TOLD_FROM
              + " springs differ at all: so few do not tell what the difference comes to, for one"
              + " rare spring that was not tried may outweigh them.");

  public static final Term MONEY =
      new Term(
          "Amounts of money",
          "are shown rounded half up to whole units of the currency. The JSON file has the means"
              + " with every digit, and what was given as it was given.");

  public static final Term EIGHT_OF_TEN =
      new Term(
          "8 springs of 10",
          "lie within the two numbers that follow these words, or within a chart’s band; one spring"
              + " of ten lies below, and one above.");

  /** Its parts, for a page that shows them beside other things. */
  public String partsHtml() {
    return Templates.withoutLooseErrors(Templates.fill("parts.jte", this));
  }

  /** A page as one HTML file that needs no other. */
  public String html() {
    // A ± at a line's end would part a number from its error.
    return Templates.withoutLooseErrors(Templates.fill("answer.jte", this));
  }
}
