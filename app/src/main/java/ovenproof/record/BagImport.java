package ovenproof.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import ovenproof.input.OutsideException;

/** Takes a bag's campaign folder out again, byte for byte. */
public final class BagImport {

  private BagImport() {}

  /**
   * Copies the payload of a sound bag to a new folder, which appears whole or not at all.
   *
   * @return the campaign folder
   * @throws ovenproof.input.InputException if the bag is not sound, or something stands at the
   *     target
   */
  public static Path read(Path bag, Path target) {
    Path place = target.toAbsolutePath().normalize();
    BagPlace.refuseExisting(place);
    Path parent = Objects.requireNonNull(place.getParent());
    try (TemporaryFolder unpacked = new TemporaryFolder();
        TemporaryFolder draft = TemporaryFolder.in(parent)) {
      Bag opened = Bag.open(Verification.folder(bag, unpacked));
      Path campaign = Files.createDirectories(draft.path().resolve("campaign"));
      for (String file : opened.fingerprints().keySet()) {
        Path to = campaign.resolve(file.substring("data/".length()));
        Files.createDirectories(to.getParent());
        Files.copy(opened.root().resolve(file), to);
      }
      Files.deleteIfExists(place);
      Files.move(campaign, place);
      return place;
    } catch (IOException e) {
      throw new OutsideException("could not write " + place + ": " + e, e);
    }
  }
}
