package ovenproof.files;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.input.OutsideException;

/**
 * Puts photographs into a campaign folder: first the pictures, each whole before it has its name,
 * then their rows behind those that photos.csv has. What a person wrote there stays as it is.
 */
public final class AddedPhotos {
  private static final String FOLDER = "photos/";

  private final Path folder;
  private final CampaignTables tables;

  public AddedPhotos(Path folder, Campaign campaign) {
    this.folder = folder;
    this.tables = new CampaignTables(campaign);
  }

  /**
   * A picture to be added.
   *
   * @param from where it lies now; it is copied and stays there
   * @param photo its row; its file is where it shall lie, see {@link #place}
   */
  public record Added(Path from, Photo photo) {}

  /** A path in the campaign for a picture, that nothing else has. */
  public String place(String name, List<String> taken) {
    String safe = name.replaceAll("[^\\p{L}\\p{N}._-]+", "-").replaceAll("^[.-]+", "");
    String wanted = FOLDER + (safe.isEmpty() ? "photo" : safe);
    int dot = wanted.lastIndexOf('.');
    String stem = dot < FOLDER.length() ? wanted : wanted.substring(0, dot);
    String extension = dot < FOLDER.length() ? "" : wanted.substring(dot);
    String free = wanted;
    for (int i = 2; taken.contains(free) || Files.exists(folder.resolve(free)); i++) {
      free = stem + "-" + i + extension;
    }
    return free;
  }

  /**
   * Adds them.
   *
   * @throws OutsideException if the disk fails; pictures may lie there then, but no row names them
   */
  public void add(List<Added> photos) {
    try {
      for (Added added : photos) {
        copy(added.from(), folder.resolve(added.photo().file()));
      }
      append(photos.stream().map(Added::photo).toList());
    } catch (IOException | UncheckedIOException e) {
      throw new OutsideException("Writing into " + folder + " failed: " + e.getMessage(), e);
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Path parent = to.toAbsolutePath().getParent();
    Files.createDirectories(parent);
    Path part = Files.createTempFile(parent, ".photo", ".part");
    try {
      Files.copy(from, part, StandardCopyOption.REPLACE_EXISTING);
      Files.move(part, to, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private void append(List<Photo> photos) throws IOException {
    Path file = folder.resolve(Tables.PHOTOS.file());
    List<Map<String, String>> rows = photos.stream().map(tables::photo).toList();
    String before = Files.exists(file) ? Files.readString(file) : "";
    boolean blank = before.lines().allMatch(l -> l.isBlank() || l.startsWith("#"));
    String after =
        blank
            ? before + CampaignWriter.csv(Tables.PHOTOS, rows)
            : before + (before.endsWith("\n") ? "" : "\n") + lines(before, rows);
    Path part = Files.createTempFile(folder, ".photos", ".part");
    try {
      Files.writeString(part, after, StandardCharsets.UTF_8);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /**
   * Rows under the header that is there; a column that it lacks is not needed for a new picture.
   */
  private static String lines(String before, List<Map<String, String>> rows) {
    char separator = CsvTable.separator(before);
    List<String> header = header(before, separator);
    StringWriter text = new StringWriter();
    try (CsvWriter writer =
        CsvWriter.builder()
            .fieldSeparator(separator)
            .lineDelimiter(de.siegmar.fastcsv.writer.LineDelimiter.LF)
            .commentCharacter('#')
            .build(text)) {
      for (Map<String, String> row : rows) {
        writer.writeRecord(header.stream().map(c -> row.getOrDefault(c, "")).toList());
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString();
  }

  private static List<String> header(String text, char separator) {
    String line =
        text.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).findFirst().orElse("");
    List<String> names = new ArrayList<>();
    for (String cell : line.split(String.valueOf(separator), -1)) {
      names.add(cell.replace("\uFEFF", "").replace("\"", "").strip());
    }
    return names;
  }
}
