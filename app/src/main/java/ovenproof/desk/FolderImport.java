package ovenproof.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.InquiryStep;
import ovenproof.campaign.Run;
import ovenproof.files.CampaignFolder;
import ovenproof.files.InquiryFile;
import ovenproof.files.LoadedCampaign;

/**
 * Takes a campaign folder into the desk: the whole of it, in one transaction, with every file byte
 * for byte as it was. Kind {@code import} of the desk's jobs.
 */
public final class FolderImport {
  public static final String KIND = "import";

  /** A file larger than this is not evidence of a cooking test. */
  static final long MOST_BYTES = 2_000_000_000L;

  private final Desk desk;
  private final CampaignFolder folders;

  public FolderImport(Desk desk, CampaignFolder folders) {
    this.desk = desk;
    this.folders = folders;
  }

  /** Progress of an import that nobody watches. */
  public interface Watch {
    void at(long done, long total, String message);
  }

  /** Job input: the folder, or a zip file of one. */
  public void register() {
    desk.jobs()
        .register(
            KIND,
            (job, running) -> {
              Path source = Path.of(job.input());
              boolean zip = Files.isRegularFile(source);
              Path folder = zip ? unpacked(source, job.id()) : source;
              String id = take(folder, job.who(), job.id(), running::at);
              if (zip) {
                Unpacking.remove(folder);
                Unpacking.remove(source);
              }
              return id;
            });
  }

  private Path unpacked(Path zip, String job) {
    Path folder = desk.location().incoming().resolve(job);
    Unpacking.remove(folder);
    return Unpacking.campaignFolder(zip, folder);
  }

  /**
   * Imports a folder now.
   *
   * @return the campaign's key
   * @throws ovenproof.input.InputException with every problem of the folder, or if the desk has the
   *     campaign already
   */
  public String take(Path folder, String who) {
    return take(folder, who, null, (done, total, message) -> {});
  }

  private String take(Path folder, String who, @Nullable String job, Watch watch) {
    watch.at(0, 0, "reading the tables");
    LoadedCampaign loaded = folders.load(folder);
    String id = loaded.campaign().info().id();
    if (job != null && madeBy(id, job)) {
      return id;
    }
    Map<String, EvidenceStore.Stored> stored = store(loaded, watch);
    watch.at(1, 1, "writing " + loaded.campaign().runs().size() + " runs");
    String methodText = methodText(loaded.evidence().root());
    List<InquiryStep> inquiries = InquiryFile.read(loaded.evidence().root());
    desk.database()
        .write(
            write -> {
              write(write, loaded.campaign(), methodText, inquiries, stored, who, job);
              return id;
            });
    return id;
  }

  private boolean madeBy(String id, String job) {
    return desk.database()
        .reader()
        .sql("select made_by_job from campaign where id = ? and made_by_job = ?")
        .param(id)
        .param(job)
        .query(String.class)
        .optional()
        .isPresent();
  }

  private Map<String, EvidenceStore.Stored> store(LoadedCampaign loaded, Watch watch) {
    Map<String, EvidenceStore.Stored> stored = new LinkedHashMap<>();
    List<Campaign.Evidence> files = loaded.campaign().evidence();
    long total = files.stream().mapToLong(Campaign.Evidence::bytes).sum();
    long done = 0;
    for (Campaign.Evidence file : files) {
      watch.at(done, total, file.path());
      try (InputStream in = loaded.evidence().open(file.path())) {
        stored.put(file.path(), desk.evidence().put(file.path(), in, MOST_BYTES));
      } catch (IOException failure) {
        throw new UncheckedIOException(failure);
      }
      done += file.bytes();
    }
    return stored;
  }

  private static String methodText(Path folder) {
    try {
      return Files.readString(folder.resolve("method.yaml"), StandardCharsets.UTF_8);
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private void write(
      Database.Write write,
      Campaign campaign,
      String methodText,
      List<InquiryStep> inquiries,
      Map<String, EvidenceStore.Stored> stored,
      String who,
      @Nullable String job) {
    Instant now = desk.clock().instant();
    String id = campaign.info().id();
    desk.campaignRows().insert(write, id, who, now, job);
    insert(write, id, Document.METHOD, methodText, who, now);
    insert(write, id, Document.FIELD, Bodies.text(Field.of(campaign)), who, now);
    List<NewEntry> entries = entries(campaign, who, now);
    add(entries, EntryKind.INQUIRY, inquiries.stream(), who, now);
    desk.entryLog().insert(write, id, entries, 1, now);
    long seq = entries.size();
    for (Map.Entry<String, EvidenceStore.Stored> file : stored.entrySet()) {
      desk.attachmentRows().insert(write, id, file.getKey(), ++seq, file.getValue(), who, now);
    }
    write.jdbc().update("update campaign set last_seq = ? where id = ?", seq, id);
  }

  private void insert(
      Database.Write write, String id, String name, String body, String who, Instant now) {
    DocumentRows.Draft draft = new DocumentRows.Draft(body, who, "imported");
    desk.documentRows().insert(write, id, name, 1, draft, now);
  }

  private List<NewEntry> entries(Campaign campaign, String who, Instant now) {
    List<NewEntry> entries = new ArrayList<>();
    add(entries, EntryKind.RUN, campaign.runs().stream(), who, now);
    add(entries, EntryKind.EVENT, campaign.events().stream(), who, now);
    add(entries, EntryKind.DEVIATION, campaign.deviations().stream(), who, now);
    add(entries, EntryKind.READING, campaign.readings().stream(), who, now);
    add(entries, EntryKind.PIECE, campaign.pieces().stream(), who, now);
    add(entries, EntryKind.RATING, campaign.ratings().stream(), who, now);
    add(entries, EntryKind.FACT, campaign.facts().stream(), who, now);
    add(entries, EntryKind.RATED, campaign.ratedSteps().stream(), who, now);
    add(entries, EntryKind.FEATURE, campaign.features().stream(), who, now);
    add(entries, EntryKind.TRACE, campaign.traces().stream(), who, now);
    add(entries, EntryKind.PHOTO, campaign.photos().stream(), who, now);
    return entries;
  }

  private void add(
      List<NewEntry> entries, EntryKind kind, Stream<?> bodies, String who, Instant now) {
    bodies.forEach(
        body ->
            entries.add(
                new NewEntry(
                    Keys.next(desk.clock()), kind, body, stamp(body, who, now), corrects(body))));
  }

  private static NewEntry.Stamp stamp(Object body, String who, Instant now) {
    if (body instanceof Run run) {
      Instant at = run.started() == null ? now : run.started();
      return NewEntry.Stamp.of(run.by() == null ? who : run.by(), at);
    }
    if (body instanceof Entry entry) {
      Entry.Provenance origin = entry.origin();
      return NewEntry.Stamp.of(
          origin.by() == null ? who : origin.by(), origin.at() == null ? now : origin.at());
    }
    if (body instanceof InquiryStep step) {
      return NewEntry.Stamp.of(step.by(), step.at());
    }
    return NewEntry.Stamp.of(who, now);
  }

  private static @Nullable String corrects(Object body) {
    return body instanceof Entry entry ? entry.origin().corrects() : null;
  }
}
