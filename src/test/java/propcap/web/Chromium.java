package propcap.web;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The system's own Chromium without a window, and what a grower does in it. */
public final class Chromium implements AutoCloseable {
  /** Of a whole forecast: what the page shows of it does not hang on their number. */
  static final int SPRINGS = 120;

  private static final Duration PATIENCE = Duration.ofSeconds(60);

  /** Half a second, Selenium's own, is most of what a test takes. */
  private static final Duration BETWEEN_LOOKS = Duration.ofMillis(20);

  private final ChromeDriver driver;

  private Chromium(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts it, or skips the test with a word. */
  public static Chromium start(int width, int height) {
    Optional<File> browser = program("chromium");
    Optional<File> driver = program("chromedriver");
    assumeTrue(
        browser.isPresent() && driver.isPresent(),
        "chromium or chromium-driver is not installed: the page is not opened in a browser");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(browser.orElseThrow());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.WARNING);
    options.setCapability("goog:loggingPrefs", logs);
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(driver.orElseThrow()).build();
    Chromium page = new Chromium(new ChromeDriver(service, options));
    page.resize(width, height);
    return page;
  }

  /** A window without a head can be no narrower than 500 pixels; a phone that is emulated can. */
  public void resize(int width, int height) {
    boolean isPhone = width < 500;
    var unused =
        driver.executeCdpCommand(
            "Emulation.setDeviceMetricsOverride",
            Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", isPhone));
  }

  private static Optional<File> program(String name) {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator, -1))
        .map(dir -> new File(dir, name))
        .filter(File::canExecute)
        .findFirst();
  }

  public ChromeDriver driver() {
    return driver;
  }

  void open(String link) {
    driver.get(link);
    find("#tabs [aria-selected='true']");
  }

  /** Waits for what a page that redraws itself shows at last. */
  <T> T await(Function<ChromeDriver, T> what) {
    return new WebDriverWait(driver, PATIENCE, BETWEEN_LOOKS)
        .ignoring(StaleElementReferenceException.class, NoSuchElementException.class)
        .until(d -> what.apply(driver));
  }

  WebElement find(String css) {
    return await(d -> d.findElement(By.cssSelector(css)));
  }

  void click(String css) {
    var unused =
        await(
            d -> {
              WebElement element = d.findElement(By.cssSelector(css));
              // Else it may end up under the strip at a phone's bottom edge.
              d.executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
              element.click();
              return true;
            });
  }

  void tab(String name) {
    click("[data-tab='" + name + "']");
  }

  /** Types in the place of what a field holds, and goes on to the next. */
  void type(String css, String text) {
    var unused =
        await(
            d -> {
              WebElement field = d.findElement(By.cssSelector(css));
              field.click();
              field.sendKeys(Keys.chord(Keys.CONTROL, "a"), text, Keys.TAB);
              return true;
            });
  }

  /** Takes one of the choices of a field, by its value. */
  void choose(String css, String value) {
    click(css + " option[value='" + value + "']");
  }

  /** How wide the page is, pixels; wider than its window where it must be scrolled sideways. */
  int width() {
    Object wide = driver.executeScript("return document.documentElement.scrollWidth");
    return ((Number) Objects.requireNonNull(wide)).intValue();
  }

  /** Waits until a text is there. */
  void awaitText(String css, String text) {
    var unused = await(d -> d.findElement(By.cssSelector(css)).getText().contains(text));
  }

  /** Waits until a field holds a value. */
  void awaitValue(String css, String value) {
    var unused =
        await(d -> value.equals(d.findElement(By.cssSelector(css)).getDomProperty("value")));
  }

  String text(String css) {
    return await(d -> d.findElement(By.cssSelector(css)).getText());
  }

  /** All plants on time, once all springs are tried. */
  double wholeForecast() {
    return wholeForecastOtherThan(Double.NaN);
  }

  /** The same after a change that must make it another. */
  double wholeForecastOtherThan(double before) {
    return await(
        d -> {
          WebElement shown = d.findElement(By.id("on-time"));
          boolean isStale = !d.findElements(By.cssSelector("#outlook-body.stale")).isEmpty();
          Double mean = Double.valueOf(String.valueOf(shown.getDomAttribute("data-mean")));
          boolean isWhole =
              String.valueOf(SPRINGS).equals(shown.getDomAttribute("data-seasons")) && !isStale;
          return isWhole && mean != before ? mean : null;
        });
  }

  /** Requests do not come through any more, or do so again. */
  void offline(boolean isOffline) {
    var unused = driver.executeCdpCommand("Network.enable", Map.of());
    unused =
        driver.executeCdpCommand(
            "Network.emulateNetworkConditions",
            Map.of(
                "offline", isOffline,
                "latency", 0,
                "downloadThroughput", -1,
                "uploadThroughput", -1));
  }

  /** Closes every tab but this one. */
  void closeOthers() {
    String here = driver.getWindowHandle();
    for (String tab : driver.getWindowHandles()) {
      if (!tab.equals(here)) {
        driver.switchTo().window(tab).close();
      }
    }
    driver.switchTo().window(here);
  }

  /** Pastes a text into a field as a spreadsheet's cells come. */
  void paste(String css, String text) {
    var unused =
        await(
            d -> {
              d.executeScript(
                  "const d = new DataTransfer(); d.setData('text/plain', arguments[1]);"
                      + "arguments[0].dispatchEvent(new ClipboardEvent('paste', {clipboardData: d, bubbles: true, cancelable: true}));",
                  d.findElement(By.cssSelector(css)),
                  text);
              return true;
            });
  }

  /** What the page complained of. */
  String complaints() {
    return String.join(
        "\n",
        driver.manage().logs().get(LogType.BROWSER).getAll().stream()
            .map(Object::toString)
            .toList());
  }

  void picture(Path file) throws IOException {
    Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
  }

  @Override
  public void close() {
    driver.quit();
  }
}
