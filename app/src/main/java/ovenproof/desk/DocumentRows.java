package ovenproof.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The table of documents: every revision of every text, and the comparison before one is added. */
final class DocumentRows {
  private final Database database;
  private final CampaignRows campaigns;
  private final Clock clock;

  DocumentRows(Database database, CampaignRows campaigns, Clock clock) {
    this.database = database;
    this.campaigns = campaigns;
    this.clock = clock;
  }

  /**
   * What somebody wants to save.
   *
   * @param why in the words of who saves it
   */
  record Draft(String body, String who, @Nullable String why) {}

  /** One revision, if there is such. */
  Optional<Document> revision(String id, String name, long revision) {
    return database
        .reader()
        .sql("select * from document where campaign = ? and name = ? and revision = ?")
        .param(id)
        .param(name)
        .param(revision)
        .query(DocumentRows::row)
        .optional();
  }

  /** The newest revision, if there is any. */
  Optional<Document> newest(String id, String name) {
    return newest(database.reader(), id, name);
  }

  private static Optional<Document> newest(JdbcClient client, String id, String name) {
    return client
        .sql(
            "select * from document where campaign = ? and name = ? order by revision desc limit 1")
        .param(id)
        .param(name)
        .query(DocumentRows::row)
        .optional();
  }

  /** Every revision, the newest first. */
  List<Document> revisions(String id, String name) {
    return database
        .reader()
        .sql("select * from document where campaign = ? and name = ? order by revision desc")
        .param(id)
        .param(name)
        .query(DocumentRows::row)
        .list();
  }

  /**
   * Saves a document that the verdict rests on: the campaign is one version newer then.
   *
   * @return the new revision; the same as before when nothing is different
   * @throws StaleRevisionException with both versions, if somebody else saved since {@code
   *     revision}
   */
  long save(String id, String name, long revision, Draft draft) {
    return database.write(
        write -> {
          campaigns.reserve(write, id, 0);
          return replace(write, id, name, revision, draft);
        });
  }

  /** Saves a document that the verdict does not rest on, likewise; the campaign's version stays. */
  long saveText(String id, String name, long revision, Draft draft) {
    return database.write(
        write -> {
          campaigns.hold(write, id);
          return replace(write, id, name, revision, draft);
        });
  }

  private long replace(Database.Write write, String id, String name, long revision, Draft draft) {
    Optional<Document> newest = newest(write.sql(), id, name);
    if (newest.isPresent() && newest.get().body().equals(draft.body())) {
      return newest.get().revision();
    }
    if (newest.isPresent() && newest.get().revision() != revision) {
      throw new StaleRevisionException(newest.get(), draft.body());
    }
    if (newest.isEmpty() && revision != 0) {
      throw new IllegalArgumentException("revision must be 0 where nothing was saved: " + revision);
    }
    insert(write, id, name, revision + 1, draft, clock.instant());
    return revision + 1;
  }

  void insert(
      Database.Write write, String id, String name, long revision, Draft draft, Instant at) {
    write
        .jdbc()
        .update(
            "insert into document (campaign, name, revision, who, at, why, body)"
                + " values (?, ?, ?, ?, ?, ?, ?)",
            id,
            name,
            revision,
            draft.who(),
            at.toEpochMilli(),
            draft.why(),
            draft.body());
  }

  private static Document row(ResultSet row, int n) throws SQLException {
    return new Document(
        row.getString("name"),
        row.getLong("revision"),
        row.getString("who"),
        Instant.ofEpochMilli(row.getLong("at")),
        row.getString("why"),
        row.getString("body"));
  }
}
