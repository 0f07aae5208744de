package ovenproof.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Objects;
import java.util.stream.Stream;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** Where a bag goes: a new folder, or a new file whose name ends in {@code .zip}. */
final class BagPlace {
  private BagPlace() {}

  /** What fills a bag's folder, which does not exist yet. */
  @FunctionalInterface
  interface Filling<T> {
    T into(Path bag) throws IOException;
  }

  /**
   * Writes a bag; it appears whole or not at all.
   *
   * @param what names it in a sentence: {@code the backup}
   * @throws InputException if something stands at the place
   */
  static <T> T write(Path place, String what, Filling<T> filling) {
    refuseExisting(place);
    try (TemporaryFolder draft = TemporaryFolder.in(Objects.requireNonNull(place.getParent()))) {
      Path bag = draft.path().resolve("bag");
      T filled = filling.into(bag);
      if (place.toString().endsWith(".zip")) {
        Path zip = draft.path().resolve("bag.zip");
        BagZip.pack(bag, place.getFileName().toString().replaceAll("\\.zip$", ""), zip);
        Files.move(zip, place);
      } else {
        Files.deleteIfExists(place);
        Files.move(bag, place);
      }
      return filled;
    } catch (IOException e) {
      throw new OutsideException("could not write " + what + " " + place + ": " + e, e);
    }
  }

  static void refuseExisting(Path place) {
    boolean empty = false;
    if (Files.isDirectory(place) && !Files.isSymbolicLink(place)) {
      try (Stream<Path> inside = Files.list(place)) {
        empty = inside.findAny().isEmpty();
      } catch (IOException e) {
        throw new OutsideException("could not look into " + place + ": " + e, e);
      }
    }
    if (Files.exists(place, LinkOption.NOFOLLOW_LINKS) && !empty) {
      throw new InputException(
          Problem.error(
              Place.of(place.toString()),
              "something that stands there already",
              "a new name",
              "nothing was overwritten"));
    }
  }
}
