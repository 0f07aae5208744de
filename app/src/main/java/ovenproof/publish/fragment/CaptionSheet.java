package ovenproof.publish.fragment;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Rounding;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;

/** A caption and an alternative text for every photograph. */
final class CaptionSheet {
  private static final double AS_WANTED = 1.5;

  private final Edition edition;

  CaptionSheet(Edition edition) {
    this.edition = edition;
  }

  String text() {
    StringBuilder text = new StringBuilder("file\tcaption\talternative text\n");
    for (Photo photo : edition.campaign().photos()) {
      edition.campaign().run(photo.run()).ifPresent(run -> text.append(line(photo, run)));
    }
    return text.toString();
  }

  private String line(Photo photo, Run run) {
    Optional<TestPlan> test = edition.campaign().method().test(run.test());
    String name = test.map(TestPlan::name).orElse(run.test());
    String where = where(photo, test, run);
    String caption = edition.name(run.product()) + ", " + name + ", " + where + score(run);
    String alternative =
        what(test, name)
            + " from "
            + edition.name(run.product())
            + ", "
            + where
            + test.map(t -> shade(photo, t)).orElse("");
    return Markup.tabs(List.of(photo.file(), caption, alternative)) + "\n";
  }

  private static String what(Optional<TestPlan> test, String name) {
    TestPlan.Sample sample = test.map(TestPlan::sample).orElse(null);
    TestPlan.PhotoPlan plan = test.map(TestPlan::photos).orElse(null);
    if (sample == null || plan == null) {
      return name;
    }
    return name
        + ", "
        + plan.pieces()
        + (plan.pieces() == 1 ? " piece of " : " pieces of ")
        + sample.food();
  }

  /** {@code run 1 of 3, batch 2, top}. */
  private String where(Photo photo, Optional<TestPlan> test, Run run) {
    boolean many = test.map(t -> t.batches() > 1).orElse(false);
    String batch = photo.batch() == null || !many ? "" : ", batch " + photo.batch();
    String face = photo.face() == null ? "" : ", " + photo.face();
    int of = edition.countedRuns(run.product(), run.test()).size();
    String which =
        run.kind() == Run.Kind.TRIAL
            ? "trial"
            : "run " + run.replicate() + (of > 1 && counts(run) ? " of " + of : "");
    return which + batch + face;
  }

  private boolean counts(Run run) {
    return edition.countedRuns(run.product(), run.test()).contains(run);
  }

  private String score(Run run) {
    if (!counts(run)) {
      return edition.campaign().whyNotCounted(run).isPresent()
          ? ". Not scored: " + edition.campaign().whyNotCounted(run).orElseThrow()
          : ". Not scored: a variant for comparison";
    }
    return edition
        .verdict()
        .product(run.product())
        .flatMap(p -> p.test(run.test()))
        .map(Node::score)
        .map(s -> ". The test: " + Scores.sentence(s))
        .orElse("");
  }

  private String shade(Photo photo, TestPlan test) {
    OptionalDouble lightness = lightness(photo, test);
    if (lightness.isEmpty()) {
      return "";
    }
    TestPlan.PhotoPlan plan = test.photos();
    TestPlan.Shade target = plan == null ? null : plan.target();
    String words = "; lightness L* " + Rounding.HALF_UP.text(lightness.getAsDouble(), 0);
    return words + (target == null ? "" : beside(lightness.getAsDouble() - target.lightness()));
  }

  private static String beside(double difference) {
    if (Math.abs(difference) < AS_WANTED) {
      return ", as wanted";
    }
    String size = Rounding.HALF_UP.text(Math.abs(difference), 0);
    return ", " + size + (difference > 0 ? " paler" : " darker") + " than wanted";
  }

  /** Mean over the pieces of this picture, where the method measures it. */
  private OptionalDouble lightness(Photo photo, TestPlan test) {
    return edition.measured().values().stream()
        .filter(v -> v.test().equals(test.id()) && photo.run().equals(v.run()))
        .filter(v -> v.parts().stream().anyMatch(m -> shows(m, photo)))
        .findFirst()
        .map(
            v ->
                v.parts().stream()
                    .filter(m -> shows(m, photo))
                    .map(Measurement::value)
                    .filter(Objects::nonNull)
                    .mapToDouble(Double::doubleValue)
                    .average())
        .orElse(OptionalDouble.empty());
  }

  private static boolean shows(Measurement piece, Photo photo) {
    return piece.id().equals("lightness-mean")
        && Objects.equals(piece.subject().face(), photo.face())
        && Objects.equals(piece.subject().batch(), photo.batch());
  }
}
