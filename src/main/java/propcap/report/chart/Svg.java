package propcap.report.chart;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.io.StringWriter;
import java.util.regex.Pattern;
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
import org.jfree.chart.block.RectangleConstraint;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.Range;
import org.w3c.dom.DOMException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * A chart as SVG that stands in a page with others: its ids are its own, and it says in words what
 * it shows. It is drawn twice, for a wide column and for a narrow one such as a phone's, for type
 * that shrinks with its chart can't be read there; the page's style shows one of them.
 */
public final class Svg {
  /** Width in the chart's own units, in which type is 12 high. */
  public static final int WIDTH = 680;

  /** The same of what is shown where there is little room: about a phone's width in its pixels. */
  public static final int SLIM_WIDTH = 360;

  private static final String NAMESPACE = SVGSyntax.SVG_NAMESPACE_URI;

  /** Of a path of straight lines. */
  private static final Pattern CORNER = Pattern.compile("[ML]\\s*(-?[\\d.]+)");

  private Svg() {}

  /**
   * Draws a chart, wide and slim.
   *
   * @param id start of every id in it; another chart of the page must have another
   * @param height in the chart's own units, see {@link #WIDTH}; a slim one is higher by what its
   *     key takes more
   * @param words what the chart shows, for those who do not see it
   */
  public static String of(JFreeChart chart, String id, int height, String words) {
    try {
      return drawn(chart, id, WIDTH, height, "", words)
          + drawn(chart, id + "-slim", SLIM_WIDTH, height + higherKey(chart), "slim", words);
    } catch (ParserConfigurationException | TransformerException | DOMException e) {
      throw new IllegalStateException("the chart " + id + " could not be drawn", e);
    }
  }

  private static String drawn(
      JFreeChart chart, String id, int width, int height, String look, String words)
      throws ParserConfigurationException, TransformerException {
    SVGGraphics2D pen = pen(id);
    pen.setSVGCanvasSize(new Dimension(width, height));
    chart.draw(pen, new Rectangle2D.Double(0, 0, width, height));
    Element root = pen.getRoot();
    keepWidths(root, pen, ChartStyle.TEXT.getSize2D(), width);
    tidy(root);
    describe(root, width, height, words);
    if (!look.isEmpty()) {
      root.setAttribute("class", look);
    }
    return text(root);
  }

  private static SVGGraphics2D pen(String id) throws ParserConfigurationException {
    Document document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .getDOMImplementation()
            .createDocument(NAMESPACE, SVGSyntax.SVG_SVG_TAG, null);
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
    context.setComment(null);
    context.setPrecision(2);
    context.setIDGenerator(new Ids(id));
    return new SVGGraphics2D(context, false);
  }

  /** By how much the key is higher where it has little room, and stands in more rows. */
  private static int higherKey(JFreeChart chart) throws ParserConfigurationException {
    LegendTitle key = chart.getLegend();
    if (key == null) {
      return 0;
    }
    SVGGraphics2D pen = pen("key");
    RectangleInsets padding = chart.getPadding();
    double wide = key.arrange(pen, atMost(padding.trimWidth(WIDTH))).getHeight();
    double slim = key.arrange(pen, atMost(padding.trimWidth(SLIM_WIDTH))).getHeight();
    return (int) Math.ceil(slim - wide);
  }

  private static RectangleConstraint atMost(double width) {
    return new RectangleConstraint(new Range(0, width), new Range(0, Short.MAX_VALUE));
  }

  /**
   * Fixes each text's width, since a reader's sans font may be wider than the one here; one that
   * would be cut at the right, as a name beside a last mark of a slim chart, begins earlier.
   *
   * @param right where the chart ends; nothing is known of it within what is turned
   */
  private static void keepWidths(
      Element element, SVGGraphics2D pen, float inheritedSize, double right) {
    String size = element.getAttribute("font-size");
    float points = size.isEmpty() ? inheritedSize : Float.parseFloat(size.replace("px", ""));
    double end = element.hasAttribute("transform") ? Double.POSITIVE_INFINITY : right;
    if (element.getTagName().equals(SVGSyntax.SVG_TEXT_TAG)) {
      Font font = ChartStyle.TEXT.deriveFont(points);
      int width = pen.getFontMetrics(font).stringWidth(element.getTextContent());
      element.setAttribute("textLength", Integer.toString(width));
      element.setAttribute("lengthAdjust", "spacingAndGlyphs");
      double free = Math.min(end, clippedAt(element));
      if (Double.parseDouble(element.getAttribute("x")) + width > free) {
        element.setAttribute("x", Integer.toString((int) Math.max(0, free - width)));
      }
    }
    for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element child) {
        keepWidths(child, pen, points, end);
      }
    }
  }

  /** Where an element is cut off at the right, as what stands in a plot is at the plot's edge. */
  private static double clippedAt(Element element) {
    String clip = element.getAttribute("clip-path");
    Element root = element;
    while (root.getParentNode() instanceof Element parent) {
      root = parent;
    }
    NodeList clips = root.getElementsByTagName("clipPath");
    for (int c = 0; c < clips.getLength(); c++) {
      Element path = (Element) clips.item(c);
      if (clip.equals("url(#" + path.getAttribute("id") + ")")) {
        return CORNER
            .matcher(((Element) path.getFirstChild()).getAttribute("d"))
            .results()
            .mapToDouble(corner -> Double.parseDouble(corner.group(1)))
            .max()
            .orElse(Double.POSITIVE_INFINITY);
      }
    }
    return Double.POSITIVE_INFINITY;
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

  /** Ids that count up from 1 after the chart's own prefix: short, for all in it points to some. */
  private static final class Ids extends SVGIDGenerator {
    private final String prefix;
    private int last;

    Ids(String prefix) {
      this.prefix = prefix;
    }

    @Override
    public String generateID(String kind) {
      last++;
      return prefix + "-" + last;
    }
  }
}
