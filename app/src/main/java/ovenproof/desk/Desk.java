package ovenproof.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.InquiryStep;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.method.Method;

/**
 * One workspace. Loads and saves the same immutable campaign as a folder does; every change is one
 * transaction and on the disk when the method returns. Safe for use by threads.
 */
public final class Desk implements AutoCloseable {
  private final DeskLocation location;
  private final Clock clock;
  private final Database database;
  private final EvidenceStore evidence;
  private final CampaignRows campaigns;
  private final DocumentRows documents;
  private final AttachmentRows attachments;
  private final EntryLog log;
  private final Jobs jobs;
  private final KnownMethods methods;
  private final DeskLock lock;

  private Desk(DeskLocation location, Clock clock, DeskLock lock, Database database) {
    this.location = location;
    this.clock = clock;
    this.lock = lock;
    this.database = database;
    this.evidence = new EvidenceStore(location.evidence());
    this.campaigns = new CampaignRows(database);
    this.documents = new DocumentRows(database, campaigns, clock);
    this.attachments = new AttachmentRows(database, campaigns, clock);
    this.log = new EntryLog(database);
    this.jobs = new Jobs(database, clock);
    this.methods = new KnownMethods();
  }

  /**
   * Opens a desk, making it where there is none.
   *
   * @throws OutsideException if another program holds it, or folder or database cannot be used
   */
  public static Desk open(DeskLocation location, Clock clock) {
    DeskLock lock = DeskLock.take(location.folder());
    try {
      Files.createDirectories(location.incoming());
      Files.createDirectories(location.outgoing());
      System.setProperty("org.sqlite.tmpdir", location.folder().toString());
      Desk desk = new Desk(location, clock, lock, Database.open(location));
      desk.evidence.sweep();
      return desk;
    } catch (IOException failure) {
      lock.close();
      throw new OutsideException(
          "cannot write to the desk's folder " + location.folder() + ": " + failure.getMessage(),
          failure);
    } catch (RuntimeException failure) {
      lock.close();
      throw failure;
    }
  }

  public DeskLocation location() {
    return location;
  }

  public Clock clock() {
    return clock;
  }

  public EvidenceStore evidence() {
    return evidence;
  }

  public Jobs jobs() {
    return jobs;
  }

  // ---------- campaigns ----------

  /** All campaigns, the newest first. */
  public List<DeskCampaign> campaigns() {
    return campaigns.all();
  }

  public Optional<DeskCampaign> find(String id) {
    return campaigns.find(id);
  }

  /**
   * Begins a campaign.
   *
   * @throws InputException if there is one of that key already
   */
  public void create(Field field, String methodText, String who) {
    method(methodText);
    String id = field.info().id();
    Instant now = clock.instant();
    database.write(
        write -> {
          campaigns.insert(write, id, who, now, null);
          documents.insert(
              write, id, Document.METHOD, 1, new DocumentRows.Draft(methodText, who, null), now);
          documents.insert(
              write,
              id,
              Document.FIELD,
              1,
              new DocumentRows.Draft(Bodies.text(field), who, null),
              now);
          return id;
        });
  }

  /** The snapshot that measure, verdict and publish read. */
  public Campaign load(String id) {
    Field field = field(id);
    Method method = method(document(id, Document.METHOD).body());
    return SnapshotAssembly.of(field, method, entries(id), attachments(id));
  }

  /** The snapshot as it would be under another method, for showing a change's effect. */
  public Campaign loadWith(String id, Method method) {
    return SnapshotAssembly.of(field(id), method, entries(id), attachments(id));
  }

  /** The campaign's files. */
  public EvidenceSource evidenceOf(String id) {
    Map<String, Attachment> byPath = new LinkedHashMap<>();
    attachments(id).forEach(a -> byPath.put(a.path(), a));
    return new DeskEvidence(evidence, byPath);
  }

  // ---------- documents ----------

  public Field field(String id) {
    return field(document(id, Document.FIELD));
  }

  /** The field that a revision of its document says. */
  public Field field(Document document) {
    return Bodies.field(document.body());
  }

  /**
   * The newest revision.
   *
   * @throws InputException if the desk has no such campaign
   */
  public Document document(String id, String name) {
    return documents.newest(id, name).orElseThrow(() -> campaigns.none(id));
  }

