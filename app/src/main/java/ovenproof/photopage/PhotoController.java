package ovenproof.photopage;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.chart.LineChart;
import ovenproof.chart.LineChart.Axis;
import ovenproof.chart.LineChart.Series;
import ovenproof.chart.LineChart.Span;
import ovenproof.chart.LineChart.Style;
import ovenproof.chart.Scale;
import ovenproof.core.colour.Lab;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoCalibration;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.photo.ShadeHistogram;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.Keys;
import ovenproof.desk.NewEntry;
import ovenproof.desk.StoredEntry;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.input.Words;
import ovenproof.measure.PhotoReading;
import ovenproof.method.TestPlan;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Shown;
import ovenproof.web.Workbench;

/** One photograph: original, calibrated, map; its pieces; its outlines, which a person may mend. */
@Controller
class PhotoController {
  private static final int LARGEST_SIDE = 1600;
  private static final int SMALLEST_SIDE = 160;

  private final Desk desk;
  private final Workbench workbench;
  private final PhotoShelf shelf;

  PhotoController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
    this.shelf = new PhotoShelf(desk.location().folder().resolve("derived"));
  }

  /** A photograph that a campaign's table names, with its entry, run and test. */
  private record Held(Campaign campaign, String entry, Photo photo, Run run, TestPlan test) {}

  /** A piece in the table. */
  public record PieceRow(String id, List<String> cells) {}

  /** An outline drawn over the picture. */
  public record Edge(String id, String points, double x, double y) {}

  @GetMapping("/c/{cid}/photo")
  @MayUse(Audience.OWNER)
  String page(
      @PathVariable String cid,
      @RequestParam String path,
      @RequestParam(defaultValue = "") String run,
      @RequestParam(defaultValue = "original") String look,
      Model model) {
    show(cid, path, run, Look.of(look), null, model);
    return "photopage/photo";
  }

  private void show(
      String cid,
      String path,
      String ofRun,
      Look look,
      @Nullable String typedOutlines,
      Model model) {
    Held held = held(cid, path, ofRun);
    Photo photo = held.photo();
    Run run = held.run();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", held.campaign());
    model.addAttribute("photo", photo);
    model.addAttribute("run", run);
    model.addAttribute("test", held.test());
    model.addAttribute(
        "product",
        held.campaign().product(run.product()).map(Campaign.Product::name).orElse(run.product()));
    model.addAttribute("look", look.word());
    model.addAttribute("looks", Look.ofFrame());
    model.addAttribute("entry", held.entry());
    model.addAttribute(
        "sharing",
        held.campaign().photos().stream()
            .filter(p -> p.file().equals(photo.file()) && !p.run().equals(run.id()))
            .map(Photo::run)
            .toList());
    model.addAttribute(
        "others",
        held.campaign().runs().stream().map(Run::id).filter(r -> !r.equals(run.id())).toList());
    model.addAttribute("planned", PhotoReading.planned(held.test()));
    try {
      PhotoShelf.Opened opened =
          shelf.open(held.campaign(), desk.evidenceOf(cid), photo, held.test());
      seen(opened, photo, typedOutlines, model);
    } catch (InputException unreadable) {
      model.addAttribute("opened", null);
      model.addAttribute("trouble", unreadable.problems().stream().map(Object::toString).toList());
    }
  }

  private static void seen(
      PhotoShelf.Opened opened, Photo photo, @Nullable String typedOutlines, Model model) {
    PhotoReading reading = opened.reading();
    PhotoAnalysis analysis = reading.analysis();
    List<Photo.Drawn> outlines = outlines(photo, analysis);
    List<MeasureDescription> measures = columns(reading);
    List<String> warnings = new ArrayList<>(opened.notes());
    warnings.addAll(analysis.warnings());
    model.addAttribute("opened", opened);
    model.addAttribute("trouble", List.of());
    model.addAttribute("warnings", warnings);
    model.addAttribute("calibration", calibration(analysis.calibration()));
    model.addAttribute("edges", outlines.stream().map(PhotoController::edge).toList());
    model.addAttribute(
        "outlines", typedOutlines == null ? OutlineText.written(outlines) : typedOutlines);
    model.addAttribute("chart", ChartCorners.words(analysis.chart(), photo));
    model.addAttribute("chartSeen", analysis.chart().isWhole());
    model.addAttribute("corners", ChartCorners.written(photo.frame().chartCorners()));
    model.addAttribute("front", photo.frame().front());
    model.addAttribute("fronts", ShadeSettings.Front.values());
    model.addAttribute("measures", measures);
    model.addAttribute("pieces", analysis.pieces().stream().map(p -> row(p, measures)).toList());
    model.addAttribute("miscounted", miscounted(photo, reading));
    model.addAttribute("middle", String.format(Locale.ROOT, "%.0f", Drawing.wanted(reading)));
    model.addAttribute("histogram", analysis.pieces().isEmpty() ? "" : histogram(reading));
    PhotoAnalysis.Piece worst = analysis.worst(reading.settings().target());
    model.addAttribute("worst", worst == null ? "" : worst.id());
  }

  /** What the engine found does not fit the method, and nobody has resolved it yet. */
  private static String miscounted(Photo photo, PhotoReading reading) {
    int found = reading.analysis().pieces().size();
    boolean byHand = !photo.outlines().isEmpty() || !photo.boxes().isEmpty();
    return byHand || found == reading.planned()
        ? ""
        : "Found "
            + found
            + (found == 1 ? " piece" : " pieces")
            + ", the method expects "
            + reading.planned()
            + ". Nothing is measured on this photograph until the outlines are mended below.";
  }

  private static String calibration(PhotoCalibration c) {
    String check =
        c.deltaE00Mean() == null || c.deltaE00Max() == null
            ? ""
            : String.format(
                Locale.ROOT,
                " Chart check: mean ΔE00 %.1f, largest %.1f; %s.",
                c.deltaE00Mean(),
                c.deltaE00Max(),
                c.withinGate() ? "both pass" : "beyond what is accepted (2 and 5)");
    String words = c.comparability();
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + "." + check;
  }

  private static List<MeasureDescription> columns(PhotoReading reading) {
    boolean target = reading.settings().target() != null;
    return PhotoMeasureCatalogue.ALL.stream().filter(m -> target || !needsTarget(m.id())).toList();
  }

  private static boolean needsTarget(String id) {
    return id.equals("shade-difference")
        || id.equals("lightness-difference")
        || id.startsWith("share-")
        || id.startsWith("largest-");
  }

  private static PieceRow row(PhotoAnalysis.Piece piece, List<MeasureDescription> measures) {
    List<Measurement> all = piece.shade().measurements(Subject.NONE.withPiece(piece.id()));
    List<String> cells = new ArrayList<>();
    for (MeasureDescription measure : measures) {
      cells.add(
          all.stream()
              .filter(m -> m.id().equals(measure.id()))
              .findFirst()
              .map(m -> m.isMissing() ? "none" : Shown.measurement(m))
              .orElse("none"));
    }
    return new PieceRow(piece.id(), cells);
  }

  private static Edge edge(Photo.Drawn drawn) {
    String points =
        drawn.corners().stream().map(c -> c.x() + "," + c.y()).collect(Collectors.joining(" "));
    double x = drawn.corners().stream().mapToInt(Photo.Corner::x).average().orElse(0);
    double y = drawn.corners().stream().mapToInt(Photo.Corner::y).average().orElse(0);
    return new Edge(drawn.piece(), points, Math.rint(x), Math.rint(y));
  }

  private static String histogram(PhotoReading reading) {
    List<Double> shares =
        ShadeHistogram.of(reading.analysis().pieces().stream().map(p -> p.shade()).toList())
            .shares();
    double[] x = new double[shares.size()];
    double[] y = new double[shares.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = i + 0.5;
      y[i] = 100 * shares.get(i);
    }
    Lab target = reading.settings().target();
    double near = reading.settings().nearLightness();
    List<Span> spans =
        target == null
            ? List.of()
            : List.of(
                new Span("near the target", target.lightness() - near, target.lightness() + near));
    double most = java.util.Arrays.stream(y).max().orElse(1);
    return new LineChart(
            "Share of the area by lightness L*, all pieces",
            200,
            new Axis(new Scale(0, 100, 20), "L*"),
            new Axis(Scale.around(new double[] {0, Math.max(1, most)}, 3), "%"),
            List.of(new Series("", Style.MEASURED, x, y)),
            List.of(),
            spans)
        .svg();
  }

  // ---------- pictures ----------

  @GetMapping("/c/{cid}/picture")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> picture(
      @PathVariable String cid,
      @RequestParam String path,
      @RequestParam(defaultValue = "") String run,
      @RequestParam(defaultValue = "original") String look,
      @RequestParam(defaultValue = "1200") int side) {
    Held held = held(cid, path, run);
    int size = Math.max(SMALLEST_SIDE, Math.min(LARGEST_SIDE, side));
    byte[] drawn =
        shelf.picture(
            held.campaign(), desk.evidenceOf(cid), held.photo(), held.test(), Look.of(look), size);
    return ResponseEntity.ok()
        .contentType(MediaType.IMAGE_JPEG)
        .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
        .eTag("\"" + ovenproof.evidence.photo.PhotoFile.fingerprint(drawn) + "\"")
        .body(drawn);
  }

  // ---------- outlines ----------

  @PostMapping("/c/{cid}/photo/outlines")
  @MayUse(Audience.OWNER)
  String mend(
      @PathVariable String cid,
      @RequestParam String path,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    String ofRun = typed.getOrDefault("run", "");
    Held held = held(cid, path, ofRun);
    String text = typed.getOrDefault("outlines", "");
    String why = typed.getOrDefault("why", "").strip();
    boolean again = "again".equals(typed.get("what"));
    List<String> problems = new ArrayList<>();
    List<Photo.Drawn> outlines = again ? List.of() : read(cid, held, text, why, problems);
    if (!held.entry().equals(typed.get("entry"))) {
      problems.add(
          "Somebody mended these outlines meanwhile. Yours are still here: look at theirs on a"
              + " second page, then keep yours or leave.");
    }
    if (!problems.isEmpty()) {
      show(cid, path, ofRun, Look.ORIGINAL, again ? null : text, model);
      model.addAttribute("wrong", problems);
      model.addAttribute("typed", typed);
      return "photopage/photo";
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String key = typed.getOrDefault("key", "");
    Photo mended =
        held.photo()
            .withOutlines(
                outlines,
                !why.isEmpty()
                    ? why
                    : again ? "outlines to be found again" : "outlines mended by a person");
    desk.append(
        cid,
        List.of(
            new NewEntry(
                Keys.isKey(key) ? key : Keys.next(desk.clock()),
                EntryKind.PHOTO,
                mended,
                stamp,
                held.entry())));
    return toPhoto(cid, held);
  }

  private static String toPhoto(String cid, Held held) {
    return "redirect:/c/"
        + cid
        + "/photo?path="
        + URLEncoder.encode(held.photo().file(), StandardCharsets.UTF_8)
        + "&run="
        + URLEncoder.encode(held.run().id(), StandardCharsets.UTF_8);
  }

  // ---------- chart and frame ----------

  @PostMapping("/c/{cid}/photo/frame")
  @MayUse(Audience.OWNER)
  String frame(
      @PathVariable String cid,
      @RequestParam String path,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    String ofRun = typed.getOrDefault("run", "");
    Held held = held(cid, path, ofRun);
    List<String> problems = new ArrayList<>();
    PhotoShelf.Opened opened =
        shelf.open(held.campaign(), desk.evidenceOf(cid), held.photo(), held.test());
    List<Photo.Corner> corners =
        ChartCorners.read(
            typed.getOrDefault("corners", ""), opened.width(), opened.height(), problems);
    Photo.Frame said =
        held.photo()
            .frame()
            .withChartCorners(corners)
            .withFront(
                Words.named(ShadeSettings.Front.class, typed.getOrDefault("front", ""))
                    .orElse(null));
    Photo changed = held.photo().withFrame(said, held.photo().note());
    if (!held.entry().equals(typed.get("entry"))) {
      problems.add("Somebody changed this photograph meanwhile. Look again, then keep yours.");
    }
    if (problems.isEmpty() && !corners.isEmpty()) {
      PhotoShelf.Opened seen =
          shelf.open(held.campaign(), desk.evidenceOf(cid), changed, held.test());
      if (!seen.reading().analysis().chart().isWhole()) {
        problems.add(
            "What lies between these corners has not the colours of a 24-patch chart. Mark the four"
                + " corners of its grid of patches, one after the other around it.");
      }
    }
    if (!problems.isEmpty()) {
      show(cid, path, ofRun, Look.ORIGINAL, null, model);
      model.addAttribute("wrong", problems);
      model.addAttribute("corners", typed.getOrDefault("corners", ""));
      return "photopage/photo";
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String key = typed.getOrDefault("key", "");
    desk.append(
        cid,
        List.of(
            new NewEntry(
                Keys.isKey(key) ? key + "-f" : Keys.next(desk.clock()),
                EntryKind.PHOTO,
                changed,
                stamp,
                held.entry())));
    return toPhoto(cid, held);
  }

  /** Pieces in this frame that belong to another run: that run gets the picture as well. */
  @PostMapping("/c/{cid}/photo/share")
  @MayUse(Audience.OWNER)
  String share(
      @PathVariable String cid,
      @RequestParam String path,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    String ofRun = typed.getOrDefault("run", "");
    Held held = held(cid, path, ofRun);
    PhotoShelf.Opened opened =
        shelf.open(held.campaign(), desk.evidenceOf(cid), held.photo(), held.test());
    List<String> problems = new ArrayList<>();
    PieceOwners owners =
        PieceOwners.read(
            held.campaign(),
            held.photo(),
            outlines(held.photo(), opened.reading().analysis()),
            typed.getOrDefault("pieces", ""),
            typed.getOrDefault("other", "").strip(),
            problems);
    if (!held.entry().equals(typed.get("entry"))) {
      problems.add("Somebody changed this photograph meanwhile. Look again, then share it.");
    }
    if (!problems.isEmpty()) {
      show(cid, path, ofRun, Look.ORIGINAL, null, model);
      model.addAttribute("wrong", problems);
      model.addAttribute("typed", typed);
      return "photopage/photo";
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String key = typed.getOrDefault("key", "");
    String first = Keys.isKey(key) ? key : Keys.next(desk.clock());
    desk.append(
        cid,
        List.of(
            new NewEntry(first + "-o", EntryKind.PHOTO, owners.here(), stamp, held.entry()),
            new NewEntry(first + "-p", EntryKind.PHOTO, owners.there(), stamp, null)));
    return toPhoto(cid, held);
  }

  private static List<Photo.Drawn> outlines(Photo photo, PhotoAnalysis analysis) {
    return photo.outlines().isEmpty()
        ? analysis.pieces().stream()
            .map(p -> OutlineText.simple(p.id(), p.shade().outline()))
            .toList()
        : photo.outlines();
  }

  private List<Photo.Drawn> read(
      String cid, Held held, String text, String why, List<String> problems) {
    PhotoShelf.Opened opened =
        shelf.open(held.campaign(), desk.evidenceOf(cid), held.photo(), held.test());
    List<Photo.Drawn> outlines = OutlineText.read(text, opened.width(), opened.height(), problems);
    int planned = PhotoReading.planned(held.test());
    if (problems.isEmpty() && outlines.isEmpty()) {
      problems.add("No outline is left. Draw at least one piece, or have them found again.");
    } else if (problems.isEmpty() && outlines.size() != planned && why.isEmpty()) {
      problems.add(
          "Found "
              + outlines.size()
              + (outlines.size() == 1 ? " outline" : " outlines")
              + ", the method expects "
              + planned
              + ". Mend them, or write below why there are "
              + (outlines.size() < planned ? "fewer" : "more")
              + ".");
    }
    return outlines;
  }

  // ---------- finding ----------

  private Held held(String cid, String path, String ofRun) {
    Campaign c = workbench.sheet(cid).campaign();
    List<StoredEntry> all = desk.entries(cid);
    Set<String> mended =
        all.stream().map(e -> String.valueOf(e.corrects())).collect(Collectors.toSet());
    Optional<StoredEntry> entry =
        all.stream()
            .filter(e -> !mended.contains(e.key()))
            .filter(
                e ->
                    e.body() instanceof Photo p
                        && p.file().equals(path)
                        && (ofRun.isEmpty() || p.run().equals(ofRun)))
            .findFirst();
    StoredEntry found = entry.orElseThrow(() -> unknown("photograph"));
    Photo photo = (Photo) found.body();
    Run run = c.run(photo.run()).orElseThrow(() -> unknown("run"));
    TestPlan test = c.method().test(run.test()).orElseThrow(() -> unknown("test"));
    return new Held(c, found.key(), photo, run, test);
  }

  private static InputException unknown(String what) {
    return new InputException(
        Problem.error(
            Place.of("request"),
            "no such " + what,
            "one of this campaign",
            "go back and choose again"));
  }
}
