package propcap.report.kit;

import propcap.results.Answer;

/** An answer that is told on one page. */
public interface PagedAnswer extends Answer {
  /**
   * The page.
   *
   * @param version of this program, shown on it
   */
  AnswerPage page(String version);

  @Override
  default String html() {
    return page("").partsHtml();
  }
}
