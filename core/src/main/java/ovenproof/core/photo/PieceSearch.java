package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.PieceSets.Sighted;

/**
 * Tries every score at every threshold in every region of a coarse picture, and the few that look
 * best there again in the finer one: a quarter of the pixels tells which way of looking is right,
 * all of them tell where the edges lie.
 */
final class PieceSearch {

  /** How many ways of looking are tried again in the finer picture. */
  private static final int TRIED_AGAIN = 5;

  /** On a plain ground nothing but food can fill the frame. */
  private static final double LARGEST_ON_PLAIN = 0.93;

  /** Distances from a plain ground at which food may begin: with and without a soft shadow. */
  private static final List<Double> PLAIN_LEVELS = List.of(8.0, 14.0);

  private static final double LEAST_PLAIN_CONTRAST = 15;
  private static final double LEAST_PLAIN_SUPPORT = 0.8;

  /** What covers less of the food than this, and lies along its edge, is a part of it. */
  private static final double PART_COVERS = 0.75;

  private static final double PART_ALONG_EDGE = 0.15;
  private static final int MOST_CONTAINERS = 4;
  private static final double SAME_CONTAINER = 0.9;

  private final PieceScene scene;
  private final PieceScene coarse;
  private final @Nullable Integer expected;

  /**
   * @param coarse the same at half the size; null when a first look saves nothing
   */
  PieceSearch(PieceScene scene, @Nullable PieceScene coarse, @Nullable Integer expected) {
    this.scene = scene;
    this.coarse = coarse == null ? scene : coarse;
    this.expected = expected;
  }

  /** The pieces that look most like food, in masks of the whole frame. */
  record Outcome(List<PieceCandidate> pieces) {}

  /** A region with the colours of its ground. */
  private record Domain(Mask mask, GroundModel ground) {
    static Domain of(PieceScene scene, Mask mask) {
      return new Domain(mask, GroundModel.of(scene.lab(), scene.borderOf(mask)));
    }
  }

  /** One way of looking, with what it found. */
  private record Look(int domain, Score score, int level, List<Sighted> set, double worth) {}

  /** What one score found at each of its thresholds. */
  private record Tried(List<Look> looks, List<Mask> containers) {}

  /** What may set food apart. */
  private enum Score {
    FAR_FROM_GROUND,
    WARM,
    WARM_AND_DARK,
    DARK,
    BRIGHT;

    IntToDoubleFunction of(LabPlanes lab, GroundModel ground) {
      return switch (this) {
        case FAR_FROM_GROUND -> i -> ground.distance(lab, i);
        case WARM -> i -> lab.b()[i] + 0.5 * lab.a()[i];
        case WARM_AND_DARK -> i -> lab.b()[i] + 0.5 * lab.a()[i] - 0.35 * lab.lightness()[i];
        case DARK -> i -> -lab.lightness()[i];
        case BRIGHT -> i -> lab.lightness()[i];
      };
    }
  }

  Outcome run() {
    List<Mask> regions = new ArrayList<>(List.of(coarse.allowed()));
    List<Look> looks = everywhere(regions);
    List<Sighted> best = coarse == scene ? bestOf(looks) : again(looks, regions);
    for (List<Sighted> whole : onPlainGround()) {
      best = isPartOf(best, whole) ? whole : best;
    }
    List<PieceCandidate> inFrame = best.stream().map(s -> s.inFrame(scene)).toList();
    return new Outcome(
        new PieceCount(scene.lab(), scene.excluded()).fit(withoutShadows(inFrame), expected));
  }

  private static List<Sighted> bestOf(List<Look> looks) {
    Look best = null;
    for (Look look : looks) {
      best = look.worth > 0 && (best == null || look.worth > best.worth) ? look : best;
    }
    return best == null ? List.of() : best.set;
  }

  /** Looks over the whole coarse frame, then inside each plate or tray, which join the regions. */
  private List<Look> everywhere(List<Mask> regions) {
    List<Look> looks = new ArrayList<>();
    List<Mask> containers = new ArrayList<>();
    tryAll(regions.get(0), 0, looks, containers);
    for (Mask container : unlike(containers)) {
      Mask inside = container.eroded(3 * coarse.unit()).and(coarse.allowed());
      if (inside.count() > 20 * coarse.leastArea()) {
        tryAll(inside, regions.size(), looks, new ArrayList<>());
        regions.add(inside);
      }
    }
    return looks;
  }

  /** The first few plates and trays, each once: several scores see the same one. */
  private static List<Mask> unlike(List<Mask> containers) {
    List<Mask> out = new ArrayList<>();
    for (Mask container : containers) {
      if (out.size() < MOST_CONTAINERS
          && out.stream().noneMatch(o -> o.overlap(container) > SAME_CONTAINER)) {
        out.add(container);
      }
    }
    return out;
  }

  private void tryAll(Mask mask, int domain, List<Look> looks, List<Mask> containers) {
    Domain region = Domain.of(coarse, mask);
    // Each score on its own core; put together in order, so that the outcome does not depend on
    // how many there are.
    List<Tried> tried =
        List.of(Score.values()).parallelStream().map(s -> trying(s, region, domain)).toList();
    for (Tried t : tried) {
      looks.addAll(t.looks());
      containers.addAll(t.containers());
    }
  }

