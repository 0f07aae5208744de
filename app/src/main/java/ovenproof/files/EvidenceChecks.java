package ovenproof.files;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import ovenproof.input.Written;

/** Whether the files that tables name are there and can be what they are said to be. */
final class EvidenceChecks {
  private final Context context;
  private final Map<String, String> pathOfContent = new HashMap<>();

  EvidenceChecks(Context context) {
    this.context = context;
  }

  void run() {
    context
        .rows()
        .forEach(
            (table, rows) ->
                table.columns().stream()
                    .filter(c -> c.kind() == Column.Kind.PATH)
                    .forEach(
                        c -> rows.forEach(r -> r.find(c.name()).ifPresent(w -> path(table, w)))));
  }

  private void path(Table table, Written written) {
    Optional<FolderEvidence.Refusal> refusal = context.evidence().refusal(written.text());
    if (refusal.isPresent()) {
      written.error(refusal.get().expected(), refusal.get().remedy());
      return;
    }
    Optional<FolderEvidence.Fingerprint> file = context.evidence().scan(written.text());
    if (file.isEmpty()) {
      written.error("a file of the campaign folder", "copy it there, or correct the name");
    } else if (file.get().bytes() == 0) {
      written.error("a file with something in it", "it is empty (0 bytes): copy it again");
    } else if (table == Tables.TRACES) {
      text(written, file.get());
    } else {
      new PictureChecks(context.evidence()).check(written);
      twice(written, file.get());
    }
  }

  private static void text(Written written, FolderEvidence.Fingerprint file) {
    if (FolderEvidence.hasEndlessLine(file)) {
      written.error(
          "a logger's file with lines of ordinary length",
          "line " + file.longestLineNumber() + " is longer than 1 MiB: is it a text file?");
    }
  }

  /** The same picture under two names is usually a mix-up of samples. */
  private void twice(Written written, FolderEvidence.Fingerprint file) {
    String other = pathOfContent.putIfAbsent(file.sha256(), written.text());
    if (other != null && !other.equals(written.text())) {
      written.warning("a picture of its own", "its content is the same as that of " + other);
    }
  }
}
