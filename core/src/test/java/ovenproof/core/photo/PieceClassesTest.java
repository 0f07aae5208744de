package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import ovenproof.core.colour.Lab;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.PieceClasses.Judged;
import ovenproof.core.photo.PieceClasses.ShadeClass;

class PieceClassesTest {

  private static final List<ShadeClass> THREE =
      List.of(new ShadeClass("light", 65), new ShadeClass("medium", 50), new ShadeClass("dark", 0));

  @Test
  void everyPieceIsInOneClassAndTheSharesSumToOne() {
    List<PieceShade> fries = new ArrayList<>();
    for (double l : new double[] {70, 66, 60, 55, 52, 51, 49, 40, 30, 20}) {
      fries.add(fry(l, l));
    }
    List<PieceClasses.Fraction> fractions = PieceClasses.of(THREE, Judged.MEDIAN).fractions(fries);
    assertThat(fractions).extracting(PieceClasses.Fraction::count).containsExactly(2, 4, 4);
    assertThat(fractions.stream().mapToDouble(PieceClasses.Fraction::share).sum())
        .isCloseTo(1, within(1e-12));
    assertThat(fractions.stream().mapToDouble(PieceClasses.Fraction::areaShare).sum())
        .isCloseTo(1, within(1e-12));
    assertThat(fractions).allSatisfy(f -> assertThat(f.interval().contains(f.share())).isTrue());
  }

  /** Wilson for 4 of 10 at 95 %: 0.1682 to 0.6873, by the formula of 1927 (from memory). */
  @Test
  void theIntervalOfAShareIsWilsons() {
    List<PieceShade> fries = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      fries.add(fry(i < 4 ? 40 : 70, i < 4 ? 40 : 70));
    }
    PieceClasses.Fraction dark = PieceClasses.of(THREE, Judged.MEDIAN).fractions(fries).get(2);
    assertThat(dark.interval().low()).isCloseTo(0.1682, within(5e-5));
    assertThat(dark.interval().high()).isCloseTo(0.6873, within(5e-5));
  }

  @Test
  void aFryBurntAtOneEndIsDarkByItsDarkestFifthOnly() {
    PieceShade mottled = fry(68, 35);
    assertThat(
            PieceClasses.of(THREE, Judged.MEDIAN)
                .classOf(PieceClasses.of(THREE, Judged.MEDIAN).lightness(mottled))
                .name())
        .isEqualTo("light");
    PieceClasses worst = PieceClasses.of(THREE, Judged.DARKEST_FIFTH);
    assertThat(worst.classOf(worst.lightness(mottled)).name()).isEqualTo("dark");
  }

  @Test
  void aLightnessOnTheLimitBelongsToThePalerClass() {
    PieceClasses classes = PieceClasses.of(THREE, Judged.MEDIAN);
    assertThat(classes.classOf(65).name()).isEqualTo("light");
    assertThat(classes.classOf(Math.nextDown(65.0)).name()).isEqualTo("medium");
    assertThat(classes.classOf(-1).name()).isEqualTo("dark");
  }

  @Test
  void limitsThatRiseAreRefused() {
    assertThatThrownBy(
            () ->
                PieceClasses.of(
                    List.of(new ShadeClass("a", 10), new ShadeClass("b", 20)), Judged.MEDIAN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theCameraCancelsBetweenTwoFacesOfOneSession() {
    Measurement top = mean(60, "camera:one");
    Measurement bottom = mean(52, "camera:one");
    Measurement difference =
        FacePairs.difference(FacePairs.TOP_MINUS_UNDERSIDE, Subject.NONE, top, bottom);
    assertThat(difference.value()).isEqualTo(8);
    assertThat(difference.uncertainty()).isCloseTo(0.3 * Math.sqrt(2), within(1e-12));
    Measurement elsewhere =
        FacePairs.difference(
            FacePairs.TOP_MINUS_UNDERSIDE, Subject.NONE, top, mean(52, "camera:two"));
    assertThat(elsewhere.uncertainty()).isCloseTo(Math.sqrt(2 * 0.09 + 2 * 1.44), within(1e-12));
  }

  @Test
  void aPieceTurnedSidewaysSwapsLeftAndRight() {
    assertThat(FacePairs.fromAbove(0.2, 0.7, FacePairs.Turned.SIDEWAYS))
        .isEqualTo(new PixelPoint(0.8, 0.7));
    assertThat(FacePairs.fromAbove(0.2, 0.75, FacePairs.Turned.LENGTHWAYS))
        .isEqualTo(new PixelPoint(0.2, 0.25));
  }

  private static Measurement mean(double lightness, String camera) {
    return Measurement.of(PhotoMeasureCatalogue.LIGHTNESS_MEAN, Subject.NONE, lightness)
        .withComponents(List.of(Component.shared(camera + "/L", 1.2), Component.run(0.3)));
  }

  /** Twelve by sixty pixels, the last quarter in the second lightness. */
  private static PieceShade fry(double lightness, double end) {
    int[] pixels = new int[12 * 60];
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] = Lab.d50(i / 12 < 45 ? lightness : end, 5, 20).toSrgb().packed();
    }
    return PhotoMeasures.with(ShadeSettings.withDefaults())
        .measure(
            new Picture(12, 60, pixels),
            Outline.of(new PixelBox(0, 0, 12, 60)),
            PixelColours.uncorrected(),
            ColourTrust.uncalibrated("t"),
            null);
  }
}
