package propcap.files.scenario;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.files.text.Fields;
import propcap.files.text.Node;

/**
 * Money as growers write it: {@code 1.10}, {@code 1.10 EUR} or {@code 150/year}. Plain decimals,
 * kept exact, and all amounts of a scenario in one currency.
 */
final class Amounts {
  /** How often an amount is due. */
  enum Due {
    ONCE("", "an amount such as 1.10"),
    EACH_YEAR("year", "an amount a year, such as 150/year"),
    EACH_DAY("day", "an amount a day, such as 3.60/day");

    private final String unit;
    private final String right;

    Due(String unit, String right) {
      this.unit = unit;
      this.right = right;
    }
  }

  /** A currency's letters or sign, in a pattern. */
  static final String CURRENCY = "[\\p{L}\\p{Sc}]{1,8}";

  private static final Pattern AMOUNT =
      Pattern.compile(
          "\\s*([-+\u2212]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+))\\s*("
              + CURRENCY
              + ")?\\s*(?:/\\s*([a-z]+))?\\s*",
          Pattern.UNICODE_CHARACTER_CLASS);

  /** No amount that a grower means is longer, or larger. */
  private static final int MOST_CHARACTERS = 60;

  private static final BigDecimal MOST = new BigDecimal("1000000000");

  private final Node.@Nullable Text currency;
  private final Layers layers;

  /**
   * Amounts of a scenario.
   *
   * @param currency that all of them are in; null: any, for none is known
   */
  Amounts(Node.@Nullable Text currency, Layers layers) {
    this.currency = currency;
    this.layers = layers;
  }

  /** The amount that a key holds; 0 where it is missing or wrong, which is reported. */
  BigDecimal read(Fields fields, String key, Due due) {
    return fields.value(key).map(value -> read(fields, key, value, due)).orElse(BigDecimal.ZERO);
  }

  BigDecimal read(Fields fields, String key, Due due, BigDecimal otherwise) {
    return fields.has(key) ? read(fields, key, due) : otherwise;
  }

  private BigDecimal read(Fields fields, String key, Node value, Due due) {
    String text = value instanceof Node.Text written ? written.text() : "";
    Matcher amount = AMOUNT.matcher(text);
    if (text.length() > MOST_CHARACTERS || !amount.matches()) {
      fields.wrong(key, value, due.right);
      return BigDecimal.ZERO;
    }
    String unit = amount.group(3) == null ? "" : amount.group(3);
    if (!unit.equals(due.unit)) {
      fields.wrong(key, value, (unit.isEmpty() ? "a unit is missing: " : "") + due.right);
      return BigDecimal.ZERO;
    }
    BigDecimal number = new BigDecimal(amount.group(1).replace('\u2212', '-'));
    if (number.signum() < 0 || number.compareTo(MOST) > 0) {
      fields.wrong(key, value, "0 to " + MOST);
      return BigDecimal.ZERO;
    }
    if (amount.group(2) != null) {
      isInCurrency(fields, key, value, amount.group(2));
    }
    return number;
  }

  /** A scenario that changes the currency alone is at fault itself, not the amounts it changes. */
  private void isInCurrency(Fields fields, String key, Node value, String written) {
    if (currency == null || currency.text().strip().equals(written)) {
      return;
    }
    if (layers.isLater(currency.spot(), value.spot())) {
      fields.fault(
          currency.spot(),
          "currency is " + currency.kind() + ", where amounts are in " + written,
          "amounts in the same currency");
    } else {
      fields.wrong(key, value, "an amount in " + currency.text().strip());
    }
  }
}
