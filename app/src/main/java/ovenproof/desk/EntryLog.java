package ovenproof.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The entries of campaigns, each read once: nothing is edited or deleted, so what was read stays
 * true and only later rows are fetched. Keeps the campaigns used last. Safe for threads.
 */
final class EntryLog {
  private static final int KEPT = 8;

  private final Database database;
  private final Map<String, Read> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Read> eldest) {
          return size() > KEPT;
        }
      };

  EntryLog(Database database) {
    this.database = database;
  }

  /** What was read of one campaign. */
  private record Read(List<Raw> raw, Set<String> mended, List<StoredEntry> entries) {
    static final Read NOTHING = new Read(List.of(), Set.of(), List.of());

    long last() {
      return raw.isEmpty() ? 0 : raw.get(raw.size() - 1).seq();
    }

    Read with(List<Raw> later) {
      List<Raw> all = new ArrayList<>(raw);
      all.addAll(later);
      Set<String> mendedNow = new HashSet<>(mended);
      for (Raw row : later) {
        if (row.corrects() != null) {
          mendedNow.add(row.corrects());
        }
      }
      List<StoredEntry> read = new ArrayList<>(all.size());
      for (int i = 0; i < all.size(); i++) {
        Raw row = all.get(i);
        boolean asBefore =
            i < raw.size() && mended.contains(row.key()) == mendedNow.contains(row.key());
        read.add(asBefore ? entries.get(i) : row.read(mendedNow));
      }
      return new Read(all, mendedNow, List.copyOf(read));
    }
  }

  private record Raw(
      String key,
      long seq,
      EntryKind kind,
      String who,
      Instant deviceTime,
      long offset,
      @Nullable Long uncertainty,
      Instant receivedAt,
      @Nullable String corrects,
      String body) {
    StoredEntry read(Set<String> mended) {
      Object entry = Bodies.entry(kind, key, body, mended);
      return new StoredEntry(
          key, seq, kind, who, deviceTime, offset, uncertainty, receivedAt, corrects, entry);
    }
  }

  /** Every entry of a campaign in order of receipt. */
  synchronized List<StoredEntry> entries(String campaign) {
    Read before = kept.getOrDefault(campaign, Read.NOTHING);
    List<Raw> later =
        database
            .reader()
            .sql("select * from entry where campaign = ? and seq > ? order by seq")
            .param(campaign)
            .param(before.last())
            .query(EntryLog::raw)
            .list();
    if (later.isEmpty()) {
      return before.entries();
    }
    Read now = before.with(later);
    kept.put(campaign, now);
    return now.entries();
  }

  /**
   * Adds entries with numbers from {@code firstSeq} on; one whose key is there already is passed
   * over.
   *
   * @return how many were new
   */
  int insert(Database.Write write, String id, List<NewEntry> entries, long firstSeq, Instant now) {
    List<Object[]> rows = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      NewEntry e = entries.get(i);
      rows.add(
          new Object[] {
            e.key(),
            id,
            firstSeq + i,
            e.kind().word(),
            e.stamp().who(),
            e.stamp().deviceTime().toEpochMilli(),
            e.stamp().clockOffsetMillis(),
            e.stamp().clockUncertaintyMillis(),
            now.toEpochMilli(),
            e.corrects(),
            Bodies.text(e.body())
          });
    }
    int[] inserted =
        write
            .jdbc()
            .batchUpdate(
                "insert into entry (id, campaign, seq, kind, who, device_time, clock_offset_ms,"
                    + " clock_uncertainty_ms, received_at, corrects, body)"
                    + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (id) do nothing",
                rows);
    return Arrays.stream(inserted).map(n -> n == 0 ? 0 : 1).sum();
  }

  private static Raw raw(ResultSet row, int n) throws SQLException {
    long uncertainty = row.getLong("clock_uncertainty_ms");
    Long known = row.wasNull() ? null : uncertainty;
    return new Raw(
        row.getString("id"),
        row.getLong("seq"),
        EntryKind.named(row.getString("kind")),
        row.getString("who"),
        Instant.ofEpochMilli(row.getLong("device_time")),
        row.getLong("clock_offset_ms"),
        known,
        Instant.ofEpochMilli(row.getLong("received_at")),
        row.getString("corrects"),
        row.getString("body"));
  }
}
