package ovenproof.measure;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.evidence.EvidenceSource;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.input.InputException;
import ovenproof.method.TestPlan;
import ovenproof.method.TestPlan.PhotoPlan.TargetFrom;

/**
 * The shade wanted, as a card photographed in the light of the day: the card of the same camera
 * session that was taken nearest in time. Safe for threads; each card is read once.
 */
public final class ShadeCards {
  private final Campaign campaign;
  private final EvidenceSource evidence;
  private final Map<String, Optional<Lab>> read = new ConcurrentHashMap<>();

  public ShadeCards(Campaign campaign, EvidenceSource evidence) {
    this.campaign = campaign;
    this.evidence = evidence;
  }

  /**
   * The shade wanted on a photograph.
   *
   * @return null when the method wants none, or takes it from a card and there is none that can be
   *     read
   */
  public @Nullable Lab target(Photo photo, TestPlan test) {
    TestPlan.PhotoPlan plan = test.photos();
    if (plan == null) {
      return null;
    }
    TestPlan.Shade value = plan.target();
    if (value != null) {
      return Lab.d50(value.lightness(), value.a(), value.b());
    }
    return plan.targetFrom() == TargetFrom.SHADE_CARD && !Photo.SHADE_CARD.equals(photo.face())
        ? card(photo).flatMap(c -> shade(c, test)).orElse(null)
        : null;
  }

  /** Where pieces of other runs lie in the same frame, as their own rows say. */
  public List<Photo.Box> others(Photo photo) {
    return campaign.photos().stream()
        .filter(p -> p.file().equals(photo.file()) && !p.run().equals(photo.run()))
        .flatMap(p -> p.around().stream())
        .toList();
  }

  private Optional<Photo> card(Photo photo) {
    return campaign.photos().stream()
        .filter(p -> Photo.SHADE_CARD.equals(p.face()))
        .filter(p -> Objects.equals(session(p), session(photo)))
        .min(Comparator.comparing((Photo p) -> apart(p.taken(), photo.taken())));
  }

  /** The camera's session, else the session of the run. */
  private String session(Photo photo) {
    String camera = photo.camera();
    return camera != null
        ? "camera " + camera
        : "runs " + campaign.run(photo.run()).map(Run::session).orElse("");
  }

  private static Duration apart(@Nullable Instant a, @Nullable Instant b) {
    return a == null || b == null ? Duration.ZERO : Duration.between(a, b).abs();
  }

  private Optional<Lab> shade(Photo card, TestPlan test) {
    return read.computeIfAbsent(card.file(), f -> fresh(card, test));
  }

  private Optional<Lab> fresh(Photo card, TestPlan test) {
    try {
      PhotoFile file =
          PhotoFile.open(evidence.bytes(card.file(), PhotoFile.LARGEST_BYTES), card.file());
      PhotoAnalysis seen =
          PhotoSetup.of(card, test, null, null, others(card)).read(card, file.picture());
      return seen.pieces().size() == 1
          ? Optional.ofNullable(seen.pieces().get(0).shade().mean())
          : Optional.empty();
    } catch (InputException unreadable) {
      return Optional.empty();
    }
  }
}
