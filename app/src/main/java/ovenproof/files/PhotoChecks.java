package ovenproof.files;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
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
      rowed.row().find("face").ifPresent(w -> w.oneOf(plan.faces(), "a face of the photo plan"));
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
