package ovenproof.publish.site;

import static j2html.TagCreator.dd;
import static j2html.TagCreator.dl;
import static j2html.TagCreator.dt;

import j2html.tags.DomContent;
import j2html.tags.specialized.DlTag;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.ToleratedQuantity;
import ovenproof.core.quantity.Unit;
import ovenproof.method.Combine;
import ovenproof.method.Gate;
import ovenproof.method.Method;
import ovenproof.method.TestPlan;
import ovenproof.method.TestPlan.StopRule;
import ovenproof.publish.edition.GateWords;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Figures;

/** A method's choices in words, quantities in both unit systems. */
final class MethodWords {

  private MethodWords() {}

  /** How a test was done, as a list of terms. */
  static DomContent how(TestPlan test) {
    DlTag list = dl().withClass("how-list");
    add(list, "Cooked", sample(test.sample()));
    add(list, "Set", setting(test.setting()));
    add(list, "Start", start(test));
    add(list, "Rack", test.rack());
    add(
        list,
        "Repeated",
        test.replicates() == 0
            ? "no runs: facts and rated facts of each product"
            : test.replicates()
                + (test.replicates() == 1 ? " run" : " runs")
                + " per product, "
                + test.batches()
                + (test.batches() == 1 ? " batch each" : " batches each, back to back"));
    add(list, "Meanwhile", actions(test));
    add(list, "Ends", stops(test.stops()));
    add(list, "Variants", variants(test));
    return list;
  }

  private static void add(DlTag list, String term, @Nullable String words) {
    if (words != null && !words.isBlank()) {
      list.with(dt(term), dd(words));
    }
  }

  private static @Nullable String sample(TestPlan.@Nullable Sample sample) {
    if (sample == null) {
      return null;
    }
    return Stream.of(
            sample.food() + (sample.pieces() > 0 ? ", " + sample.pieces() + " pieces a batch" : ""),
            tolerated("", sample.mass()),
            tolerated("thickness ", sample.thickness()),
            tolerated("from ", sample.startTemperature()),
            sample.prepare())
        .filter(Objects::nonNull)
        .collect(Collectors.joining("; "));
  }

  private static @Nullable String tolerated(String word, @Nullable ToleratedQuantity quantity) {
    if (quantity == null) {
      return null;
    }
    Dual dual = Figures.dual(quantity.nominal(), Rounding.HALF_UP);
    String tolerance = quantity.tolerance().value() == 0 ? "" : " ± " + quantity.tolerance();
    String second = dual.second() == null ? "" : " (" + dual.second() + ")";
    return word + dual.first() + tolerance + second;
  }

  private static @Nullable String setting(Method.@Nullable Setting setting) {
    if (setting == null) {
      return null;
    }
    return Stream.of(
            rule(setting.rule()),
            setting.mode(),
            setting.dial() == null
                ? null
                : "dial " + Figures.dual(setting.dial(), Rounding.HALF_UP),
            setting.note())
        .filter(Objects::nonNull)
        .collect(Collectors.joining("; "));
  }

  private static String rule(Method.SettingRule rule) {
    return switch (rule) {
      case AS_USER_WOULD -> "as a user would, the dial at the recipe’s value";
      case MATCHED_CAVITY -> "the dial at which the middle of the cavity has the wanted mean";
      case MAKER_INSTRUCTION -> "as the maker’s instructions say";
      case BY_TRIAL -> "found by trials declared beforehand, the same number for every product";
    };
  }

  private static String start(TestPlan test) {
    String state = test.start().name().toLowerCase(Locale.ROOT);
    return test.preheat() == null ? state : state + ": " + test.preheat();
  }

  private static @Nullable String actions(TestPlan test) {
    return test.actions().isEmpty()
        ? null
        : test.actions().stream()
            .map(
                a ->
                    a.action()
                        + " at "
                        + Figures.text(a.at(), Rounding.HALF_UP)
                        + ", within "
                        + Figures.text(a.within(), Rounding.HALF_UP))
            .collect(Collectors.joining("; "));
  }

  private static @Nullable String stops(List<StopRule> stops) {
    return stops.isEmpty()
        ? null
        : stops.stream().map(MethodWords::stop).collect(Collectors.joining("; or "));
  }

  private static String stop(StopRule stop) {
    String at = stop.at() == null ? "" : " " + limit(stop);
    String words =
        switch (stop.when()) {
          case ENDS_BY_ITSELF -> "when the appliance ends by itself";
          case TIME -> "after" + at;
          case CORE -> "when the coldest core has reached" + at;
          case SHADE -> "when the wanted shade is reached";
          case MASS_LOSS -> "at a mass loss of" + at;
          case CAP -> "at the cap of" + at + ": not done";
        };
    return stop.note() == null ? words : words + " (" + stop.note() + ")";
  }

  private static String limit(StopRule stop) {
    Quantity at = Objects.requireNonNull(stop.at());
    Quantity shown =
        at.unit().dimension() == ovenproof.core.quantity.Dimension.TIME ? at.to(Unit.SECOND) : at;
    Rounding rounding = stop.when() == StopRule.When.CORE ? Rounding.FLOOR_UP : Rounding.HALF_UP;
    return Figures.dual(shown, rounding).toString();
  }

  private static @Nullable String variants(TestPlan test) {
    if (test.variants().size() < 2) {
      return null;
    }
    List<String> said = new ArrayList<>();
    for (TestPlan.Variant variant : test.variants()) {
      String role =
          variant.role() == TestPlan.Variant.Role.SCORED ? "scored" : "compared, not scored";
      said.add(variant.name() + " (" + role + ")");
    }
    return String.join("; ", said);
  }

  static String combine(Combine combine) {
    return switch (combine) {
      case ARITHMETIC -> "weighted mean: a strength offsets a weakness";
      case GEOMETRIC -> "weighted geometric mean: one 0 makes 0";
      case FLOOR -> "the lowest counts";
    };
  }

  /**
   * A limit outside the weighing, in a sentence; floors and ceilings are rounded to their safe
   * side.
   */
  static String gate(Gate gate) {
    String limit = GateWords.limit(gate);
    String what =
        switch (gate.kind()) {
          case VETO -> "no score";
          case CEILING ->
              "at most "
                  + Figures.text(Objects.requireNonNullElse(gate.ceiling(), 0.0), Unit.POINTS);
          case FLAG -> "said beside the score";
        };
    String scope = gate.scope() == Gate.Scope.TOTAL ? " of the whole" : " of the test";
    String safety =
        gate.reason() == Gate.Reason.SAFETY
            ? " A matter of safety: passed only when the evidence carries it at 95 %."
            : "";
    return gate.name() + ": " + limit + ", else " + what + scope + "." + safety;
  }
}
