package ovenproof.evidence;

import java.io.InputStream;
import java.util.Optional;

/** Where a campaign's files come from: a folder, or the desk's store. Safe for use by threads. */
public interface EvidenceSource {

  /**
   * Opens a file.
   *
   * @param path as written in the campaign: relative, with forward slashes
   * @throws ovenproof.input.InputException if there is no such file, or the path leaves the
   *     campaign
   * @throws ovenproof.input.OutsideException if it cannot be read
   */
  InputStream open(String path);

  /** SHA-256 in lower-case hex, or empty if there is no such file. */
  Optional<String> fingerprint(String path);

  /** Size in bytes, or empty if there is no such file. */
  Optional<Long> size(String path);

  /** All bytes, for files that fit in memory; refuses more than {@code limit}. */
  byte[] bytes(String path, long limit);
}
