package ovenproof.bench;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.evidence.photo.PhotoSorting;
import ovenproof.evidence.photo.PhotoSorting.BatchEnd;
import ovenproof.evidence.photo.PhotoSorting.RunTime;
import ovenproof.evidence.photo.PhotoSorting.Shot;
import ovenproof.evidence.photo.PhotoSorting.Sorted;
import ovenproof.evidence.photo.RunLabel;
import ovenproof.method.TestPlan;

/**
 * To which run, batch and face of a campaign photographs belong: by their names, the labels in
 * their frames and their times. What is not certain is asked.
 */
public final class PhotoProposals {
  private static final int MOST_CANDIDATES = 4;

  private final Campaign campaign;

  public PhotoProposals(Campaign campaign) {
    this.campaign = campaign;
  }

  /**
   * Where a photograph belongs.
   *
   * @param run empty when it has to be asked
   * @param face empty when nothing says it
   * @param why in words, with the likely runs when it has to be asked
   * @param isNew neither in the campaign nor among the ones before it
   */
  public record Proposal(Shot shot, String run, int batch, String face, String why, boolean isNew) {

    /** Whether a person has to say the run. */
    public boolean isAsked() {
      return run.isEmpty() && isNew;
    }
  }

  /** All together, in their order: labelled ones tell how far the camera's clock is off. */
  public List<Proposal> of(List<Shot> shots) {
    List<Sorted> sorted = PhotoSorting.sort(shots, times());
    RunNames names = new RunNames(campaign);
    List<Proposal> out = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      out.add(proposal(shots.get(i), names.read(shots.get(i).file()), sorted.get(i)));
    }
    return out;
  }

  private Proposal proposal(Shot shot, RunNames.Named named, Sorted seen) {
    String known = known(shot.sha256());
    boolean again = seen.certainty() == PhotoSorting.Certainty.DUPLICATE;
    if (!known.isEmpty() || again) {
      return new Proposal(shot, "", 1, "", known.isEmpty() ? seen.why() : known, false);
    }
    Integer batch =
        seen.label().map(RunLabel::batch).orElseGet(() -> first(named.batch(), seen.batch()));
    String face = seen.label().map(RunLabel::face).orElse(named.face());
    Placed placed = placed(named, seen);
    String why = placed.why + (face == null ? assumed(placed.run) : "");
    return new Proposal(
        shot,
        placed.run,
        batch == null ? 1 : batch,
        Objects.requireNonNullElse(face, ""),
        why,
        true);
  }

  /** What is taken for granted of the face, when the test has several. */
  private String assumed(String run) {
    List<String> faces = faces(run);
    return faces.size() < 2 ? "" : "; nothing says the face: " + faces.get(0) + " is assumed";
  }

  private static @Nullable Integer first(@Nullable Integer one, @Nullable Integer other) {
    return one == null ? other : one;
  }

  /** A run with the reason; empty when it has to be asked. */
  private record Placed(String run, String why) {}

  /** Its name first; a printed label may contradict it, the time it was taken may not. */
  private static Placed placed(RunNames.Named named, Sorted seen) {
    String byName = named.run();
    String bySight = seen.run();
    if (byName == null) {
      return bySight == null
          ? new Placed("", seen.why() + likely(seen.candidates()))
          : new Placed(bySight, seen.why());
    }
    boolean labelled = seen.certainty() == PhotoSorting.Certainty.LABEL && bySight != null;
    if (labelled && !byName.equals(bySight)) {
      return new Placed(
          "",
          "Its name says "
              + byName
              + ", the label in it says "
              + bySight
              + likely(List.of(byName, String.valueOf(bySight))));
    }
    return new Placed(byName, "its name says the run");
  }

  /** The runs to choose from, likeliest first. */
  private static String likely(List<String> candidates) {
    List<String> few = candidates.stream().limit(MOST_CANDIDATES).toList();
    return few.isEmpty() ? "" : ": " + String.join(" or ", few) + "?";
  }

  private String known(String sha256) {
    return campaign.evidence().stream()
        .filter(e -> e.sha256().equals(sha256))
        .findFirst()
        .map(e -> "in the campaign already, as " + e.path())
        .orElse("");
  }

  /** Runs that were begun, with the times at which their food came out. */
  public List<RunTime> times() {
    return campaign.runs().stream()
        .flatMap(r -> java.util.stream.Stream.ofNullable(time(r)))
        .toList();
  }

  private @Nullable RunTime time(Run run) {
    Instant start = run.started();
    if (start == null) {
      return null;
    }
    List<BatchEnd> batches = new ArrayList<>();
    List<Instant> photographed = new ArrayList<>();
    double last = 0;
    for (Event e : campaign.eventsOf(run.id())) {
      last = Math.max(last, e.elapsedSeconds());
      Integer batch = e.batch();
      if (e.type() == Event.Type.REMOVE && batch != null) {
        batches.add(new BatchEnd(batch, after(start, e.elapsedSeconds())));
      }
      if (e.type() == Event.Type.PHOTO) {
        photographed.add(after(start, e.elapsedSeconds()));
      }
    }
    return new RunTime(run.id(), start, after(start, last), batches, photographed);
  }

  private static Instant after(Instant start, double seconds) {
    return start.plusMillis((long) (1000 * seconds));
  }

  /** When a photograph was taken by its camera's clock; null when the file does not say. */
  public static @Nullable Instant taken(PhotoFile photo, ZoneId zone) {
    var at = photo.metadata().takenAt();
    if (at == null) {
      return null;
    }
    var offset = photo.metadata().offset();
    return offset == null ? at.atZone(zone).toInstant() : at.toInstant(offset);
  }

  /** The face as the test knows it: the first of its faces when it is none of them. */
  public @Nullable String face(String run, String face) {
    List<String> faces = faces(run);
    if (faces.isEmpty()) {
      return face.isEmpty() ? null : face;
    }
    return faces.contains(face) || isOwn(face) ? face : faces.get(0);
  }

  /** The faces that a run's test is photographed from; none when it is not. */
  private List<String> faces(String run) {
    return campaign
        .run(run)
        .flatMap(r -> campaign.method().test(r.test()))
        .map(TestPlan::photos)
        .map(TestPlan.PhotoPlan::faces)
        .orElse(List.of());
  }

  private static boolean isOwn(String face) {
    return ovenproof.campaign.Photo.SHADE_CARD.equals(face)
        || ovenproof.campaign.Photo.BEFORE.equals(face);
  }
}
