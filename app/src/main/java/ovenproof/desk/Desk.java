package ovenproof.desk;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.InquiryStep;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.InputException;
import ovenproof.input.NearestWord;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.input.Problems;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Method;
import ovenproof.method.MethodReader;

/**
 * One workspace. Loads and saves the same immutable campaign as a folder does; every change is one
 * transaction and on the disk when the method returns. Safe for use by threads.
 */
public final class Desk implements AutoCloseable {
  private final DeskLocation location;
  private final Clock clock;
  private final Database database;
  private final EvidenceStore evidence;
  private final EntryLog entries;
  private final Jobs jobs;
  private final MethodReader methods;
  private final DeskLock lock;

  private Desk(DeskLocation location, Clock clock, DeskLock lock, Database database) {
    this.location = location;
    this.clock = clock;
    this.lock = lock;
    this.database = database;
    this.evidence = new EvidenceStore(location.evidence());
    this.entries = new EntryLog(database);
    this.jobs = new Jobs(database, clock);
    this.methods = new MethodReader(MeasureRegistry.all().measures());
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

  /** Held while a program works on the desk; a second program is told who holds it. */
  private record DeskLock(RandomAccessFile file, FileLock lock) {
    static DeskLock take(Path folder) {
      try {
        Files.createDirectories(folder);
        RandomAccessFile file = new RandomAccessFile(folder.resolve("desk.lock").toFile(), "rw");
        FileLock lock = tryLock(file);
        if (lock == null) {
          String holder = file.readLine();
          file.close();
          throw held(folder, holder);
        }
        file.setLength(0);
        file.write(
            ("process " + ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.UTF_8));
        return new DeskLock(file, lock);
      } catch (IOException failure) {
        throw new OutsideException(
            "cannot write to the desk's folder " + folder + ": " + failure.getMessage(), failure);
      }
    }

    private static @Nullable FileLock tryLock(RandomAccessFile file) throws IOException {
      try {
        // Past the name of the holder, so that others may read it.
        return file.getChannel().tryLock(1L << 40, 1, false);
      } catch (OverlappingFileLockException heldHere) {
        return null;
      }
    }

    private static OutsideException held(Path folder, @Nullable String holder) {
      return new OutsideException(
          "the desk "
              + folder
              + " is in use by "
              + (holder == null ? "another program" : holder)
              + ". Stop that one, or choose another folder with --desk.",
          new IllegalStateException("locked"));
    }

    void close() {
      try {
        lock.release();
        file.close();
      } catch (IOException alreadyGone) {
        // The system releases the lock with the process.
      }
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
    return database
        .reader()
        .sql("select * from campaign order by created_at desc, id")
        .query(Desk::deskCampaign)
        .list();
  }

  public Optional<DeskCampaign> find(String id) {
    return database
        .reader()
        .sql("select * from campaign where id = ?")
        .param(id)
        .query(Desk::deskCampaign)
        .optional();
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
          insertCampaign(write, id, who, now, null);
          insertDocument(write, id, Document.METHOD, 1, who, now, null, methodText);
          insertDocument(write, id, Document.FIELD, 1, who, now, null, Bodies.text(field));
          return id;
        });
  }

