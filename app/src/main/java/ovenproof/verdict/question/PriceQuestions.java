package ovenproof.verdict.question;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.core.scoring.PriceFront;

/** What a price says beside a score. Scores never depend on prices. */
final class PriceQuestions {
  private final AskedVerdict asked;

  PriceQuestions(AskedVerdict asked) {
    this.asked = asked;
  }

  /** Value for money at the latest dated prices. */
  QuestionAnswer value() {
    Map<String, Campaign.Price> latest = pricesAt(LocalDate.MAX);
    List<List<Object>> rows = new ArrayList<>();
    for (PriceFront.Value value : PriceFront.of(asked.result(), amounts(latest))) {
      Campaign.Price price = latest.get(value.product());
      rows.add(
          List.of(
              asked.label(value.product()),
              asked.published(value.product()),
              price == null ? "no price" : money(price.amount(), price.currency()),
              price == null ? "" : price.on().toString(),
              place(value),
              Double.isNaN(value.tiesAt())
                  ? ""
                  : money(value.tiesAt(), asked.campaign().info().currency())
                      + " ("
                      + asked.label(value.beatenBy())
                      + ")",
              value.cheapestOfTier() == PriceFront.TierPrice.CHEAPEST ? "yes" : ""));
    }
    return new QuestionAnswer(
        "value",
        "Value for money",
        List.of("product", "score", "price", "on", "front", "would tie at", "cheapest of its tier"),
        rows,
        List.of(
            "On the front: nobody scores as much for less. Within a tier the difference in score is"
                + " not shown to be real: there the price decides."));
  }

  /**
   * What prices alone moved: value for money at the prices of a day and at the latest ones. Scores
   * do not depend on prices.
   */
  QuestionAnswer prices(LocalDate since) {
    Map<String, Campaign.Price> before = pricesAt(since);
    Map<String, Campaign.Price> latest = pricesAt(LocalDate.MAX);
    List<PriceFront.Value> then = PriceFront.of(asked.result(), amounts(before));
    List<PriceFront.Value> now = PriceFront.of(asked.result(), amounts(latest));
    List<List<Object>> rows = new ArrayList<>();
    int moved = 0;
    for (int i = 0; i < now.size(); i++) {
      String id = now.get(i).product();
      String front = AnswerWords.fromTo(place(then.get(i)), place(now.get(i)));
      moved += front.contains("→") ? 1 : 0;
      rows.add(
          List.of(
              asked.label(id),
              asked.published(id),
              dated(before.get(id)),
              dated(latest.get(id)),
              front,
              AnswerWords.fromTo(cheapest(then.get(i)), cheapest(now.get(i)))));
    }
    return new QuestionAnswer(
        "prices",
        "What prices alone moved since " + since,
        List.of("product", "score", "price then", "price now", "front", "cheapest of its tier"),
        rows,
        List.of(
            (moved == 0 ? "No place on the front moved." : moved + " moved on or off the front.")
                + " Scores, tiers and ranks do not depend on prices: they stay as published."));
  }

  /** The latest price of each product up to a day. */
  private Map<String, Campaign.Price> pricesAt(LocalDate day) {
    Map<String, Campaign.Price> latest = new LinkedHashMap<>();
    for (Campaign.Price price : asked.campaign().prices()) {
      if (!price.on().isAfter(day)) {
        latest.merge(price.product(), price, (a, b) -> b.on().isBefore(a.on()) ? a : b);
      }
    }
    return latest;
  }

  private Map<String, Double> amounts(Map<String, Campaign.Price> prices) {
    Map<String, Double> amounts = new LinkedHashMap<>();
    prices.values().stream()
        .filter(p -> p.currency().equals(asked.campaign().info().currency()))
        .forEach(p -> amounts.put(p.product(), p.amount()));
    return amounts;
  }

  private static String dated(Campaign.@Nullable Price price) {
    return price == null
        ? "no price"
        : money(price.amount(), price.currency()) + " on " + price.on();
  }

  private static String cheapest(PriceFront.Value value) {
    return switch (value.cheapestOfTier()) {
      case CHEAPEST -> "yes";
      case NOT_CHEAPEST -> "no";
      case UNRANKED -> "–";
    };
  }

  private static String place(PriceFront.Value value) {
    return switch (value.place()) {
      case ON_THE_FRONT -> "on the front";
      case DEARER_THAN_AS_GOOD -> "dearer than one as good";
      case NOT_COMPARED -> "not compared";
    };
  }

  private static String money(double amount, String currency) {
    return BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_UP) + " " + currency;
  }
}
