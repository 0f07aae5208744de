package ovenproof.tracepage;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import ovenproof.bench.PhotoProposals;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.campaign.TraceBinding.ReadAs;
import ovenproof.core.trace.TimeAxis;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.EvidenceStore;
import ovenproof.desk.Keys;
import ovenproof.desk.NewEntry;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.evidence.photo.PhotoSorting;
import ovenproof.evidence.photo.RunLabels;
import ovenproof.input.InputException;
import ovenproof.tracepage.Incoming.Dropped;
import ovenproof.tracepage.PhotoLooks.PhotoLook;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Workbench;

/** Files that are read and explained before they are kept. */
@Controller
class DropController {
  private static final long MOST_BYTES = 500_000_000L;

  /** Photographs on one page: more than a tray's worth, and small enough to load at once. */
  private static final int PHOTOS_AT_ONCE = 40;

  private static final int TRIES = 16;
  private static final int BETWEEN_TRIES_MILLIS = 50;

  private final Desk desk;
  private final Workbench workbench;
  private final Incoming incoming;
  private final PhotoLooks looks = new PhotoLooks();

  DropController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
    this.incoming = new Incoming(desk.location().folder());
  }

  /** A dropped log on the page. */
  public record LogSheet(int index, LogFile log, List<RunChoice> likely) {}

  /** A dropped photograph on the page. */
  public record PhotoRow(
      int index,
      String name,
      String run,
      int batch,
      String face,
      String why,
      String trouble,
      boolean keep) {}

  @PostMapping("/c/{cid}/drop")
  @MayUse(Audience.OWNER)
  String drop(
      @PathVariable String cid,
      @RequestParam String drop,
      @RequestParam("files") List<MultipartFile> files)
      throws IOException {
    workbench.sheet(cid);
    incoming.sweep(desk.clock().instant());
    for (MultipartFile file : files) {
      String name = file.getOriginalFilename();
      // An empty file is said to be empty; a form without a file sends one without a name.
      if (name != null && !name.isBlank()) {
        try (InputStream in = file.getInputStream()) {
          incoming.take(drop, fileName(name), in);
        }
      }
    }
    return "redirect:/c/" + cid + "/drop?drop=" + drop;
  }

  @GetMapping("/c/{cid}/drop")
  @MayUse(Audience.OWNER)
  String look(
      @PathVariable String cid,
      @RequestParam String drop,
      @RequestParam Map<String, String> typed,
      Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<Dropped> photos = incoming.files(drop).stream().filter(Dropped::picture).toList();
    looks.begin(photos, f -> fresh(c, f));
    int done = afterAMoment(photos);
    if (done < photos.size()) {
      model.addAttribute("cid", cid);
      model.addAttribute("campaign", c);
      model.addAttribute("drop", drop);
      model.addAttribute("here", "/c/" + cid + "/drop?drop=" + drop);
      model.addAttribute("done", done);
      model.addAttribute("total", photos.size());
      return "tracepage/looking";
    }
    show(cid, drop, typed, new FormProblems(), model);
    return "tracepage/drop";
  }

  /** How many were looked at, after all of them or after a moment. */
  private int afterAMoment(List<Dropped> photos) {
    int done = looks.done(photos);
    for (int tries = 0; done < photos.size() && tries < TRIES; tries++) {
      try {
        Thread.sleep(BETWEEN_TRIES_MILLIS);
      } catch (InterruptedException stopping) {
        Thread.currentThread().interrupt();
        return done;
      }
      done = looks.done(photos);
    }
    return done;
  }

  private void show(
      String cid, String drop, Map<String, String> typed, FormProblems problems, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<Dropped> files = incoming.files(drop);
    List<LogSheet> logs = new ArrayList<>();
    List<Dropped> photos = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      if (files.get(i).picture()) {
        photos.add(files.get(i));
      } else {
        logs.add(logSheet(c, files.get(i), i, typed, problems));
      }
    }
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("drop", drop);
    model.addAttribute("logs", logs);
    model.addAttribute("photos", photoRows(c, files, photos));
    model.addAttribute("photosInAll", photos.size());
    model.addAttribute("targets", RunChoice.all(c));
    model.addAttribute("runs", c.runs());
    model.addAttribute("faces", faces(c));
    model.addAttribute("places", LogFile.PLACES);
    model.addAttribute("problems", problems.byField());
  }

  private LogSheet logSheet(
      Campaign c, Dropped file, int index, Map<String, String> typed, FormProblems problems) {
    boolean asked = String.valueOf(index).equals(typed.get("index"));
    ReadAs as = asked ? LogFile.answers(typed, problems) : null;
    LogFile log = LogFile.of(file.name(), incoming.bytes(file), as);
    return new LogSheet(index, log, likely(c, log));
  }

  /** Runs that went on while the file was written; all of them unknown when it has no date. */
  private static List<RunChoice> likely(Campaign c, LogFile log) {
    TimeAxis time = log.file().time();
    Long start = time.startEpochMillis();
    double[] seconds = time.seconds();
    if (start == null || seconds.length == 0) {
      return List.of();
    }
    ZoneId zone =
        time.zone() == TimeAxis.Zone.ABSOLUTE ? java.time.ZoneOffset.UTC : c.info().zone();
    Instant from =
        java.time.LocalDateTime.ofInstant(Instant.ofEpochMilli(start), java.time.ZoneOffset.UTC)
            .atZone(zone)
            .toInstant();
    Instant to = from.plusMillis((long) (1000 * seconds[seconds.length - 1]));
    return new PhotoProposals(c)
        .times().stream()
            .filter(r -> !r.start().isAfter(to) && !r.end().isBefore(from))
            .map(r -> RunChoice.of(c, c.run(r.run()).orElseThrow()))
            .limit(12)
            .toList();
  }

  private List<PhotoRow> photoRows(Campaign c, List<Dropped> all, List<Dropped> photos) {
    List<PhotoLook> seen = photos.stream().map(f -> seen(c, f)).toList();
    List<PhotoSorting.Shot> shots = new ArrayList<>();
    for (int i = 0; i < photos.size(); i++) {
      PhotoLook look = seen.get(i);
      shots.add(
          new PhotoSorting.Shot(photos.get(i).name(), look.sha256(), look.taken(), look.labels()));
    }
    List<PhotoProposals.Proposal> proposals = new PhotoProposals(c).of(shots);
    List<PhotoRow> rows = new ArrayList<>();
    for (int i = 0; i < Math.min(PHOTOS_AT_ONCE, photos.size()); i++) {
      PhotoProposals.Proposal proposal = proposals.get(i);
      rows.add(
          new PhotoRow(
              all.indexOf(photos.get(i)),
              photos.get(i).name(),
              proposal.run(),
              proposal.batch(),
              proposal.face(),
              proposal.why(),
              seen.get(i).trouble(),
              proposal.isNew() && seen.get(i).trouble().isEmpty()));
    }
    return rows;
  }

  private PhotoLook seen(Campaign c, Dropped file) {
    return looks.now(file, f -> fresh(c, f));
  }

  private PhotoLook fresh(Campaign c, Dropped file) {
    byte[] bytes = incoming.bytes(file);
    String sha256 = PhotoFile.fingerprint(bytes);
    try {
      PhotoFile photo = PhotoFile.open(bytes, file.name());
      Instant taken = PhotoProposals.taken(photo, c.info().zone());
      return new PhotoLook(sha256, taken, RunLabels.read(photo.picture()), "");
    } catch (InputException unreadable) {
      return new PhotoLook(sha256, null, List.of(), String.valueOf(unreadable.getMessage()));
    }
  }

  private static List<String> faces(Campaign c) {
    return c.method().tests().stream()
        .flatMap(t -> t.photos() == null ? Stream.empty() : t.photos().faces().stream())
        .distinct()
        .toList();
  }

  // ---------- keeping ----------

  @PostMapping("/c/{cid}/drop/log")
  @MayUse(Audience.OWNER)
  String keepLog(
      @PathVariable String cid,
      @RequestParam String drop,
      @RequestParam int index,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request)
      throws IOException {
    Campaign c = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    ReadAs as = LogFile.answers(typed, problems);
    List<Dropped> files = incoming.files(drop);
    if ("again".equals(typed.get("what")) || problems.any() || index >= files.size()) {
      show(cid, drop, typed, problems, model);
      model.addAttribute("typed", typed);
      return "tracepage/drop";
    }
    Dropped file = files.get(index);
    if ("forget".equals(typed.get("what"))) {
      java.nio.file.Files.deleteIfExists(file.place());
      return next(cid, drop);
    }
    LogFile log = LogFile.of(file.name(), incoming.bytes(file), as);
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    RunChoice whose = RunChoice.find(c, typed.getOrDefault("whose", "")).orElse(null);
    String folder = whose == null || whose.run() == null ? "traces/" : "runs/" + whose.run() + "/";
    String path = keep(cid, folder + file.name(), file, stamp);
    List<NewEntry> entries = new ArrayList<>();
    String key = key(typed);
    List<LogFile.ChannelLine> channels = log.channels();
    for (int i = 0; i < channels.size() && whose != null; i++) {
      String place = typed.getOrDefault("place-" + i, "");
      if (LogFile.PLACES.contains(place)) {
        TraceBinding bound =
            new TraceBinding(
                path,
                channels.get(i).name(),
                place,
                whose.product(),
                whose.run(),
                null,
                null,
                null,
                null,
                0,
                as.saysNothing() ? null : as,
                null);
        entries.add(new NewEntry(key + "-" + entries.size(), EntryKind.TRACE, bound, stamp, null));
      }
    }
    if (!entries.isEmpty()) {
      desk.append(cid, entries);
    }
    java.nio.file.Files.deleteIfExists(file.place());
    return incoming.files(drop).isEmpty()
        ? "redirect:/c/"
            + cid
            + "/log?path="
            + java.net.URLEncoder.encode(path, java.nio.charset.StandardCharsets.UTF_8)
        : next(cid, drop);
  }

  @PostMapping("/c/{cid}/drop/photos")
  @MayUse(Audience.OWNER)
  String keepPhotos(
      @PathVariable String cid,
      @RequestParam String drop,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request)
      throws IOException {
    Campaign c = workbench.sheet(cid).campaign();
    List<Dropped> files = incoming.files(drop);
    FormProblems problems = new FormProblems();
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      String run = typed.get("run-" + i);
      if (run != null && "yes".equals(typed.get("keep-" + i))) {
        if (c.run(run.strip()).isEmpty()) {
          problems.add(
              "run-" + i,
              "Found “" + run + "”, expected a run of this campaign; or leave it unticked.");
        }
        kept.add(i);
      }
    }
    if (problems.any()) {
      show(cid, drop, Map.of(), problems, model);
      model.addAttribute("typed", typed);
      return "tracepage/drop";
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String key = key(typed);
    PhotoProposals proposals = new PhotoProposals(c);
    List<NewEntry> entries = new ArrayList<>();
    List<Path> done = new ArrayList<>();
    for (int i : kept) {
      Run run = c.run(typed.getOrDefault("run-" + i, "").strip()).orElseThrow();
      Dropped file = files.get(i);
      String path = keep(cid, "runs/" + run.id() + "/" + file.name(), file, stamp);
      Photo photo =
          new Photo(
              path,
              run.id(),
              batch(typed.getOrDefault("batch-" + i, "")),
              proposals.face(run.id(), typed.getOrDefault("face-" + i, "")),
              seen(c, file).taken(),
              null,
              List.of(),
              null);
      entries.add(new NewEntry(key + "-" + i, EntryKind.PHOTO, photo, stamp, null));
      done.add(file.place());
    }
    if (!entries.isEmpty()) {
      desk.append(cid, entries);
    }
    // Unticked ones were on the page as well: they were looked at and not wanted.
    for (int i = 0; i < files.size(); i++) {
      if (typed.containsKey("run-" + i)) {
        done.add(files.get(i).place());
      }
    }
    for (Path place : done) {
      java.nio.file.Files.deleteIfExists(place);
    }
    return incoming.files(drop).isEmpty() ? "redirect:/c/" + cid + "/photos" : next(cid, drop);
  }

  private static int batch(String typed) {
    return typed.strip().matches("[1-9]\\d?") ? Integer.parseInt(typed.strip()) : 1;
  }

  @PostMapping("/c/{cid}/drop/forget")
  @MayUse(Audience.OWNER)
  String forget(@PathVariable String cid, @RequestParam String drop) {
    looks.cancel(incoming.files(drop));
    incoming.forget(drop);
    return "redirect:/c/" + cid + "/sort";
  }

  private String keep(String cid, String path, Dropped file, NewEntry.Stamp stamp)
      throws IOException {
    EvidenceStore.Stored stored;
    try (InputStream in = java.nio.file.Files.newInputStream(file.place())) {
      stored = desk.evidence().put(file.name(), in, MOST_BYTES);
    }
    return desk.attach(cid, path, stored, stamp.who());
  }

  private String next(String cid, String drop) {
    return incoming.files(drop).isEmpty()
        ? "redirect:/c/" + cid + "/sort"
        : "redirect:/c/" + cid + "/drop?drop=" + drop;
  }

  private String key(Map<String, String> typed) {
    String key = typed.getOrDefault("key", "");
    return Keys.isKey(key) ? key : Keys.next(desk.clock());
  }

  /** The last part of what the browser sends, without what file systems or people trip over. */
  private static String fileName(@Nullable String sent) {
    String last =
        sent == null
            ? ""
            : sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1);
    String safe = last.replaceAll("[^\\p{L}\\p{N}._ -]", "-").replaceAll("^\\.+", "").strip();
    return safe.isEmpty() ? "file" : safe.substring(Math.max(0, safe.length() - 120));
  }
}