  void insertCampaign(
      Database.Write write, String id, String who, Instant now, @Nullable String job) {
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

  /** The snapshot that measure, verdict and publish read. */
  public Campaign load(String id) {
    Field field = field(id);
    Method method = method(document(id, Document.METHOD).body());
    return assemble(id, field, method);
  }

  /** The snapshot as it would be under another method, for showing a change's effect. */
  public Campaign loadWith(String id, Method method) {
    return assemble(id, field(id), method);
  }

  private Campaign assemble(String id, Field f, Method method) {
    Map<EntryKind, List<Object>> entries = new LinkedHashMap<>();
    for (EntryKind kind : EntryKind.values()) {
      entries.put(kind, new ArrayList<>());
    }
    List<StoredEntry> stored = entries(id);
    Set<String> mended = mended(stored);
    for (StoredEntry entry : stored) {
      boolean folded = entry.kind().mending() == EntryKind.Mending.FOLDED;
      if (!folded || !mended.contains(entry.key())) {
        list(entries, entry.kind()).add(entry.body());
      }
    }
    List<Campaign.Evidence> files =
        attachments(id).stream()
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
    return java.util.Objects.requireNonNull(entries.get(kind));
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

  /** One revision, if there is such. */
  public Optional<Document> document(String id, String name, long revision) {
    return database
        .reader()
        .sql("select * from document where campaign = ? and name = ? and revision = ?")
        .param(id)
        .param(name)
        .param(revision)
        .query(Desk::document)
        .optional();
  }

  /**
   * The newest revision.
   *
   * @throws InputException if the desk has no such campaign
   */
  public Document document(String id, String name) {
    return newest(database.reader(), id, name).orElseThrow(() -> noSuchCampaign(id));
  }

  private static Optional<Document> newest(JdbcClient client, String id, String name) {
    return client
        .sql(
            "select * from document where campaign = ? and name = ? order by revision desc limit 1")
        .param(id)
        .param(name)
        .query(Desk::document)
        .optional();
  }

  /** Every revision, the newest first. */
  public List<Document> revisions(String id, String name) {
    return database
        .reader()
        .sql("select * from document where campaign = ? and name = ? order by revision desc")
        .param(id)
        .param(name)
        .query(Desk::document)
        .list();
  }

  /**
   * Saves the field if nobody else did since {@code revision}.
   *
   * @return the new revision
   * @throws StaleRevisionException with both versions, if somebody did
   */
  public long saveField(String id, long revision, Field field, String who, String why) {
    return save(id, Document.FIELD, revision, Bodies.text(field), who, why);
  }

  /**
   * Saves the method's text, likewise.
   *
   * @throws InputException with every problem of the text
   */
  public long saveMethod(String id, long revision, String text, String who, @Nullable String why) {
    method(text);
    return save(id, Document.METHOD, revision, text, who, why);
  }

  /**
   * Keeps a verdict as it stands; what is kept is never changed.
   *
   * @param revision of the verdict that was kept last, 0 for none
   * @return the number under which it is kept
   */
  public long freeze(String id, long revision, String verdict, String who, String why) {
    return save(id, Document.VERDICT, revision, verdict, who, why);
  }

  /** The newest revision of a document that need not be there. */
  public Optional<Document> find(String id, String name) {
    return revisions(id, name).stream().findFirst();
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
    Instant now = clock.instant();
    return database.write(
        write -> {
          // Holds the campaign's row against other writers; its version stays.
          int held = write.jdbc().update("update campaign set version = version where id = ?", id);
          if (held == 0) {
            throw noSuchCampaign(id);
          }
          Optional<Document> newest = newest(write.sql(), id, name);
          if (newest.isPresent() && newest.get().body().equals(body)) {
            return newest.get().revision();
          }
          if (newest.map(Document::revision).orElse(0L) != revision) {
            throw new StaleRevisionException(newest.orElseThrow(), body);
          }
          insertDocument(write, id, name, revision + 1, who, now, why, body);
          return revision + 1;
        });
  }

  private long save(
      String id, String name, long revision, String body, String who, @Nullable String why) {
    Instant now = clock.instant();
    return database.write(
        write -> {
          nextSeq(write, id, 0);
          Optional<Document> newest = newest(write.sql(), id, name);
          if (newest.isPresent() && newest.get().body().equals(body)) {
            return newest.get().revision();
          }
          if (newest.isPresent() && newest.get().revision() != revision) {
            throw new StaleRevisionException(newest.get(), body);
          }
          insertDocument(write, id, name, revision + 1, who, now, why, body);
          return revision + 1;
        });
  }

  void insertDocument(
      Database.Write write,
      String id,
      String name,
      long revision,
      String who,
      Instant at,
      @Nullable String why,
      String body) {
    write
        .jdbc()
        .update(
            "insert into document (campaign, name, revision, who, at, why, body)"
                + " values (?, ?, ?, ?, ?, ?, ?)",
            id,
            name,
            revision,
            who,
            at.toEpochMilli(),
            why,
            body);
  }

  /**
   * A method from its text.
   *
   * @throws InputException with every problem
   */
  public Method method(String text) {
    Problems problems = new Problems();
    Optional<Method> method = methods.read("method.yaml", text, problems);
    problems.throwIfErrors();
    return method.orElseThrow(() -> new InputException(problems.all()));
  }

  // ---------- entries ----------

  /** Every entry of a campaign in order of receipt. */
  public List<StoredEntry> entries(String id) {
    return entries.entries(id);
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
          long last = nextSeq(write, id, entries.size());
          return insertEntries(write, id, entries, last - entries.size() + 1, now);
        });
  }

