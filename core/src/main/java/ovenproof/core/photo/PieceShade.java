package ovenproof.core.photo;

import static ovenproof.core.photo.PhotoMeasureCatalogue.*;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.BrowningIndex;
import ovenproof.core.colour.Ciede2000;
import ovenproof.core.colour.Lab;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;

/**
 * Shade and evenness of one piece, with all that is needed to say how sure they are. All colours
 * under D50.
 */
public final class PieceShade {

  private static final String NO_SCALE =
      "no scale in the frame: lengths are shares of the piece, not comparable between photographs";

  private final Outline outline;
  private final PhotoScale scale;
  private final ShadeMap map;
  private final PhotoMeasures.@Nullable Estimates here;
  private final PhotoMeasures.@Nullable Estimates outlineEffect;
  private final ColourTrust trust;
  private final ShadeSettings settings;
  private final double frameShare;
  private final long pixels;

  PieceShade(
      Outline outline,
      PhotoScale scale,
      ShadeMap map,
      PhotoMeasures.@Nullable Estimates here,
      PhotoMeasures.@Nullable Estimates outlineEffect,
      ColourTrust trust,
      ShadeSettings settings,
      double frameShare,
      long pixels) {
    this.outline = outline;
    this.scale = scale;
    this.map = map;
    this.here = here;
    this.outlineEffect = outlineEffect;
    this.trust = trust;
    this.settings = settings;
    this.frameShare = frameShare;
    this.pixels = pixels;
  }

  static PieceShade unmeasured(Outline outline, PhotoScale scale, ShadeMap map) {
    return new PieceShade(
        outline,
        scale,
        map,
        null,
        null,
        ColourTrust.uncalibrated("none"),
        ShadeSettings.withDefaults(),
        0,
        0);
  }

  public Outline outline() {
    return outline;
  }

  public PhotoScale scale() {
    return scale;
  }

  /** The colours by place, for pictures. */
  public ShadeMap map() {
    return map;
  }

  /** Blocks behind the evenness; 0 when nothing could be measured. */
  public int blocks() {
    return here == null ? 0 : here.blocks();
  }

  /** Pixels averaged. */
  public long pixels() {
    return pixels;
  }

  /** Mean colour; null when nothing could be measured. */
  public @Nullable Lab mean() {
    return here == null ? null : here.mean();
  }

  /**
   * Every measure of the catalogue, in its order; what cannot be had is missing with its reason.
   */
  public List<Measurement> measurements(Subject subject) {
    PhotoMeasures.Estimates e = here;
    PhotoMeasures.Estimates o = outlineEffect;
    if (e == null || o == null) {
      return ALL.stream()
          .map(m -> Measurement.missing(m, subject, "the outline is too small to measure"))
          .toList();
    }
    return new Sheet(subject, e, o).fill();
  }

  /** One measurement of the catalogue. */
  public Measurement measurement(MeasureDescription measure, Subject subject) {
    return measurements(subject).stream()
        .filter(m -> m.id().equals(measure.id()))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no photo measure " + measure.id()));
  }

  /** Fills one table of measurements; lives only while it is filled. */
  private final class Sheet {

    private final Subject subject;
    private final PhotoMeasures.Estimates e;
    private final PhotoMeasures.Estimates o;
    private final List<Measurement> out = new ArrayList<>();

    Sheet(Subject subject, PhotoMeasures.Estimates e, PhotoMeasures.Estimates o) {
      this.subject = subject;
      this.e = e;
      this.o = o;
    }

    List<Measurement> fill() {
      addMeans();
      addTarget();
      addEvenness();
      addShares();
      addContrast(RIM_DIFFERENCE, e.rimDifference(), o.rimDifference(), blockNoiseOfMean());
      addTilt(TILT_FRONT_BACK, e.tiltFrontBack(), o.tiltFrontBack());
      addTilt(TILT_LEFT_RIGHT, e.tiltLeftRight(), o.tiltLeftRight());
      addSpread(MOTTLE, e.mottle(), o.mottle());
      addBrowningIndex();
      addArea();
      return out;
    }

    private void addMeans() {
      out.add(mean(LIGHTNESS_MEAN, e.mean().lightness(), 1, 0, 0));
      out.add(mean(A_MEAN, e.mean().a(), 0, 1, 0));
      out.add(mean(B_MEAN, e.mean().b(), 0, 0, 1));
    }

