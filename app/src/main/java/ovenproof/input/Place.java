package ovenproof.input;

/**
 * Where in a file something stands.
 *
 * @param file path relative to the campaign folder, or as the person gave it
 * @param line from 1; 0 when the whole file is meant
 * @param column from 1 (characters); 0 when the whole line is meant
 */
public record Place(String file, int line, int column) {

  public static Place of(String file) {
    return new Place(file, 0, 0);
  }

  @Override
  public String toString() {
    return file + (line > 0 ? ":" + line : "") + (column > 0 ? ":" + column : "");
  }
}
