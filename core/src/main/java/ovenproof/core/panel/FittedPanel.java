package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The model that suits a table: balanced analysis of variance, restricted likelihood, or plain
 * means where nothing can be tested, with what a reader must know about the choice.
 *
 * @param data the observations that were fitted, perhaps averaged or without names
 * @param model null when nothing can be estimated but means
 * @param method in words
 * @param warnings in plain sentences
 */
record FittedPanel(
    Observations data, @Nullable ProductModel model, String method, List<String> warnings) {

  static FittedPanel fit(Observations data) {
    List<String> warnings = new ArrayList<>();
    if (data.isConstant()) {
      warnings.add("All marks are equal: nothing can be tested.");
      return new FittedPanel(data, null, "plain means", warnings);
    }
    if (data.product().size() < 2) {
      warnings.add("Only one product: there is nothing to compare it with.");
      return new FittedPanel(data, null, "plain means", warnings);
    }
    if (data.assessors() == 1) {
      warnings.add(
          "One assessor: the result speaks of this person only, not of what others would find.");
    }
    Optional<BalancedModel> balanced = BalancedModel.fit(data);
    if (balanced.isPresent()) {
      String method = "balanced analysis of variance, tested against the largest mean square";
      return new FittedPanel(data, balanced.get(), method, warnings);
    }
    return mixed(data, warnings);
  }

  private static FittedPanel mixed(Observations data, List<String> warnings) {
    if (data.assessor() != null && data.assessor().isNestedIn(data.product())) {
      warnings.add(
          "Every person rated one product only: differences between people are part of the"
              + " uncertainty, and products are compared as independent groups.");
      return unnamed(data.averagedPerAssessorAndProduct(), warnings);
    }
    if (!hasDegrees(data)) {
      return plain(data, warnings);
    }
    MixedModel model = MixedModel.fit(data);
    if (!model.isConnected()) {
      warnings.add(
          "Some products share no assessor with the others: people's levels cannot be taken out,"
              + " so products are compared as independent groups.");
      return unnamed(data, warnings);
    }
    for (String factor : model.inseparable()) {
      warnings.add(
          capitalised(factor)
              + " cannot be separated completely from product: what differs"
              + " between its levels may be counted as a difference of products.");
    }
    return new FittedPanel(data, model, "restricted likelihood with Kenward–Roger", warnings);
  }

  private static FittedPanel unnamed(Observations data, List<String> warnings) {
    Observations without = data.withoutAssessors();
    if (!hasDegrees(without)) {
      return plain(without, warnings);
    }
    return new FittedPanel(without, MixedModel.fit(without), "independent groups", warnings);
  }

  private static boolean hasDegrees(Observations data) {
    int blocks = data.blocks().values().stream().mapToInt(b -> b.size() - 1).sum();
    return data.n() - Math.max(1, data.assessors()) - (data.product().size() - 1) - blocks >= 1;
  }

  private static FittedPanel plain(Observations data, List<String> warnings) {
    warnings.add("Too few marks to tell products from scatter: plain means only.");
    return new FittedPanel(data, null, "plain means", warnings);
  }

  private static String capitalised(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  double[] means() {
    return model == null ? data.product().means(data.y()) : model.means();
  }

  /** NaN where there is no model. */
  double[] standardErrors() {
    if (model != null) {
      return model.standardErrors();
    }
    double[] none = new double[data.product().size()];
    Arrays.fill(none, Double.NaN);
    return none;
  }

  VarianceComponents components() {
    return model == null
        ? new VarianceComponents(Double.NaN, Double.NaN, Double.NaN, Double.NaN)
        : model.components();
  }
}
