package ovenproof.files;

import java.util.Optional;
import ovenproof.input.Written;

/** Whether the files that tables name are there and can be what they are said to be. */
final class EvidenceChecks {
  private final Context context;

  EvidenceChecks(Context context, Sections sections) {
    this.context = context;
  }

  void run() {
    context
        .rows()
        .forEach(
            (table, rows) ->
                table.columns().stream()
                    .filter(c -> c.kind() == Column.Kind.PATH)
                    .forEach(c -> rows.forEach(row -> row.find(c.name()).ifPresent(this::path))));
  }

  private void path(Written written) {
    Optional<FolderEvidence.Refusal> refusal = context.evidence().refusal(written.text());
    if (refusal.isPresent()) {
      written.error(refusal.get().expected(), refusal.get().remedy());
      return;
    }
    Optional<Long> size = context.evidence().size(written.text());
    if (size.isEmpty()) {
      written.error("a file of the campaign folder", "copy it there, or correct the name");
    } else if (size.get() == 0) {
      written.error("a file with something in it", "it is empty (0 bytes): copy it again");
    }
  }
}
