package ovenproof.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.input.InputException;
import ovenproof.input.NearestWord;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** The table of campaigns: one row each, and the row that a writer holds against the others. */
final class CampaignRows {
  private final Database database;

  CampaignRows(Database database) {
    this.database = database;
  }

  /** All campaigns, the newest first. */
  List<DeskCampaign> all() {
    return database
        .reader()
        .sql("select * from campaign order by created_at desc, id")
        .query(CampaignRows::row)
        .list();
  }

  Optional<DeskCampaign> find(String id) {
    return database
        .reader()
        .sql("select * from campaign where id = ?")
        .param(id)
        .query(CampaignRows::row)
        .optional();
  }

  /**
   * Begins a campaign.
   *
   * @param job that made it, if one did: when that job starts again it knows its own work
   * @throws InputException if there is one of that key already
   */
  void insert(Database.Write write, String id, String who, Instant now, @Nullable String job) {
    int made =
        write
            .jdbc()
            .update(
                "insert into campaign (id, created_at, created_by, made_by_job, version, last_seq)"
                    + " values (?, ?, ?, ?, 1, 0) on conflict (id) do nothing",
                id,
                now.toEpochMilli(),
                who,
                job);
    if (made == 0) {
      throw new InputException(
          Problem.error(
              Place.of("campaign.yaml"),
              "campaign \"" + id + "\", which is on this desk already",
              "a key of its own",
              "write another key after \"campaign:\""));
    }
  }

  /**
   * Holds the campaign's row against other writers until the transaction ends; its version stays.
   *
   * @throws InputException if the desk has no such campaign
   */
  void hold(Database.Write write, String id) {
    int held = write.jdbc().update("update campaign set version = version where id = ?", id);
    if (held == 0) {
      throw none(id);
    }
  }

  /**
   * Reserves numbers, makes the campaign one version newer and holds it against other writers until
   * the transaction ends.
   *
   * @return the last number reserved
   * @throws InputException if the desk has no such campaign
   */
  long reserve(Database.Write write, String id, int count) {
    int found =
        write
            .jdbc()
            .update(
                "update campaign set version = version + 1, last_seq = last_seq + ? where id = ?",
                count,
                id);
    if (found == 0) {
      throw none(id);
    }
    return write
        .sql()
        .sql("select last_seq from campaign where id = ?")
        .param(id)
        .query(Long.class)
        .single();
  }

  /** What is said of a key that no campaign has, with the one it is most like. */
  InputException none(String id) {
    List<String> known = all().stream().map(DeskCampaign::id).toList();
    return new InputException(
        Problem.error(
            Place.of(id),
            "no such campaign",
            "a campaign of this desk",
            NearestWord.remedy(id, known)));
  }

  private static DeskCampaign row(ResultSet row, int n) throws SQLException {
    return new DeskCampaign(
        row.getString("id"),
        Instant.ofEpochMilli(row.getLong("created_at")),
        row.getString("created_by"),
        row.getLong("version"));
  }
}
