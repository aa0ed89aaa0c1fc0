package propcap.report.chart;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.io.StringWriter;
import java.util.HashMap;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.apache.batik.svggen.SVGSyntax;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.DOMException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * A chart as an SVG element that stands in a page with others: it takes the width that it is given,
 * its ids are its own, and it says in words what it shows.
 */
public final class Svg {
  /** Width in the chart's own units, in which type is 12 high. */
  public static final int WIDTH = 680;

  private static final int SLIM_WIDTH = 480;

  private static final String NAMESPACE = SVGSyntax.SVG_NAMESPACE_URI;

  private Svg() {}

  /**
   * Draws a chart.
   *
   * @param id start of every id in it; another chart of the page must have another
   * @param height in the chart's own units, see {@link #WIDTH}
   * @param words what the chart shows, for those who do not see it
   */
  public static String of(JFreeChart chart, String id, int height, String words) {
    return of(chart, id, WIDTH, height, "", words);
  }

  /** The same for a chart that is whole on a phone, where the other is wider than the screen. */
  public static String slim(JFreeChart chart, String id, int height, String words) {
    return of(chart, id, SLIM_WIDTH, height, "slim", words);
  }

  private static String of(
      JFreeChart chart, String id, int width, int height, String look, String words) {
    try {
      Document document =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .getDOMImplementation()
              .createDocument(NAMESPACE, SVGSyntax.SVG_SVG_TAG, null);
      SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
      context.setComment(null);
      context.setPrecision(2);
      context.setIDGenerator(new Ids(id));
      SVGGraphics2D pen = new SVGGraphics2D(context, false);
      pen.setSVGCanvasSize(new Dimension(width, height));
      chart.draw(pen, new Rectangle2D.Double(0, 0, width, height));
      Element root = pen.getRoot();
      keepWidths(root, pen, ChartStyle.TEXT.getSize2D());
      tidy(root);
      describe(root, width, height, words);
      if (!look.isEmpty()) {
        root.setAttribute("class", look);
      }
      return text(root);
    } catch (ParserConfigurationException | TransformerException | DOMException e) {
      throw new IllegalStateException("the chart " + id + " could not be drawn", e);
    }
  }

  /** Fixes each text's width, since a reader's sans font may be wider than the one here. */
  private static void keepWidths(Element element, SVGGraphics2D pen, float inheritedSize) {
    String size = element.getAttribute("font-size");
    float points = size.isEmpty() ? inheritedSize : Float.parseFloat(size.replace("px", ""));
    if (element.getTagName().equals(SVGSyntax.SVG_TEXT_TAG)) {
      Font font = ChartStyle.TEXT.deriveFont(points);
      int width = pen.getFontMetrics(font).stringWidth(element.getTextContent());
      element.setAttribute("textLength", Integer.toString(width));
      element.setAttribute("lengthAdjust", "spacingAndGlyphs");
    }
    for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element child) {
        keepWidths(child, pen, points);
      }
    }
  }

  /** Takes out what clashes with another chart's, or says nothing. */
  private static void tidy(Element element) {
    element.removeAttribute("font-family");
    element.removeAttribute("xml:space");
    if (element.getTagName().equals(SVGSyntax.SVG_DEFS_TAG)) {
      element.removeAttribute("id");
    }
    Node node = element.getFirstChild();
    while (node != null) {
      Node next = node.getNextSibling();
      if (node instanceof Element child) {
        tidy(child);
        if (!child.hasChildNodes() && isContainer(child)) {
          element.removeChild(child);
        }
      } else if (node.getNodeType() == Node.COMMENT_NODE) {
        element.removeChild(node);
      }
      node = next;
    }
  }

  private static boolean isContainer(Element element) {
    return element.getTagName().equals(SVGSyntax.SVG_G_TAG)
        || element.getTagName().equals(SVGSyntax.SVG_DEFS_TAG);
  }

  private static void describe(Element root, int width, int height, String words) {
    root.removeAttribute("width");
    root.removeAttribute("height");
    root.setAttribute("viewBox", "0 0 " + width + " " + height);
    root.setAttribute("role", "img");
    root.setAttribute("aria-label", words);
    root.setAttribute("font-family", "Helvetica, Arial, Liberation Sans, sans-serif");
    Element title = root.getOwnerDocument().createElementNS(NAMESPACE, "title");
    title.setTextContent(words);
    root.insertBefore(title, root.getFirstChild());
  }

  private static String text(Element root) throws TransformerException {
    Transformer transformer = TransformerFactory.newInstance().newTransformer();
    transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
    StringWriter out = new StringWriter();
    transformer.transform(new DOMSource(root), new StreamResult(out));
    return out.toString();
  }

  /** Ids that count up from 1 for each kind of thing, after the chart's own prefix. */
  private static final class Ids extends SVGIDGenerator {
    private final String prefix;
    private final Map<String, Integer> last = new HashMap<>();

    Ids(String prefix) {
      this.prefix = prefix;
    }

    @Override
    public String generateID(String kind) {
      return prefix + "-" + kind + last.merge(kind, 1, Integer::sum);
    }
  }
}