    private void addTarget() {
      Lab target = settings.target();
      if (target == null) {
        missing(SHADE_DIFFERENCE, "no target shade");
        missing(LIGHTNESS_DIFFERENCE, "no target shade");
        return;
      }
      Lab m = e.mean();
      double difference = Ciede2000.between(m, target);
      double h = 0.01;
      double dl =
          (Ciede2000.between(Lab.d50(m.lightness() + h, m.a(), m.b()), target) - difference) / h;
      double da =
          (Ciede2000.between(Lab.d50(m.lightness(), m.a() + h, m.b()), target) - difference) / h;
      double db =
          (Ciede2000.between(Lab.d50(m.lightness(), m.a(), m.b() + h), target) - difference) / h;
      out.add(mean(SHADE_DIFFERENCE, difference, dl, da, db));
      out.add(mean(LIGHTNESS_DIFFERENCE, m.lightness() - target.lightness(), 1, 0, 0));
    }

    /** A function of the mean colour, by its sensitivities to L*, a* and b*. */
    private Measurement mean(
        MeasureDescription measure, double value, double dl, double da, double db) {
      List<Component> parts = new ArrayList<>();
      addShared(parts, "/L", dl * trust.lightness());
      addShared(parts, "/a", da * trust.a());
      addShared(parts, "/b", db * trust.b());
      double outlineU = dl * o.mean().lightness() + da * o.mean().a() + db * o.mean().b();
      double steep = Math.sqrt(dl * dl + da * da + db * db);
      double light = dl * trust.lightGradient() / Math.sqrt(12);
      double noise = steep * blockNoiseOfMean();
      parts.add(Component.run(Math.sqrt(outlineU * outlineU + light * light + noise * noise)));
      return Measurement.of(measure, subject, value).withComponents(parts);
    }

    private void addShared(List<Component> parts, String axis, double u) {
      if (u != 0) {
        parts.add(Component.shared(trust.source() + axis, u));
      }
    }

    private double blockNoiseOfMean() {
      return trust.blockNoise() / Math.sqrt(Math.max(1, e.blocks()));
    }

    private double gradientOverPiece() {
      return trust.lightGradient() * frameShare;
    }

    private void addEvenness() {
      addSpread(EVENNESS_SD, e.evennessSd(), o.evennessSd());
      addSpread(EVENNESS_RANGE, e.evennessRange(), o.evennessRange());
    }

    /** A spread cannot be told from noise below the spread of an even surface. */
    private void addSpread(MeasureDescription measure, double value, double outlineU) {
      double factor = measure == EVENNESS_RANGE ? 2 * 1.6449 : 1; // normal P95 − P5 in SDs
      double noise = trust.blockNoise() * factor;
      if (e.blocks() < 4) {
        missing(measure, "fewer than four blocks fit into the piece");
        return;
      }
      if (value < noise) {
        out.add(
            Measurement.below(measure, subject, noise)
                .withN(1)
                .withNote(note("not above the noise of the camera")));
        return;
      }
      // Noise adds in squares: v = √(true² + noise²); its whole effect is taken as uncertainty.
      double noiseU = value - Math.sqrt(value * value - noise * noise);
      double tilt = gradientOverPiece() * factor / Math.sqrt(12);
      double gradientU = Math.sqrt(value * value + tilt * tilt) - value;
      double run = Math.sqrt(sq(outlineU) + sq(noiseU) + sq(gradientU));
      out.add(withContrast(Measurement.of(measure, subject, value), value, run));
    }

    private void addContrast(
        MeasureDescription measure, double value, double outlineU, double otherU) {
      if (e.blocks() < 4) {
        missing(measure, "fewer than four blocks fit into the piece");
        return;
      }
      double run = Math.sqrt(sq(outlineU) + sq(otherU));
      out.add(withContrast(Measurement.of(measure, subject, value), value, run));
    }

    /** A tilt is from edge to edge: where the edges lie is uncertain on both sides. */
    private void addTilt(MeasureDescription measure, double value, double outlineU) {
      double side = Math.min(outline.box().width(), outline.box().height());
      double edges =
          2 * PhotoMeasures.OUTLINE_MILLIMETRES * scale.pixelsPerMillimetre() / Math.max(1, side);
      addContrast(
          measure, value, outlineU, Math.hypot(gradientOverPiece(), value * Math.min(1, edges)));
    }

