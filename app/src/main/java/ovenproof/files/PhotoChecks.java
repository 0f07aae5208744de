package ovenproof.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;

/** Photos against the photo plan of their test. */
final class PhotoChecks {
  private final Context context;
  private final Sections sections;
  private final Map<String, Run> runs = new HashMap<>();

  PhotoChecks(Context context, Sections sections) {
    this.context = context;
    this.sections = sections;
    sections.runs().forEach(r -> runs.putIfAbsent(r.value().id(), r.value()));
  }

  void run() {
    sections.photos().forEach(this::photo);
    shared();
    cards();
  }

  /** Pieces of several runs in one frame: only a person knows which are whose. */
  private void shared() {
    Map<String, Long> rows =
        sections.photos().stream()
            .collect(Collectors.groupingBy(p -> p.value().file(), Collectors.counting()));
    for (Rowed<Photo> rowed : sections.photos()) {
      if (rows.getOrDefault(rowed.value().file(), 0L) > 1 && !rowed.value().isByHand()) {
        rowed
            .row()
            .error(
                "file",
                "a picture of several runs that does not say which pieces are of "
                    + rowed.value().run(),
                "\"boxes\" or \"outlines\" in each of its rows",
                "draw them on the photo page, or write piece:x,y,w,h");
      }
    }
  }

  /** A method that takes its shade from a card needs the card's picture in every session. */
  private void cards() {
    Set<String> photographed =
        sections.photos().stream()
            .filter(p -> Photo.SHADE_CARD.equals(p.value().face()))
            .map(p -> String.valueOf(p.value().camera()))
            .collect(Collectors.toSet());
    Set<String> said = new HashSet<>();
    for (Rowed<Photo> rowed : sections.photos()) {
      String camera = String.valueOf(rowed.value().camera());
      boolean wanted =
          plan(rowed.value()).map(TestPlan.PhotoPlan::targetFrom).stream()
              .anyMatch(from -> from == TestPlan.PhotoPlan.TargetFrom.SHADE_CARD);
      if (wanted && !photographed.contains(camera) && said.add(camera)) {
        rowed
            .row()
            .warning(
                rowed.value().camera() == null ? "file" : "camera",
                rowed.value().camera() == null
                    ? "a photo without camera session"
                    : "no shade card photographed in camera session " + camera,
                "a row with face shade-card and the same \"camera\"",
                "without it nothing is near, darker or paler than the shade wanted");
      }
    }
  }

  private Optional<TestPlan.PhotoPlan> plan(Photo photo) {
    return Optional.ofNullable(runs.get(photo.run()))
        .flatMap(r -> context.method().flatMap(m -> m.test(r.test())))
        .map(TestPlan::photos);
  }

  private void photo(Rowed<Photo> rowed) {
    Optional<TestPlan> test =
        Optional.ofNullable(runs.get(rowed.value().run()))
            .flatMap(r -> context.method().flatMap(m -> m.test(r.test())));
    test.ifPresent(t -> batch(rowed, t));
    test.map(TestPlan::photos).ifPresent(plan -> face(rowed, plan));
  }

  private static void batch(Rowed<Photo> rowed, TestPlan test) {
    int batch = Objects.requireNonNullElse(rowed.value().batch(), 1);
    if (batch > test.batches()) {
      rowed.row().error("batch", "batch " + batch, "a batch from 1 to " + test.batches(), "");
    }
    if (rowed.value().batch() == null && test.batches() > 1) {
      rowed
          .row()
          .warning("run", "a photo without batch", "the batch it shows", "fill in \"batch\"");
    }
  }

  private static void face(Rowed<Photo> rowed, TestPlan.PhotoPlan plan) {
    String face = rowed.value().face();
    if (face == null && plan.faces().size() > 1) {
      rowed
          .row()
          .error(
              "run",
              "a photo that does not say which face it shows",
              "one of " + String.join(", ", plan.faces()),
              "fill in \"face\"");
    } else if (face != null) {
      List<String> faces = new ArrayList<>(plan.faces());
      if (plan.targetFrom() == TestPlan.PhotoPlan.TargetFrom.SHADE_CARD) {
        faces.add(Photo.SHADE_CARD);
      }
      rowed.row().find("face").ifPresent(w -> w.oneOf(faces, "a face of the photo plan"));
    }
    if (Photo.SHADE_CARD.equals(face)) {
      return;
    }
    int boxes = rowed.value().boxes().size();
    if (boxes > 0 && boxes != plan.pieces()) {
      rowed
          .row()
          .warning(
              "boxes",
              boxes + (boxes == 1 ? " box" : " boxes"),
              plan.pieces() + ", as the photo plan says",
              "is a piece missing?");
    }
  }
}
