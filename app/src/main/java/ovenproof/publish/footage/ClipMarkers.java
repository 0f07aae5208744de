package ovenproof.publish.footage;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;

/** What happened at the bench while a clip was filmed. */
public record ClipMarkers(Clip clip, List<Marker> markers) {

  /**
   * A clip.
   *
   * @param starts by the camera's own clock
   * @param cameraOffsetSeconds to be added to the camera's clock to get the bench's
   */
  public record Clip(
      String file, Instant starts, double lengthSeconds, double cameraOffsetSeconds) {}

  /** A moment of a clip, since its beginning. */
  public record Marker(double seconds, String run, String words) {}

  public ClipMarkers {
    markers = List.copyOf(markers);
  }

  /** Events of all runs whose wall clock is known and that lie inside the clip, in order. */
  public static ClipMarkers of(Campaign campaign, Clip clip) {
    List<Marker> markers = new ArrayList<>();
    for (Run run : campaign.runs()) {
      for (Event event : campaign.eventsOf(run.id())) {
        Instant at = at(run, event);
        if (at != null) {
          double seconds =
              Duration.between(clip.starts(), at).toMillis() / 1000.0 - clip.cameraOffsetSeconds();
          if (seconds >= 0 && seconds <= clip.lengthSeconds()) {
            markers.add(new Marker(seconds, run.id(), words(campaign, run, event)));
          }
        }
      }
    }
    markers.sort(Comparator.comparingDouble(Marker::seconds));
    return new ClipMarkers(clip, markers);
  }

  private static @org.jspecify.annotations.Nullable Instant at(Run run, Event event) {
    if (event.at() != null) {
      return event.at();
    }
    return run.started() == null
        ? null
        : run.started().plusMillis(Math.round(event.elapsedSeconds() * 1000));
  }

  /** Two runs of one product may lie in one clip, and two batches in one run. */
  private static String words(Campaign campaign, Run run, Event event) {
    String product =
        campaign.product(run.product()).map(Campaign.Product::name).orElse(run.product());
    Optional<TestPlan> plan = campaign.method().test(run.test());
    String test = plan.map(TestPlan::name).orElse(run.test());
    boolean many = plan.map(p -> p.batches() > 1).orElse(false);
    String batch = many && event.batch() != null ? ", batch " + event.batch() : "";
    String value =
        event.type() == Event.Type.STOP && event.value() != null
            ? " (" + event.value().replace('-', ' ') + ")"
            : "";
    String what = event.type().word().replace('-', ' ');
    return product + ", " + test + ", " + which(campaign, run) + batch + ": " + what + value;
  }

  private static String which(Campaign campaign, Run run) {
    boolean counts = campaign.whyNotCounted(run).isEmpty();
    boolean trial = run.kind() == Run.Kind.TRIAL;
    return trial ? "trial" : "run " + run.replicate() + (counts ? "" : ", not counted");
  }

  /** WebVTT metadata cues of one second each. */
  public String webVtt() {
    StringBuilder text = new StringBuilder("WEBVTT\n");
    for (Marker marker : markers) {
      text.append('\n')
          .append(Timecode.webVtt(marker.seconds()))
          .append(" --> ")
          .append(Timecode.webVtt(marker.seconds() + 1))
          .append('\n')
          .append(Chapters.cueText(marker.words()))
          .append('\n');
    }
    return text.toString();
  }

  /** {@code 0:12 words}, one per line. */
  public String plain() {
    StringBuilder text = new StringBuilder();
    markers.forEach(
        m -> text.append(Timecode.plain(m.seconds())).append(' ').append(m.words()).append('\n'));
    return text.toString();
  }
}
