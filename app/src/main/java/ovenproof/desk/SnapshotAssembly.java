package ovenproof.desk;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import ovenproof.campaign.Campaign;
import ovenproof.method.Method;

/** Puts a campaign together from its documents, entries and files, as a folder would say it. */
final class SnapshotAssembly {

  private SnapshotAssembly() {}

  static Campaign of(
      Field f, Method method, List<StoredEntry> stored, List<Attachment> attachments) {
    Map<EntryKind, List<Object>> entries = new LinkedHashMap<>();
    for (EntryKind kind : EntryKind.values()) {
      entries.put(kind, new ArrayList<>());
    }
    Set<String> mended = mended(stored);
    for (StoredEntry entry : stored) {
      boolean folded = entry.kind().mending() == EntryKind.Mending.FOLDED;
      if (!folded || !mended.contains(entry.key())) {
        list(entries, entry.kind()).add(entry.body());
      }
    }
    List<Campaign.Evidence> files =
        attachments.stream()
            .map(a -> new Campaign.Evidence(a.path(), a.sha256(), a.bytes()))
            .toList();
    return new Campaign(
        f.info(),
        method,
        f.products(),
        f.leftOut(),
        f.specimens(),
        f.prices(),
        of(entries, EntryKind.FACT),
        of(entries, EntryKind.RATED),
        of(entries, EntryKind.FEATURE),
        f.settingCards(),
        f.plan(),
        of(entries, EntryKind.RUN),
        f.notRun(),
        of(entries, EntryKind.EVENT),
        of(entries, EntryKind.DEVIATION),
        of(entries, EntryKind.READING),
        f.lots(),
        of(entries, EntryKind.PIECE),
        of(entries, EntryKind.RATING),
        f.instruments(),
        f.calibrations(),
        of(entries, EntryKind.TRACE),
        of(entries, EntryKind.PHOTO),
        files);
  }

  private static List<Object> list(Map<EntryKind, List<Object>> entries, EntryKind kind) {
    return Objects.requireNonNull(entries.get(kind));
  }

  /** The cast is safe: an entry is only stored with a body of its kind's class. */
  @SuppressWarnings("unchecked")
  private static <T> List<T> of(Map<EntryKind, List<Object>> entries, EntryKind kind) {
    return (List<T>) list(entries, kind);
  }

  private static Set<String> mended(List<StoredEntry> entries) {
    Set<String> mended = new HashSet<>();
    entries.forEach(
        e -> {
          if (e.corrects() != null) {
            mended.add(e.corrects());
          }
        });
    return mended;
  }
}
