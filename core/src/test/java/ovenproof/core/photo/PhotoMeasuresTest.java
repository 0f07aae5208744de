package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.core.colour.Ciede2000;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.Srgb;
import ovenproof.core.colour.White;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;

class PhotoMeasuresTest {

  private static final PhotoScale FIVE_PER_MM = new PhotoScale(5, PhotoScale.Origin.DECLARED);
  private static final ColourTrust TRUST =
      new ColourTrust("camera:test", 0.5, 0.4, 0.6, 0.02, 0, 0);
  private static final PixelBox SLICE = new PixelBox(40, 30, 500, 450); // 100 mm × 90 mm
  private static final Lab GOLDEN = Lab.d50(65, 10, 33);

  private final PhotoMeasures measures =
      PhotoMeasures.with(ShadeSettings.withDefaults().withTarget(GOLDEN));

  @Test
  void anEvenPieceHasTheColourOfItsPixels() {
    Srgb pixel = GOLDEN.toSrgb();
    Lab exact = pixel.toLab(White.D50);
    PieceShade shade = measure(paint((x, y) -> pixel));
    assertThat(Ciede2000.between(shade.mean(), exact)).isLessThan(0.001);
    assertThat(value(shade, PhotoMeasureCatalogue.SHARE_NEAR_TARGET)).isEqualTo(100);
    assertThat(value(shade, PhotoMeasureCatalogue.SHARE_DARK)).isZero();
    assertThat(value(shade, PhotoMeasureCatalogue.RIM_DIFFERENCE)).isCloseTo(0, within(1e-4));
    assertThat(value(shade, PhotoMeasureCatalogue.SHADE_DIFFERENCE))
        .isCloseTo(Ciede2000.between(exact, GOLDEN), within(0.001));
    // 100 mm × 90 mm
    assertThat(value(shade, PhotoMeasureCatalogue.PIECE_AREA)).isCloseTo(90, within(1e-9));
  }

  @Test
  void everyMeasureOfTheCatalogueIsAnsweredOnceWithItsUnit() {
    List<Measurement> all = measure(paint((x, y) -> GOLDEN.toSrgb())).measurements(Subject.NONE);
    assertThat(all).extracting(Measurement::id).doesNotHaveDuplicates();
    assertThat(all)
        .extracting(Measurement::id)
        .containsExactlyInAnyOrderElementsOf(
            PhotoMeasureCatalogue.ALL.stream().map(MeasureDescription::id).toList());
    assertThat(all).allSatisfy(m -> assertThat(m.unit()).isSameAs(m.unit().contractUnit()));
  }

  /** A plane of 12 L* from back to front is a tilt of 12 and no mottle. */
  @Test
  void aSlopeIsTiltAndNotMottle() {
    Picture picture = paint((x, y) -> grey(50 + 12.0 * (y - 30) / 450));
    PieceShade shade = measure(picture);
    assertThat(value(shade, PhotoMeasureCatalogue.TILT_FRONT_BACK)).isCloseTo(12, within(0.15));
    assertThat(value(shade, PhotoMeasureCatalogue.TILT_LEFT_RIGHT)).isCloseTo(0, within(0.05));
    PieceShade turned =
        measure(
            PhotoMeasures.with(ShadeSettings.withDefaults().withFront(ShadeSettings.Front.TOP)),
            picture);
    assertThat(value(turned, PhotoMeasureCatalogue.TILT_FRONT_BACK)).isCloseTo(-12, within(0.15));
    // SD of a uniform spread of 12 less the 2 mm margins: 12 × 86/90 / √12
    assertThat(value(shade, PhotoMeasureCatalogue.EVENNESS_SD))
        .isCloseTo(12 * 86 / 90.0 / Math.sqrt(12), within(0.1));
  }

  @Test
  void aDarkCornerIsCountedWithItsShareAndItsPatch() {
    // Lower right quarter darker by 20; the area measured is 96 mm × 86 mm, centred.
    Picture picture = paint((x, y) -> grey(x >= 290 && y >= 255 ? 45 : 65));
    PieceShade shade = measure(picture);
    assertThat(value(shade, PhotoMeasureCatalogue.SHARE_DARK)).isCloseTo(25, within(1.0));
    assertThat(value(shade, PhotoMeasureCatalogue.LARGEST_DARK_PATCH)).isCloseTo(25, within(1.0));
    assertThat(value(shade, PhotoMeasureCatalogue.SHARE_PALE)).isZero();
    assertThat(value(shade, PhotoMeasureCatalogue.SHARE_NEAR_TARGET)).isCloseTo(75, within(1.5));
    assertThat(value(shade, PhotoMeasureCatalogue.EVENNESS_RANGE)).isCloseTo(20, within(0.3));
  }

  @Test
  void twoPatchesApartAreNotOne() {
    Picture picture =
        paint((x, y) -> grey((x < 150 || x >= 440) && y < 200 ? 80 : 65)); // both about 9 %
    PieceShade shade = measure(picture);
    double share = value(shade, PhotoMeasureCatalogue.SHARE_PALE);
    assertThat(value(shade, PhotoMeasureCatalogue.LARGEST_PALE_PATCH))
        .isBetween(0.4 * share, 0.6 * share);
  }

  @Test
  void aDarkRimIsNegative() {
    // 7 mm from the edge: the 2 mm margin and the 5 mm rim
    Picture picture =
        paint(
            (x, y) -> {
              int d = Math.min(Math.min(x - 40, 539 - x), Math.min(y - 30, 479 - y));
              return grey(d < 35 ? 50 : 65);
            });
    assertThat(value(measure(picture), PhotoMeasureCatalogue.RIM_DIFFERENCE))
        .isCloseTo(-15, within(0.3));
  }

