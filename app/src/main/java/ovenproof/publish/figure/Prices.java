package ovenproof.publish.figure;

import java.util.Currency;
import java.util.Locale;
import ovenproof.campaign.Campaign.Price;
import ovenproof.core.quantity.Rounding;

/** A price with its currency, as readers of English write it. */
public final class Prices {

  private Prices() {}

  /** {@code €289}, {@code €119.50}, {@code CHF 99}. */
  public static String text(Price price) {
    boolean whole = price.amount() == Math.rint(price.amount());
    String symbol = symbol(price.currency());
    String digits = Rounding.HALF_UP.text(price.amount(), whole ? 0 : 2);
    return symbol.length() > 1 ? symbol + "\u00a0" + digits : symbol + digits;
  }

  private static String symbol(String code) {
    return switch (code) {
      case "EUR" -> "€";
      case "USD" -> "$";
      case "GBP" -> "£";
      default -> known(code);
    };
  }

  private static String known(String code) {
    try {
      return Currency.getInstance(code).getCurrencyCode();
    } catch (IllegalArgumentException e) {
      return code.toUpperCase(Locale.ROOT);
    }
  }
}
