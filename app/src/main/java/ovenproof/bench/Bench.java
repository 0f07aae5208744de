package ovenproof.bench;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.desk.Desk;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.TestPlan;
import ovenproof.web.FormKey;

/** What the pages of the bench share: finding what a request names, and reading its fields. */
final class Bench {
  static final List<String> ENDINGS = ovenproof.campaign.Event.STOP_CAUSES;
  private static final Set<String> SHOWN = Set.of("jpg", "jpeg", "png", "webp");

  private Bench() {}

  static Run run(Campaign c, String id) {
    return c.run(id).orElseThrow(() -> unknown("run"));
  }

  static TestPlan test(Campaign c, Run run) {
    return c.method().test(run.test()).orElseThrow(() -> unknown("test"));
  }

  static @Nullable String said(Map<String, String> typed, String field) {
    String text = typed.getOrDefault(field, "").strip();
    return text.isEmpty() ? null : text;
  }

  static String key(Desk desk, Map<String, String> typed) {
    return FormKey.of(typed, desk.clock());
  }

  static String toRun(String cid, String run) {
    return "redirect:/c/" + cid + "/runs/" + run;
  }

  static boolean isPicture(String path) {
    return ovenproof.evidence.photo.PhotoFile.isNamedLikeOne(path);
  }

  /** Whether browsers show it. */
  static boolean isShown(String path) {
    return SHOWN.contains(ending(path));
  }

  static String ending(String path) {
    return path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  static InputException unknown(String what) {
    return new InputException(
        Problem.error(
            Place.of("request"),
            "no such " + what,
            "one of this campaign",
            "go back and choose again"));
  }
}
