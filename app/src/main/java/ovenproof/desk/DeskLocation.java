package ovenproof.desk;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a desk lies.
 *
 * @param folder evidence, temporary files and, by default, the database
 * @param jdbcUrl {@code jdbc:postgresql://…} with user and password as the driver takes them; null
 *     for a SQLite file in {@code folder}
 */
public record DeskLocation(Path folder, @Nullable String jdbcUrl) {

  public static DeskLocation sqlite(Path folder) {
    return new DeskLocation(folder, null);
  }

  Path evidence() {
    return folder.resolve("evidence");
  }

  Path incoming() {
    return folder.resolve("incoming");
  }

  Path outgoing() {
    return folder.resolve("outgoing");
  }

  /** The URL without what may be secret in it. */
  public String shown() {
    return jdbcUrl == null
        ? folder.resolve("desk.db").toString()
        : jdbcUrl.replaceAll("\\?.*", "").replaceAll("//[^/@]*@", "//");
  }
}
