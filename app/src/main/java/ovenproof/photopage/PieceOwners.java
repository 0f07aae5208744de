package ovenproof.photopage;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;

/**
 * A frame whose pieces belong to two runs.
 *
 * @param here the picture with the pieces that stay
 * @param there the same picture with those of the other run
 */
record PieceOwners(Photo here, Photo there) {

  /**
   * Parts the outlines.
   *
   * @param pieces names of the other run's pieces, between commas or spaces
   * @param problems receives what is wrong, in sentences; then the result must not be used
   */
  static PieceOwners read(
      Campaign campaign,
      Photo photo,
      List<Photo.Drawn> outlines,
      String pieces,
      String other,
      List<String> problems) {
    Set<String> named =
        Arrays.stream(pieces.split("[,;\\s]+"))
            .filter(p -> !p.isBlank())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    List<Photo.Drawn> theirs = outlines.stream().filter(o -> named.contains(o.piece())).toList();
    List<Photo.Drawn> ours = outlines.stream().filter(o -> !named.contains(o.piece())).toList();
    check(campaign, photo, named, outlines, other, problems);
    if (problems.isEmpty() && (theirs.isEmpty() || ours.isEmpty())) {
      problems.add("At least one piece has to stay with this run and one to go to the other.");
    }
    Photo there =
        new Photo(
            photo.file(),
            other,
            photo.batch(),
            photo.face(),
            photo.taken(),
            photo.camera(),
            List.of(),
            theirs,
            photo.frame(),
            photo.note());
    return new PieceOwners(photo.withOutlines(ours, photo.note()), there);
  }

  private static void check(
      Campaign campaign,
      Photo photo,
      Set<String> named,
      List<Photo.Drawn> outlines,
      String other,
      List<String> problems) {
    Set<String> known = outlines.stream().map(Photo.Drawn::piece).collect(Collectors.toSet());
    for (String name : named) {
      if (!known.contains(name)) {
        problems.add("No piece here is called “" + name + "”; there are " + known + ".");
      }
    }
    if (campaign.run(other).isEmpty() || other.equals(photo.run())) {
      problems.add("Found “" + other + "”, expected another run of this campaign.");
    }
    boolean already =
        campaign.photos().stream()
            .anyMatch(p -> p.file().equals(photo.file()) && Objects.equals(p.run(), other));
    if (already) {
      problems.add("This picture belongs to " + other + " already; mend its outlines there.");
    }
  }
}
