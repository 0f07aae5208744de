package ovenproof.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Piece;
import ovenproof.core.measure.Measurement;
import ovenproof.core.photo.CavityMap;
import ovenproof.core.photo.CavityMap.Layout;
import ovenproof.core.photo.CavityMap.Observation;
import ovenproof.core.photo.CavityMap.Position;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.photo.SecondBatch;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/**
 * Where each product bakes paler and darker in one test, from what was measured of single pieces.
 *
 * @param face which face the pieces show; null when the method does not say
 * @param products in the order of the campaign; those without any located piece are left out
 * @param why what is missing when there is no product, in a sentence; else empty
 */
public record CavityStudy(@Nullable String face, List<OfProduct> products, String why) {
  private static final Set<String> LIGHTNESS =
      Set.of(
          PhotoMeasureCatalogue.LIGHTNESS_MEAN.id(),
          PhotoMeasureCatalogue.LIGHTNESS_DIFFERENCE.id());

  public CavityStudy {
    products = List.copyOf(products);
  }

  /**
   * One product.
   *
   * @param loads how many batches were measured
   * @param map position effects; never empty of positions
   * @param second about back-to-back batches; null when the test has one batch only
   */
  public record OfProduct(
      String product,
      int loads,
      int pieces,
      CavityMap.Result map,
      SecondBatch.@Nullable Result second) {}

  /** A piece with its place. */
  private record Located(
      String run, int batch, Position place, @Nullable String lot, Layout layout, double value) {}

  /** Studies one test; only counted runs speak. */
  public static CavityStudy of(Campaign campaign, Measured measured, TestPlan test) {
    Optional<MeasureUse> use = use(test);
    String face = use.map(u -> face(u, test)).orElse(null);
    if (use.isEmpty()) {
      return new CavityStudy(
          null,
          List.of(),
          "The method measures no lightness of single pieces in this test: lightness-mean of the"
              + " top would do.");
    }
    CavityPlaces places = CavityPlaces.of(campaign, test.id());
    Map<List<Object>, Piece> pieces = new HashMap<>();
    campaign.pieces().forEach(p -> pieces.put(List.of(p.run(), p.batch(), p.piece()), p));
    List<OfProduct> products = new ArrayList<>();
    for (Campaign.Product product : campaign.products()) {
      List<Located> located = new ArrayList<>();
      for (Measured.Value value : measured.counted(test.id(), use.get().id(), product.id())) {
        for (Measurement part : value.parts()) {
          located(campaign, places, pieces, face, part).ifPresent(located::add);
        }
      }
      study(product.id(), located).ifPresent(products::add);
    }
    String why =
        products.isEmpty()
            ? "No photographed piece has its place: \"position\" in pieces.csv says where each lay,"
                + " such as back-left or r1c2, and pieces need the same names there and on the"
                + " photograph."
            : "";
    return new CavityStudy(face, products, why);
  }

  private static String face(MeasureUse use, TestPlan test) {
    return use.face() != null ? use.face() : PhotoSetup.firstFace(test);
  }

  /** The use that speaks of most pieces: of the first face, of all batches. */
  private static Optional<MeasureUse> use(TestPlan test) {
    return test.measures().stream()
        .filter(u -> LIGHTNESS.contains(u.take()))
        .filter(u -> u.face() == null || u.face().equals(PhotoSetup.firstFace(test)))
        .min(Comparator.comparing(u -> u.batch() == null ? 0 : 1));
  }

  private static Optional<Located> located(
      Campaign campaign,
      CavityPlaces places,
      Map<List<Object>, Piece> pieces,
      @Nullable String face,
      Measurement part) {
    String run = part.subject().run();
    String name = part.subject().piece();
    Double value = part.value();
    int batch = Objects.requireNonNullElse(part.subject().batch(), 1);
    boolean shown = part.subject().face() == null || part.subject().face().equals(face);
    if (run == null || name == null || value == null || !shown) {
      return Optional.empty();
    }
    Piece piece = pieces.get(List.of(run, batch, name));
    if (piece == null) {
      return Optional.empty();
    }
    Layout layout = layout(campaign, run, batch, face);
    return places
        .place(piece.position())
        .map(place -> new Located(run, batch, place, piece.lot(), layout, value));
  }

  private static Layout layout(Campaign campaign, String run, int batch, @Nullable String face) {
    return campaign.photos().stream()
            .filter(p -> p.run().equals(run))
            .filter(p -> Objects.requireNonNullElse(p.batch(), 1) == batch)
            .filter(p -> p.face() == null || p.face().equals(face))
            .anyMatch(p -> p.frame().front() == ShadeSettings.Front.TOP)
        ? Layout.TURNED
        : Layout.AS_BAKED;
  }

  private static Optional<OfProduct> study(String product, List<Located> located) {
    long positions = located.stream().map(Located::place).distinct().count();
    if (positions < 2) {
      return Optional.empty();
    }
    Map<List<Object>, Integer> loads = new LinkedHashMap<>();
    located.forEach(l -> loads.putIfAbsent(List.of(l.run(), l.batch()), loads.size() + 1));
    boolean severalLots = severalLots(located);
    List<Observation> observations =
        located.stream()
            .map(
                l ->
                    new Observation(
                        l.place(),
                        loads.getOrDefault(List.of(l.run(), l.batch()), 0),
                        severalLots ? l.lot() : null,
                        l.layout(),
                        l.value()))
            .toList();
    return Optional.of(
        new OfProduct(
            product, loads.size(), located.size(), CavityMap.fit(observations), second(located)));
  }

  /** Lots that change only from batch to batch are part of the batch. */
  private static boolean severalLots(List<Located> located) {
    return located.stream()
        .collect(
            Collectors.groupingBy(
                l -> l.run() + "/" + l.batch(),
                Collectors.mapping(l -> String.valueOf(l.lot()), Collectors.toSet())))
        .values()
        .stream()
        .anyMatch(lots -> lots.size() > 1);
  }

  private static SecondBatch.@Nullable Result second(List<Located> located) {
    int last = located.stream().mapToInt(Located::batch).max().orElse(1);
    if (last < 2) {
      return null;
    }
    List<SecondBatch.Pair> pairs = new ArrayList<>();
    for (Located l : located) {
      if (l.batch() == 1) {
        located.stream()
            .filter(
                o -> o.batch() == last && o.run().equals(l.run()) && o.place().equals(l.place()))
            .findFirst()
            .ifPresent(
                o -> pairs.add(new SecondBatch.Pair(l.run(), l.place(), l.value(), o.value())));
      }
    }
    return pairs.isEmpty() ? null : SecondBatch.of(pairs);
  }
}
