package ovenproof.web;

import org.jspecify.annotations.Nullable;

/** Names of files as browsers send them. */
public final class FileNames {
  private static final int LONGEST = 120;

  private FileNames() {}

  /** The last part of what the browser sends, without what file systems or people trip over. */
  public static String safe(@Nullable String sent) {
    String last =
        sent == null
            ? ""
            : sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1);
    String plain = last.replaceAll("[^\\p{L}\\p{N}._ -]", "-").replaceAll("^\\.+", "").strip();
    return plain.isEmpty() ? "file" : plain.substring(Math.max(0, plain.length() - LONGEST));
  }
}
