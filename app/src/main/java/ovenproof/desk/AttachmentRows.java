package ovenproof.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The table of attachments: which stored bytes have which name in which campaign. */
final class AttachmentRows {
  private final Database database;
  private final CampaignRows campaigns;
  private final Clock clock;

  AttachmentRows(Database database, CampaignRows campaigns, Clock clock) {
    this.database = database;
    this.campaigns = campaigns;
    this.clock = clock;
  }

  /** The file of that name. */
  Optional<Attachment> named(String id, String path) {
    return database
        .reader()
        .sql("select * from attachment where campaign = ? and path = ?")
        .param(id)
        .param(path)
        .query(AttachmentRows::row)
        .optional();
  }

  /** All files of a campaign in order of receipt. */
  List<Attachment> of(String id) {
    return database
        .reader()
        .sql("select * from attachment where campaign = ? order by seq, path")
        .param(id)
        .query(AttachmentRows::row)
        .list();
  }

  /**
   * Gives stored evidence a name in a campaign. The same bytes under the same name are attached
   * once; other bytes under a name that is taken get a number behind it.
   *
   * @param path relative, with {@code /}
   * @return the name under which it is attached
   */
  String attach(String id, String path, EvidenceStore.Stored stored, String who) {
    return database.write(
        write -> {
          long seq = campaigns.reserve(write, id, 1);
          String name = path;
          Optional<String> taken = fingerprint(write, id, name);
          for (int n = 2; taken.isPresent() && !taken.get().equals(stored.sha256()); n++) {
            name = numbered(path, n);
            taken = fingerprint(write, id, name);
          }
          if (taken.isEmpty()) {
            insert(write, id, name, seq, stored, who, clock.instant());
          }
          return name;
        });
  }

  private static Optional<String> fingerprint(Database.Write write, String id, String path) {
    return write
        .sql()
        .sql("select sha256 from attachment where campaign = ? and path = ?")
        .param(id)
        .param(path)
        .query(String.class)
        .optional();
  }

  private static String numbered(String path, int n) {
    int dot = path.lastIndexOf('.');
    int slash = path.lastIndexOf('/');
    return dot > slash + 1
        ? path.substring(0, dot) + "-" + n + path.substring(dot)
        : path + "-" + n;
  }

  void insert(
      Database.Write write,
      String id,
      String path,
      long seq,
      EvidenceStore.Stored stored,
      String who,
      Instant now) {
    write
        .jdbc()
        .update(
            "insert into attachment (campaign, path, seq, sha256, bytes, who, at)"
                + " values (?, ?, ?, ?, ?, ?, ?)",
            id,
            path,
            seq,
            stored.sha256(),
            stored.bytes(),
            who,
            now.toEpochMilli());
  }

  private static Attachment row(ResultSet row, int n) throws SQLException {
    return new Attachment(
        row.getString("path"),
        row.getLong("seq"),
        row.getString("sha256"),
        row.getLong("bytes"),
        row.getString("who"),
        Instant.ofEpochMilli(row.getLong("at")));
  }
}