  private Tried trying(Score score, Domain region, int domain) {
    PieceSets sets = new PieceSets(coarse, expected);
    double[] values = values(coarse, region, score);
    List<Double> levels = Threshold.levels(values);
    Tried tried = new Tried(new ArrayList<>(), new ArrayList<>());
    for (int level = 0; level < levels.size(); level++) {
      List<Sighted> set =
          sets.candidates(
              above(coarse, values, levels.get(level)),
              region.ground,
              tried.containers,
              PieceSets.LARGEST_AREA_SHARE);
      tried.looks.add(new Look(domain, score, level, set, sets.worth(set)));
    }
    return tried;
  }

  private static double[] values(PieceScene scene, Domain region, Score score) {
    IntToDoubleFunction function = score.of(scene.lab(), region.ground);
    double[] values = new double[scene.lab().size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = region.mask.set()[i] ? function.applyAsDouble(i) : Double.NaN;
    }
    return values;
  }

  private static Mask above(PieceScene scene, double[] values, double threshold) {
    Mask mask = Mask.empty(scene.width(), scene.height());
    for (int i = 0; i < values.length; i++) {
      mask.set()[i] = values[i] > threshold;
    }
    return mask;
  }

  /** The ways that looked best, in the finer picture. */
  private List<Sighted> again(List<Look> looks, List<Mask> regions) {
    List<Look> promising =
        looks.stream()
            .filter(l -> l.worth > 0)
            .sorted(Comparator.comparingDouble((Look l) -> l.worth).reversed())
            .limit(TRIED_AGAIN)
            .toList();
    List<Domain> domains =
        IntStream.range(0, regions.size())
            .mapToObj(
                d ->
                    promising.stream().anyMatch(l -> l.domain == d)
                        ? Domain.of(scene, finer(regions.get(d), d))
                        : new Domain(regions.get(d), new GroundModel(List.of())))
            .toList();
    return bestOf(promising.parallelStream().map(l -> again(l, domains.get(l.domain))).toList());
  }

  private Mask finer(Mask region, int domain) {
    return domain == 0
        ? scene.allowed()
        : region.twice(scene.width(), scene.height()).and(scene.allowed());
  }

  private Look again(Look look, Domain region) {
    double[] values = values(scene, region, look.score);
    List<Double> levels = Threshold.levels(values);
    if (look.level >= levels.size()) {
      return look;
    }
    PieceSets sets = new PieceSets(scene, expected);
    List<Sighted> set =
        sets.candidates(
            above(scene, values, levels.get(look.level)),
            region.ground,
            new ArrayList<>(),
            PieceSets.LARGEST_AREA_SHARE);
    return new Look(look.domain, look.score, look.level, set, sets.worth(set));
  }

  /** On a cloth or sheet of one colour whatever is not that colour is food. */
  private List<List<Sighted>> onPlainGround() {
    Mask allowed = scene.allowed();
    int[] border = scene.borderOf(allowed);
    GroundModel plain = GroundModel.of(scene.lab(), border).plain(scene.lab(), border);
    if (plain.groups().isEmpty()) {
      return List.of();
    }
    double[] values = values(scene, new Domain(allowed, plain), Score.FAR_FROM_GROUND);
    PieceSets sets = new PieceSets(scene, expected);
    return PLAIN_LEVELS.parallelStream()
        .map(
            level ->
                sets.candidates(
                    above(scene, values, level), plain, new ArrayList<>(), LARGEST_ON_PLAIN))
        .toList();
  }

  /**
   * Whether what was found is but a part of what stands out from a plain ground: the sunny side of
   * a bun, say. Rolls on a board are no part of it, since they keep away from its edge.
   */
  private boolean isPartOf(List<Sighted> found, List<Sighted> whole) {
    if (!whole.stream().allMatch(s -> isClear(s.candidate())) || whole.isEmpty()) {
      return false;
    }
    if (found.isEmpty()) {
      return true;
    }
    if (found.size() > whole.size() && isNearerToExpected(found.size(), whole.size())) {
      return false; // pieces that touch stand out from their ground as one
    }
    Mask parts = union(found);
    Mask all = union(whole);
    Mask edge = parts.and(parts.eroded(1).inverted());
    double along = 1 - edge.and(all.eroded(5 * scene.unit())).count() / Math.max(1.0, edge.count());
    boolean within = parts.and(all).count() > 0.9 * parts.count();
    return within && along > PART_ALONG_EDGE && parts.count() < PART_COVERS * all.count();
  }

  private boolean isNearerToExpected(int count, int other) {
    return expected == null || Math.abs(count - expected) < Math.abs(other - expected);
  }

  private static boolean isClear(PieceCandidate piece) {
    return piece.contrast() >= LEAST_PLAIN_CONTRAST && piece.support() >= LEAST_PLAIN_SUPPORT;
  }

  private Mask union(List<Sighted> set) {
    Mask out = Mask.empty(scene.width(), scene.height());
    for (Sighted s : set) {
      out = out.or(s.inFrame(scene).mask());
    }
    return out;
  }

  private List<PieceCandidate> withoutShadows(List<PieceCandidate> pieces) {
    Mask notGround = scene.excluded();
    for (PieceCandidate c : pieces) {
      notGround = notGround.or(c.mask());
    }
    ShadowTrim trim = new ShadowTrim(scene.lab(), scene.unit());
    List<PieceCandidate> out = new ArrayList<>();
    for (PieceCandidate c : pieces) {
      out.add(PieceCandidate.of(trim.trim(c.mask(), notGround), scene.lab(), scene.excluded()));
    }
    return out;
  }
}
