package ovenproof.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Calibration;
import ovenproof.campaign.Campaign.Info;
import ovenproof.campaign.Campaign.Instrument;
import ovenproof.campaign.Campaign.LeftOut;
import ovenproof.campaign.Campaign.Lot;
import ovenproof.campaign.Campaign.NotRun;
import ovenproof.campaign.Campaign.PlannedRun;
import ovenproof.campaign.Campaign.Price;
import ovenproof.campaign.Campaign.Product;
import ovenproof.campaign.Campaign.SettingCard;
import ovenproof.campaign.Campaign.Specimen;

/**
 * The document of what is compared, with what, in which order: all of a campaign but its entries.
 */
public record Field(
    Info info,
    List<Product> products,
    List<LeftOut> leftOut,
    List<Specimen> specimens,
    List<Price> prices,
    List<SettingCard> settingCards,
    List<PlannedRun> plan,
    List<NotRun> notRun,
    List<Lot> lots,
    List<Instrument> instruments,
    List<Calibration> calibrations) {

  public Field {
    products = List.copyOf(products);
    leftOut = List.copyOf(leftOut);
    specimens = List.copyOf(specimens);
    prices = List.copyOf(prices);
    settingCards = List.copyOf(settingCards);
    plan = List.copyOf(plan);
    notRun = List.copyOf(notRun);
    lots = List.copyOf(lots);
    instruments = List.copyOf(instruments);
    calibrations = List.copyOf(calibrations);
  }

  /** An empty field. */
  public static Field of(Info info) {
    return new Field(
        info, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
        List.of(), List.of(), List.of());
  }

  static Field of(Campaign c) {
    return new Field(
        c.info(),
        c.products(),
        c.leftOut(),
        c.specimens(),
        c.prices(),
        c.settingCards(),
        c.plan(),
        c.notRun(),
        c.lots(),
        c.instruments(),
        c.calibrations());
  }

  public Field withInfo(Info changed) {
    return new Field(
        changed,
        products,
        leftOut,
        specimens,
        prices,
        settingCards,
        plan,
        notRun,
        lots,
        instruments,
        calibrations);
  }

  public Field withProducts(List<Product> changed) {
    return new Field(
        info,
        changed,
        leftOut,
        specimens,
        prices,
        settingCards,
        plan,
        notRun,
        lots,
        instruments,
        calibrations);
  }

  public Field withLeftOut(List<LeftOut> changed) {
    return new Field(
        info,
        products,
        changed,
        specimens,
        prices,
        settingCards,
        plan,
        notRun,
        lots,
        instruments,
        calibrations);
  }

  public Field withSpecimens(List<Specimen> changed) {
    return new Field(
        info,
        products,
        leftOut,
        changed,
        prices,
        settingCards,
        plan,
        notRun,
        lots,
        instruments,
        calibrations);
  }

  public Field withPrices(List<Price> changed) {
    return new Field(
        info,
        products,
        leftOut,
        specimens,
        changed,
        settingCards,
        plan,
        notRun,
        lots,
        instruments,
        calibrations);
  }

  public Field withSettingCards(List<SettingCard> changed) {
    return new Field(
        info,
        products,
        leftOut,
        specimens,
        prices,
        changed,
        plan,
        notRun,
        lots,
        instruments,
        calibrations);
  }

  public Field withPlan(List<PlannedRun> changed) {
    return new Field(
        info,
        products,
        leftOut,
        specimens,
        prices,
        settingCards,
        changed,
        notRun,
        lots,
        instruments,
        calibrations);
  }

  public Field withNotRun(List<NotRun> changed) {
    return new Field(
        info,
        products,
        leftOut,
        specimens,
        prices,
        settingCards,
        plan,
        changed,
        lots,
        instruments,
        calibrations);
  }

  /** A list with one more. */
  public static <T> List<T> plus(List<T> list, T one) {
    List<T> more = new ArrayList<>(list);
    more.add(one);
    return more;
  }

  /** A list in which some are changed. */
  public static <T> List<T> changed(List<T> list, UnaryOperator<T> change) {
    return list.stream().map(change).toList();
  }
}
