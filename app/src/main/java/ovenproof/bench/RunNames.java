package ovenproof.bench;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;

/** Which run, face and batch the name of a file speaks of. */
public final class RunNames {
  private final Campaign campaign;

  public RunNames(Campaign campaign) {
    this.campaign = campaign;
  }

  /**
   * What a name says.
   *
   * @param run null when it names none, or more than one
   * @param candidates runs that it may mean, when it names more than one
   */
  public record Named(
      @Nullable String run,
      List<String> candidates,
      @Nullable String face,
      @Nullable Integer batch) {}

  /**
   * Reads a file's name: a run's key in it, the longest one; else the product and the test in it,
   * with the replicate when a number of its own says it.
   */
  public Named read(String fileName) {
    int dot = fileName.lastIndexOf('.');
    String words = words(dot > 0 ? fileName.substring(0, dot) : fileName);
    List<Run> named = byKey(words);
    if (named.isEmpty()) {
      named = byProductAndTest(words);
    }
    Run only = named.size() == 1 ? named.get(0) : null;
    Optional<TestPlan> test = only == null ? Optional.empty() : campaign.method().test(only.test());
    return new Named(
        only == null ? null : only.id(),
        named.size() > 1 ? named.stream().map(Run::id).toList() : List.of(),
        test.map(t -> face(t, words)).orElse(null),
        batch(words));
  }

  private List<Run> byKey(String words) {
    List<Run> named = campaign.runs().stream().filter(r -> speaksOf(words, words(r.id()))).toList();
    int longest = named.stream().mapToInt(r -> words(r.id()).length()).max().orElse(0);
    return named.stream().filter(r -> words(r.id()).length() == longest).toList();
  }

  private List<Run> byProductAndTest(String words) {
    List<Run> named = new ArrayList<>();
    for (Run r : campaign.runs()) {
      boolean product =
          speaksOf(words, words(r.product()))
              || campaign
                  .product(r.product())
                  .filter(p -> speaksOf(words, words(p.name())))
                  .isPresent();
      boolean test =
          speaksOf(words, words(r.test()))
              || campaign
                  .method()
                  .test(r.test())
                  .filter(t -> speaksOf(words, words(t.name())))
                  .isPresent();
      if (product && test && r.kind() == Run.Kind.COUNTED) {
        named.add(r);
      }
    }
    List<Run> numbered =
        named.stream().filter(r -> speaksOf(words, "-" + r.replicate() + "-")).toList();
    List<Run> left = numbered.isEmpty() ? named : numbered;
    return left.stream().sorted(Comparator.comparing(Run::replicate)).toList();
  }

  private static @Nullable String face(TestPlan test, String words) {
    return test.photos() == null
        ? null
        : test.photos().faces().stream()
            .filter(f -> speaksOf(words, words(f)))
            .findFirst()
            .orElse(null);
  }

  private static @Nullable Integer batch(String words) {
    var found = java.util.regex.Pattern.compile("-(?:b|batch-?)([1-9]\\d?)-").matcher(words);
    return found.find() ? Integer.valueOf(found.group(1)) : null;
  }

  private static boolean speaksOf(String words, String word) {
    return word.length() > 2 && words.contains(word);
  }

  /** Between hyphens, so that run 1 is not found in run 12. */
  private static String words(String name) {
    String plain = Normalizer.normalize(name, Normalizer.Form.NFKD).replaceAll("\\p{M}", "");
    return "-" + plain.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-") + "-";
  }
}
