package ovenproof.method;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.FacePairs.Turned;
import ovenproof.core.photo.PieceClasses.Judged;
import ovenproof.core.photo.PieceClasses.ShadeClass;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.ToleratedQuantity;

/**
 * A test of the method: one food or task, cooked the same way in every product.
 *
 * <p>A test with {@code replicates} 0 has no runs; its criteria read facts and rated facts.
 *
 * @param parts weight in the total, in whole parts
 * @param variants at least one; exactly one is scored
 * @param batches loads per run, back to back
 * @param rack words such as "middle"; null when it does not matter
 * @param stops stop rules in order; whichever fires first is recorded
 * @param measures what is measured of each run
 * @param combine how the criteria make the test's score
 * @param criteria the value tree below this test
 */
public record TestPlan(
    String id,
    String name,
    @Nullable String why,
    int parts,
    List<Variant> variants,
    @Nullable Sample sample,
    Method.@Nullable Setting setting,
    StartState start,
    @Nullable String preheat,
    @Nullable String rack,
    int batches,
    int replicates,
    List<TimedAction> actions,
    List<StopRule> stops,
    @Nullable PhotoPlan photos,
    List<PanelMark> marks,
    List<MeasureUse> measures,
    Combine combine,
    List<ValueNode> criteria,
    List<Gate> gates,
    List<String> cautions) {

  public TestPlan {
    variants = List.copyOf(variants);
    actions = List.copyOf(actions);
    stops = List.copyOf(stops);
    marks = List.copyOf(marks);
    measures = List.copyOf(measures);
    criteria = List.copyOf(criteria);
    gates = List.copyOf(gates);
    cautions = List.copyOf(cautions);
  }

  public Optional<MeasureUse> measure(String useId) {
    return measures.stream().filter(m -> m.id().equals(useId)).findFirst();
  }

  public Variant scoredVariant() {
    return variants.stream()
        .filter(v -> v.role() == Variant.Role.SCORED)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("test " + id + " has no scored variant"));
  }

  /** The cap, if the test has one: reaching it censors the run's time. */
  public Optional<StopRule> cap() {
    return stops.stream().filter(s -> s.when() == StopRule.When.CAP).findFirst();
  }

  /** A setting of the test; the first scored one counts, others are compared. */
  public record Variant(String id, String name, Role role, @Nullable String note) {
    /** Whether a variant counts. */
    public enum Role {
      SCORED,
      COMPARED
    }
  }

  /** What is cooked. Amounts per batch. */
  public record Sample(
      String food,
      int pieces,
      @Nullable ToleratedQuantity mass,
      @Nullable ToleratedQuantity thickness,
      @Nullable ToleratedQuantity startTemperature,
      @Nullable String prepare) {}

  /** State of the appliance when the food goes in or the test begins. */
  public enum StartState {
    COLD,
    HOT,
    PREHEATED
  }

  /** Something the operator does at a time after loading. */
  public record TimedAction(String action, Quantity at, Quantity within) {}

  /**
   * When a run ends.
   *
   * @param at the time, core temperature or mass loss; null for an end the appliance or the shade
   *     decides
   */
  public record StopRule(When when, @Nullable Quantity at, @Nullable String note) {
    /** What ends a run. */
    public enum When {
      ENDS_BY_ITSELF,
      TIME,
      CORE,
      SHADE,
      MASS_LOSS,
      /** The longest the desk waits; a run that gets here is not done. */
      CAP
    }
  }

  /**
   * Photographs of each batch.
   *
   * @param faces e.g. top, underside, cut, before
   * @param pieces expected number in a frame
   * @param target wanted shade, or null
   * @param targetFrom where the wanted shade is taken from
   * @param chartPitch from the middle of a patch of the chart to the next; null when no scale is
   *     known
   * @param turned over which edge pieces are turned for their underside; null when it is not said
   * @param area expected area of a piece, or null
   * @param classes classes of small pieces from palest to darkest; empty when there are none
   * @param judged what of a piece decides its class
   */
  public record PhotoPlan(
      List<String> faces,
      int pieces,
      @Nullable Shade target,
      TargetFrom targetFrom,
      @Nullable Quantity chartPitch,
      @Nullable Turned turned,
      @Nullable ToleratedQuantity area,
      List<ShadeClass> classes,
      Judged judged,
      @Nullable String note) {
    public PhotoPlan {
      faces = List.copyOf(faces);
      classes = List.copyOf(classes);
    }

    /** Whether shades are compared with a wanted one. */
    public boolean hasTarget() {
      return target != null || targetFrom == TargetFrom.SHADE_CARD;
    }

    /** Where the wanted shade is taken from. */
    public enum TargetFrom {
      /** The colour that the plan writes, if any. */
      VALUE,
      /** A card photographed in the same camera session, as face {@code shade-card}. */
      SHADE_CARD
    }
  }

  /** A CIE L*a*b* colour (D50). */
  public record Shade(double lightness, double a, double b) {}

  /**
   * A mark that tasters give.
   *
   * @param anchors physical anchors by point of the scale, lowest first
   */
  public record PanelMark(
      String id,
      String name,
      double lowest,
      double highest,
      MarkKind kind,
      List<Anchor> anchors,
      @Nullable String why) {
    public PanelMark {
      anchors = List.copyOf(anchors);
    }

    /** What a mark asks. */
    public enum MarkKind {
      INTENSITY,
      LIKING,
      JUST_ABOUT_RIGHT
    }

    /** What a point of the scale means, as a thing to taste or look at. */
    public record Anchor(double point, String means) {}
  }
}