  /**
   * At a noise of 4 L* per pixel the range of pixels is 13 wider than that of the piece; the range
   * of blocks of 10 × 10 pixels is not.
   */
  @Test
  void noiseOfPixelsIsNotUnevenness() {
    SplittableRandom random = new SplittableRandom(5);
    Picture even = paint((x, y) -> grey(60 + 4 * random.nextGaussian()));
    assertThat(value(measure(even), PhotoMeasureCatalogue.EVENNESS_RANGE)).isLessThan(1.7);
    ColourTrust noisy = TRUST.withBlockNoise(0.6);
    Measurement sd =
        measures
            .measure(even, Outline.of(SLICE), PixelColours.uncorrected(), noisy, FIVE_PER_MM)
            .measurement(PhotoMeasureCatalogue.EVENNESS_SD, Subject.NONE);
    assertThat(sd.censored()).isEqualTo(Censoring.BELOW);
    assertThat(sd.high()).isEqualTo(0.6);
  }

  @Test
  void twiceThePixelsOfTheSamePieceGiveTheSameEvenness() {
    BiFunction<Double, Double, Srgb> bread =
        (u, v) -> grey(60 + 6 * Math.sin(9 * u) * Math.cos(7 * v) + 3 * u);
    PieceShade small = piece(300, 5, bread);
    PieceShade large = piece(900, 15, bread);
    for (MeasureDescription m :
        List.of(
            PhotoMeasureCatalogue.EVENNESS_SD,
            PhotoMeasureCatalogue.EVENNESS_RANGE,
            PhotoMeasureCatalogue.RIM_DIFFERENCE,
            PhotoMeasureCatalogue.MOTTLE)) {
      assertThat(value(large, m)).as(m.id()).isCloseTo(value(small, m), within(0.25));
    }
  }

  private PieceShade piece(int side, double perMm, BiFunction<Double, Double, Srgb> bread) {
    int[] pixels = new int[side * side];
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] = bread.apply(i % side / (double) side, (double) (i / side) / side).packed();
    }
    return measures.measure(
        new Picture(side, side, pixels),
        Outline.of(new PixelBox(0, 0, side, side)),
        PixelColours.uncorrected(),
        TRUST,
        new PhotoScale(perMm, PhotoScale.Origin.DECLARED));
  }

  @Test
  void withoutScaleTheNoteSaysSoAndTheAreaIsMissing() {
    PieceShade shade =
        measures.measure(
            paint((x, y) -> grey(40 + 0.05 * x)),
            Outline.of(SLICE),
            PixelColours.uncorrected(),
            TRUST,
            null);
    assertThat(shade.measurement(PhotoMeasureCatalogue.EVENNESS_SD, Subject.NONE).note())
        .contains("no scale");
    assertThat(shade.measurement(PhotoMeasureCatalogue.PIECE_AREA, Subject.NONE).isMissing())
        .isTrue();
  }

  @Test
  void withoutTargetTheSharesAreMissingWithTheReason() {
    PieceShade shade =
        measure(PhotoMeasures.with(ShadeSettings.withDefaults()), paint((x, y) -> grey(50)));
    Measurement share = shade.measurement(PhotoMeasureCatalogue.SHARE_DARK, Subject.NONE);
    assertThat(share.isMissing()).isTrue();
    assertThat(share.note()).isEqualTo("no target shade");
  }

  @Test
  void theCameraIsASharedSourceAndTheSignFollowsTheSide() {
    Measurement darker =
        measure(paint((x, y) -> grey(50)))
            .measurement(PhotoMeasureCatalogue.SHADE_DIFFERENCE, Subject.NONE);
    Measurement lighter =
        measure(paint((x, y) -> grey(85)))
            .measurement(PhotoMeasureCatalogue.SHADE_DIFFERENCE, Subject.NONE);
    assertThat(shared(darker)).isNegative();
    assertThat(shared(lighter)).isPositive();
    Measurement mean =
        measure(paint((x, y) -> grey(50)))
            .measurement(PhotoMeasureCatalogue.LIGHTNESS_MEAN, Subject.NONE);
    assertThat(shared(mean)).isEqualTo(0.5);
  }

  private static double shared(Measurement measurement) {
    return measurement.components().stream()
        .filter(c -> c.source().equals("camera:test/L"))
        .findFirst()
        .orElseThrow()
        .u();
  }

  @ParameterizedTest
  @CsvSource({"1,1", "3,3", "2,200"})
  void aSliverIsMeasuredOrSaidToBeTooSmallButNeverFails(int width, int height) {
    PieceShade shade =
        measures.measure(
            paint((x, y) -> grey(50)),
            Outline.of(new PixelBox(100, 100, width, height)),
            PixelColours.uncorrected(),
            TRUST,
            FIVE_PER_MM);
    assertThat(shade.measurements(Subject.NONE)).hasSize(PhotoMeasureCatalogue.ALL.size());
  }

  private PieceShade measure(Picture picture) {
    return measure(measures, picture);
  }

  private static PieceShade measure(PhotoMeasures with, Picture picture) {
    return with.measure(picture, Outline.of(SLICE), PixelColours.uncorrected(), TRUST, FIVE_PER_MM);
  }

  private static double value(PieceShade shade, MeasureDescription measure) {
    Measurement found = shade.measurement(measure, Subject.NONE);
    if (found.value() == null && found.high() != null) {
      return found.high();
    }
    return found.value();
  }

  private static Picture paint(BiFunction<Integer, Integer, Srgb> colour) {
    int width = 600;
    int height = 520;
    int[] pixels = new int[width * height];
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] = colour.apply(i % width, i / width).packed();
    }
    return new Picture(width, height, pixels);
  }

  private static Srgb grey(double lightness) {
    return Lab.d50(lightness, 0, 0).toSrgb();
  }
}
