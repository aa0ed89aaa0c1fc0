package propcap.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;

/** The pages' templates, compiled with the program. */
final class Templates {
  private static final TemplateEngine ENGINE =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Templates.class.getClassLoader(), "propcap.report.pages");

  private Templates() {}

  /** A page as one HTML file that needs no other. */
  static String fill(String template, Object page) {
    StringOutput out = new StringOutput();
    ENGINE.render(template, page, out);
    return out.toString();
  }

  /** A piece that takes nothing to fill in. */
  static String fill(String template) {
    StringOutput out = new StringOutput();
    ENGINE.render(template, Map.of(), out);
    return out.toString();
  }
}
