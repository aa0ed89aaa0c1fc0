package propcap.report.kit;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;
import java.util.regex.Pattern;

/** The pages' templates, compiled with the program. */
public final class Templates {
  private static final Pattern LOOSE_PERCENT = Pattern.compile("(?<=\\d) %");

  private static final TemplateEngine ENGINE =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Templates.class.getClassLoader(), "propcap.report.pages");

  private Templates() {}

  /** A page as one HTML file that needs no other. */
  public static String fill(String template, Object page) {
    StringOutput out = new StringOutput();
    ENGINE.render(template, page, out);
    return out.toString();
  }

  /** A piece that takes nothing to fill in. */
  public static String fill(String template) {
    StringOutput out = new StringOutput();
    ENGINE.render(template, Map.of(), out);
    return out.toString();
  }

  /** A line's end would part a number from its error, or from its %. */
  public static String withoutLooseErrors(String html) {
    return LOOSE_PERCENT.matcher(html.replace(" ± ", "\u00a0±\u00a0")).replaceAll("\u00a0%");
  }
}