  /** One revision, if there is such. */
  public Optional<Document> document(String id, String name, long revision) {
    return documents.revision(id, name, revision);
  }

  /** Every revision, the newest first. */
  public List<Document> revisions(String id, String name) {
    return documents.revisions(id, name);
  }

  /**
   * Saves the field if nobody else did since {@code revision}.
   *
   * @return the new revision
   * @throws StaleRevisionException with both versions, if somebody did
   */
  public long saveField(String id, long revision, Field field, String who, String why) {
    return documents.save(
        id, Document.FIELD, revision, new DocumentRows.Draft(Bodies.text(field), who, why));
  }

  /**
   * Saves the method's text, likewise.
   *
   * @throws InputException with every problem of the text
   */
  public long saveMethod(String id, long revision, String text, String who, @Nullable String why) {
    method(text);
    return documents.save(id, Document.METHOD, revision, new DocumentRows.Draft(text, who, why));
  }

  /**
   * Keeps a verdict as it stands; what is kept is never changed.
   *
   * @param revision of the verdict that was kept last, 0 for none
   * @return the number under which it is kept
   */
  public long freeze(String id, long revision, String verdict, String who, String why) {
    return documents.save(
        id, Document.VERDICT, revision, new DocumentRows.Draft(verdict, who, why));
  }

  /** The newest revision of a document that need not be there. */
  public Optional<Document> find(String id, String name) {
    return documents.newest(id, name);
  }

  /**
   * Saves a document that the verdict does not rest on, if nobody else did since {@code revision}.
   *
   * @param revision the one that was read; 0 when there was none
   * @return the new revision; the same as before when nothing is different
   * @throws StaleRevisionException with both versions, if somebody did
   */
  public long saveText(
      String id, String name, long revision, String body, String who, @Nullable String why) {
    if (Set.of(Document.METHOD, Document.FIELD, Document.VERDICT, "").contains(name)) {
      throw new IllegalArgumentException("name must not be a document of the verdict: " + name);
    }
    return documents.saveText(id, name, revision, new DocumentRows.Draft(body, who, why));
  }

  /**
   * A method from its text.
   *
   * @throws InputException with every problem
   */
  public Method method(String text) {
    return methods.of(text);
  }

  // ---------- entries ----------

  /** Every entry of a campaign in order of receipt. */
  public List<StoredEntry> entries(String id) {
    return log.entries(id);
  }

  /**
   * Appends entries, all or none. An entry whose key is there already is not appended again.
   *
   * @return how many were new
   */
  public int append(String id, List<NewEntry> entries) {
    Instant now = clock.instant();
    return database.write(
        write -> {
          long last = campaigns.reserve(write, id, entries.size());
          return log.insert(write, id, entries, last - entries.size() + 1, now);
        });
  }

  /** Every step of every inquiry, in order of receipt. */
  public List<InquiryStep> inquiries(String id) {
    return entries(id).stream()
        .filter(e -> e.kind() == EntryKind.INQUIRY)
        .map(e -> (InquiryStep) e.body())
        .toList();
  }

  // ---------- files ----------

  /** The file of that name. */
  public Optional<Attachment> attachment(String id, String path) {
    return attachments.named(id, path);
  }

  /** All files of a campaign in order of receipt. */
  public List<Attachment> attachments(String id) {
    return attachments.of(id);
  }

  /**
   * Gives stored evidence a name in a campaign. The same bytes under the same name are attached
   * once; other bytes under a name that is taken get a number behind it.
   *
   * @param path relative, with {@code /}
   * @return the name under which it is attached
   */
  public String attach(String id, String path, EvidenceStore.Stored stored, String who) {
    return attachments.attach(id, path, stored, who);
  }

  // ---------- for the rest of this package ----------

  CampaignRows campaignRows() {
    return campaigns;
  }

  DocumentRows documentRows() {
    return documents;
  }

  AttachmentRows attachmentRows() {
    return attachments;
  }

  EntryLog entryLog() {
    return log;
  }

  Database database() {
    return database;
  }

  @Override
  public void close() {
    jobs.close();
    database.close();
    lock.close();
  }
}
