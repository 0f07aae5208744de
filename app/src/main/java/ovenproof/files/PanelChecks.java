package ovenproof.files;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;

/** Ratings that say which batch was tasted, and codes that stay blind. */
final class PanelChecks {
  private final Context context;
  private final Sections sections;

  PanelChecks(Context context, Sections sections) {
    this.context = context;
    this.sections = sections;
  }

  void run() {
    List<Rowed<Rating>> ratings = KeyChecks.effectiveOf(sections.ratings());
    codes(ratings);
    batches(ratings);
  }

  private static void codes(List<Rowed<Rating>> ratings) {
    Map<String, String> sampleOf = new HashMap<>();
    for (Rowed<Rating> rowed : ratings) {
      Rating rating = rowed.value();
      if (rating.code() == null) {
        continue;
      }
      String sample = rating.run() + " batch " + rating.batch();
      String first = sampleOf.putIfAbsent(rating.session() + " " + rating.code(), sample);
      if (first != null && !first.equals(sample)) {
        rowed
            .row()
            .error(
                "code",
                "the code " + rating.code() + " on two samples of " + rating.session(),
                "a code of its own for each sample",
                "the other is " + first);
      }
    }
  }

  private void batches(List<Rowed<Rating>> ratings) {
    List<Rowed<Rating>> open = ratings.stream().filter(this::needsBatch).toList();
    if (!open.isEmpty()) {
      open.get(0)
          .row()
          .warning(
              "run",
              open.size() + (open.size() == 1 ? " rating" : " ratings") + " without batch",
              "the batch that was tasted",
              "a batch is what a rating says something about; fill in \"batch\"");
    }
  }

  private boolean needsBatch(Rowed<Rating> rating) {
    return rating.value().batch() == null
        && sections.runs().stream()
                .map(Rowed::value)
                .filter(r -> r.id().equals(rating.value().run()))
                .findFirst()
                .map(Run::test)
                .flatMap(t -> context.method().flatMap(m -> m.test(t)))
                .map(TestPlan::batches)
                .orElse(1)
            > 1;
  }
}