    private Measurement withContrast(Measurement measurement, double value, double run) {
      List<Component> parts = new ArrayList<>();
      addShared(parts, "/contrast", value * trust.contrastShare());
      parts.add(Component.run(run));
      return measurement.withComponents(parts).withNote(note(null));
    }

    private void addShares() {
      PhotoMeasures.Shares s = e.shares();
      PhotoMeasures.Shares u = o.shares();
      List<MeasureDescription> measures =
          List.of(
              SHARE_NEAR_TARGET, SHARE_DARK, SHARE_PALE, LARGEST_DARK_PATCH, LARGEST_PALE_PATCH);
      for (int i = 0; i < measures.size(); i++) {
        if (s == null || u == null) {
          missing(measures.get(i), "no target shade");
        } else {
          addShare(measures.get(i), i, s.values().get(i), u.values().get(i));
        }
      }
    }

    private void addShare(MeasureDescription measure, int index, double share, double outlineU) {
      // The camera shifts all of L*: the share is counted again with the limits moved by u.
      double shift = shareSensitivity(index) * trust.lightness();
      List<Component> parts = new ArrayList<>();
      addShared(parts, "/L", 100 * shift);
      parts.add(Component.run(100 * Math.abs(outlineU)));
      out.add(
          Measurement.of(measure, subject, 100 * share).withComponents(parts).withNote(note(null)));
    }

    /** Change of a share per L*, as if the lightness of the area were normal with the found SD. */
    private double shareSensitivity(int index) {
      Lab target = settings.target();
      if (target == null) {
        return 0;
      }
      double sd = Math.max(e.evennessSd(), Math.max(trust.blockNoise(), trust.lightness()));
      double d = e.mean().lightness() - target.lightness();
      double near = density(settings.nearLightness() - d, sd);
      double far = density(-settings.nearLightness() - d, sd);
      double dark = density(-settings.beyondLightness() - d, sd);
      double pale = density(settings.beyondLightness() - d, sd);
      return switch (index) {
        case 0 -> far - near;
        case 1, 3 -> -dark;
        default -> pale;
      };
    }

    private static double density(double at, double sd) {
      return Math.exp(-at * at / (2 * sd * sd)) / (sd * Math.sqrt(2 * Math.PI));
    }

    private void addBrowningIndex() {
      Lab m = e.mean();
      double value = BrowningIndex.of(m);
      if (!Double.isFinite(value)) {
        missing(BROWNING_INDEX, "the formula has no value for this colour");
        return;
      }
      double h = 0.01;
      double dl = (BrowningIndex.of(Lab.d50(m.lightness() + h, m.a(), m.b())) - value) / h;
      double da = (BrowningIndex.of(Lab.d50(m.lightness(), m.a() + h, m.b())) - value) / h;
      double db = (BrowningIndex.of(Lab.d50(m.lightness(), m.a(), m.b() + h)) - value) / h;
      out.add(
          mean(BROWNING_INDEX, value, dl, da, db)
              .withNote("not monotone: burnt reads less than golden; never scored alone"));
    }

    private void addArea() {
      if (!scale.isPhysical()) {
        missing(PIECE_AREA, "no scale in the frame");
        return;
      }
      double perCentimetre = 10 * scale.pixelsPerMillimetre();
      double area = outline.area() / (perCentimetre * perCentimetre);
      double edge = 0.05 * Math.sqrt(Math.PI * area * 4); // outline of a disc, 0.5 mm off
      out.add(
          Measurement.of(PIECE_AREA, subject, area)
              .withComponents(List.of(Component.run(Math.hypot(edge, 0.02 * area)))));
    }

    private void missing(MeasureDescription measure, String why) {
      out.add(Measurement.missing(measure, subject, why));
    }

    private @Nullable String note(@Nullable String text) {
      if (scale.isPhysical()) {
        return text;
      }
      return text == null ? NO_SCALE : text + "; " + NO_SCALE;
    }

    private static double sq(double value) {
      return value * value;
    }
  }
}