  /** Every step of every inquiry, in order of receipt. */
  public List<InquiryStep> inquiries(String id) {
    return entries(id).stream()
        .filter(e -> e.kind() == EntryKind.INQUIRY)
        .map(e -> (InquiryStep) e.body())
        .toList();
  }

  int insertEntries(
      Database.Write write, String id, List<NewEntry> entries, long firstSeq, Instant now) {
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
    return java.util.Arrays.stream(inserted).map(n -> n == 0 ? 0 : 1).sum();
  }

  /** Reserves numbers and holds the campaign against other writers until the transaction ends. */
  private long nextSeq(Database.Write write, String id, int count) {
    int found =
        write
            .jdbc()
            .update(
                "update campaign set version = version + 1, last_seq = last_seq + ? where id = ?",
                count,
                id);
    if (found == 0) {
      throw noSuchCampaign(id);
    }
    return write
        .sql()
        .sql("select last_seq from campaign where id = ?")
        .param(id)
        .query(Long.class)
        .single();
  }

  // ---------- files ----------

  /** The file of that name. */
  public Optional<Attachment> attachment(String id, String path) {
    return database
        .reader()
        .sql("select * from attachment where campaign = ? and path = ?")
        .param(id)
        .param(path)
        .query(Desk::attachment)
        .optional();
  }

  public List<Attachment> attachments(String id) {
    return database
        .reader()
        .sql("select * from attachment where campaign = ? order by seq, path")
        .param(id)
        .query(Desk::attachment)
        .list();
  }

  /**
   * Gives stored evidence a name in a campaign. The same bytes under the same name are attached
   * once; other bytes under a name that is taken get a number behind it.
   *
   * @param path relative, with {@code /}
   * @return the name under which it is attached
   */
  public String attach(String id, String path, EvidenceStore.Stored stored, String who) {
    Instant now = clock.instant();
    return database.write(
        write -> {
          long seq = nextSeq(write, id, 1);
          String name = path;
          for (int n = 2; ; n++) {
            Optional<String> taken =
                write
                    .sql()
                    .sql("select sha256 from attachment where campaign = ? and path = ?")
                    .param(id)
                    .param(name)
                    .query(String.class)
                    .optional();
            if (taken.isEmpty()) {
              insertAttachment(write, id, name, seq, stored, who, now);
              return name;
            }
            if (taken.get().equals(stored.sha256())) {
              return name;
            }
            name = numbered(path, n);
          }
        });
  }

  private static String numbered(String path, int n) {
    int dot = path.lastIndexOf('.');
    int slash = path.lastIndexOf('/');
    return dot > slash + 1
        ? path.substring(0, dot) + "-" + n + path.substring(dot)
        : path + "-" + n;
  }

  void insertAttachment(
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

  Database database() {
    return database;
  }

  private InputException noSuchCampaign(String id) {
    List<String> known = campaigns().stream().map(DeskCampaign::id).toList();
    return new InputException(
        Problem.error(
            Place.of(id),
            "no such campaign",
            "a campaign of this desk",
            NearestWord.remedy(id, known)));
  }

  // ---------- rows ----------

  private static DeskCampaign deskCampaign(ResultSet row, int n) throws SQLException {
    return new DeskCampaign(
        row.getString("id"),
        Instant.ofEpochMilli(row.getLong("created_at")),
        row.getString("created_by"),
        row.getLong("version"));
  }

  private static Document document(ResultSet row, int n) throws SQLException {
    return new Document(
        row.getString("name"),
        row.getLong("revision"),
        row.getString("who"),
        Instant.ofEpochMilli(row.getLong("at")),
        row.getString("why"),
        row.getString("body"));
  }

  private static Attachment attachment(ResultSet row, int n) throws SQLException {
    return new Attachment(
        row.getString("path"),
        row.getLong("seq"),
        row.getString("sha256"),
        row.getLong("bytes"),
        row.getString("who"),
        Instant.ofEpochMilli(row.getLong("at")));
  }

  @Override
  public void close() {
    jobs.close();
    database.close();
    lock.close();
  }
}
