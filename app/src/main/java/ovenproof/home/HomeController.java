package ovenproof.home;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.core.io.FileSystemResource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskCampaign;
import ovenproof.desk.EntryKind;
import ovenproof.desk.Field;
import ovenproof.desk.FolderExport;
import ovenproof.desk.FolderImport;
import ovenproof.desk.Job;
import ovenproof.desk.NewEntry;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.Method;
import ovenproof.method.Starters;
import ovenproof.method.TestPlan;
import ovenproof.web.FormKey;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Rows;
import ovenproof.web.Slug;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** Home, Start, and folders in and out. */
@Controller
class HomeController {
  private static final int AT_ONCE = 30;
  private final Desk desk;
  private final Workbench workbench;
  private final Map<String, Read> lines = new ConcurrentHashMap<>();

  HomeController(Desk desk, Workbench workbench, FolderImport registersTheJobs) {
    this.desk = desk;
    this.workbench = workbench;
  }

  private record Read(long version, Line line) {}

  /** A campaign in a line. */
  public record Line(
      String id, String title, int products, int runs, String running, String waiting) {}

  @GetMapping("/")
  @MayUse(Audience.OWNER)
  String home(@RequestParam Map<String, String> query, Model model) {
    Rows<DeskCampaign> part =
        Rows.of(desk.campaigns(), AT_ONCE, "/", query, c -> desk.field(c.id()).info().title());
    model.addAttribute("part", part);
    model.addAttribute("campaigns", part.shown().stream().map(this::line).toList());
    model.addAttribute("jobs", desk.jobs().newest(8));
    return "home/home";
  }

  /** Read once per version: a desk of ten years holds a hundred campaigns. */
  private Line line(DeskCampaign at) {
    Read known = lines.get(at.id());
    if (known == null || known.version() != at.version()) {
      known = new Read(at.version(), read(at));
      lines.put(at.id(), known);
    }
    return known.line();
  }

  private Line read(DeskCampaign at) {
    Workbench.Sheet sheet = workbench.sheet(at.id());
    Campaign c = sheet.campaign();
    long open = RunState.all(sheet).count(RunState.RUNNING);
    long toDo = Waiting.of(sheet).size();
    return new Line(
        at.id(),
        c.info().title(),
        c.products().size(),
        c.runs().size(),
        open == 0 ? "nothing" : open + " running",
        toDo == 0 ? "nothing" : toDo + " to do");
  }

  // ---------- start ----------

  /** Tests of a starter method. */
  public record StarterTests(String title, List<StarterTest> tests) {}

  /** A test to begin with. */
  public record StarterTest(String key, String name) {}

  @GetMapping("/start")
  @MayUse(Audience.OWNER)
  String start(Model model) {
    return startForm(model);
  }

  /** Tests that two tasting marks score: an empty heat-up needs a logger and waits for later. */
  private String startForm(Model model) {
    List<StarterTests> all = new ArrayList<>();
    for (String name : Starters.names()) {
      Method method = desk.method(Starters.text(name));
      List<StarterTest> tests =
          method.tests().stream()
              .filter(t -> t.replicates() > 0 && !t.marks().isEmpty())
              .map(t -> new StarterTest(name + "/" + t.id(), t.name()))
              .toList();
      all.add(new StarterTests(method.title(), tests));
    }
    model.addAttribute("starters", all);
    return "home/start";
  }

  @PostMapping("/start")
  @MayUse(Audience.OWNER)
  String begin(@RequestParam Map<String, String> typed, Model model, HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String oven = problems.need("oven", typed.get("oven"), "a name");
    String dial = problems.need("dial", typed.get("dial"), "degrees, or the word on the dial");
    problems.dial("dial", dial);
    String[] chosen = typed.getOrDefault("test", "").split("/", 2);
    if (chosen.length < 2 || !Starters.names().contains(chosen[0])) {
      problems.add("test", "Choose one of the tests.");
    }
    if (problems.any()) {
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      return startForm(model);
    }
    String key = FormKey.of(typed, desk.clock());
    String id = "first-" + key;
    String run = begin(id, key, oven, dial, chosen[0], chosen[1], request);
    return "redirect:/c/" + id + "/runs/" + run;
  }

  /** Sent twice it finds the campaign of its key and changes nothing. */
  private String begin(
      String id,
      String key,
      String oven,
      String dial,
      String starter,
      String test,
      HttpServletRequest request) {
    Instant now = desk.clock().instant();
    NewEntry.Stamp stamp = Moment.of(request, now);
    String product = Slug.of(oven, "oven", taken -> false);
    String runId = product + "-" + test + "-1";
    if (desk.find(id).isEmpty()) {
      Method method = desk.method(Starters.text(starter));
      TestPlan plan =
          method
              .test(test)
              .orElseThrow(
                  () ->
                      new InputException(
                          Problem.error(
                              Place.of("test"), "\"" + test + "\"", "a test of the starter", "")));
      desk.create(firstField(id, oven, product, dial, plan), Starters.text(starter), stamp.who());
    }
    Campaign campaign = desk.load(id);
    TestPlan plan = campaign.method().test(test).orElseThrow();
    Run run =
        new Run(
            runId,
            product,
            product + "-1",
            test,
            plan.scoredVariant().id(),
            1,
            Run.Kind.COUNTED,
            null,
            null,
            stamp.at(),
            null,
            null,
            null,
            stamp.who(),
            null);
    String eventKey = key + "-s";
    Event start =
        new Event(
            runId,
            Event.Type.START,
            0,
            stamp.at(),
            null,
            null,
            null,
            new Entry.Provenance(eventKey, stamp.who(), stamp.at(), null));
    desk.append(
        id,
        List.of(
            new NewEntry(key + "-r", EntryKind.RUN, run, stamp, null),
            new NewEntry(eventKey, EntryKind.EVENT, start, stamp, null)));
    return runId;
  }

  private static Field firstField(
      String id, String oven, String product, String dial, TestPlan plan) {
    Campaign.Info info =
        new Campaign.Info(
            id,
            oven + ", first test",
            "This kitchen",
            ZoneId.systemDefault(),
            "EUR",
            Campaign.Provenance.REAL,
            null,
            null,
            null);
    return Field.of(info)
        .withProducts(List.of(new Campaign.Product(product, oven, null, null, null)))
        .withSpecimens(
            List.of(
                new Campaign.Specimen(
                    product + "-1",
                    product,
                    null,
                    Campaign.Acquired.UNKNOWN,
                    null,
                    null,
                    Campaign.Became.UNKNOWN,
                    null,
                    null)))
        .withSettingCards(
            List.of(
                new Campaign.SettingCard(
                    product,
                    plan.id(),
                    plan.scoredVariant().id(),
                    null,
                    null,
                    dial,
                    null,
                    null,
                    null,
                    null)));
  }

  // ---------- folders in and out ----------

  @PostMapping("/import")
  @MayUse(Audience.OWNER)
  String importZip(@RequestParam MultipartFile zip, HttpServletRequest request) throws IOException {
    if (zip.isEmpty()) {
      throw new InputException(
          Problem.error(
              Place.of("zip file"),
              "no file",
              "a zip file of a campaign folder",
              "choose one, then send it"));
    }
    Path kept =
        Files.createTempFile(desk.location().folder().resolve("incoming"), "upload-", ".zip");
    try (InputStream in = zip.getInputStream()) {
      Files.copy(in, kept, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }
    return job(
        desk.jobs().submit(FolderImport.KIND, null, kept.toString(), Who.of(request).word()));
  }

  @PostMapping("/import-folder")
  @MayUse(Audience.OWNER)
  String importFolder(
      @RequestParam Map<String, String> typed, Model model, HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String folder = problems.need("folder", typed.get("folder"), "the path of a folder");
    if (!problems.any() && !Files.isDirectory(Path.of(folder))) {
      problems.add(
          "folder", "Found no folder there. Expected the folder that holds campaign.yaml.");
    }
    if (problems.any()) {
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      return home(Map.of(), model);
    }
    return job(desk.jobs().submit(FolderImport.KIND, null, folder, Who.of(request).word()));
  }

  @PostMapping("/c/{cid}/export")
  @MayUse(Audience.OWNER)
  String export(@PathVariable String cid, HttpServletRequest request) {
    workbench.sheet(cid);
    return job(desk.jobs().submit(FolderExport.KIND, cid, cid, Who.of(request).word()));
  }

  private static String job(Job job) {
    return "redirect:/jobs/" + job.id();
  }

  @GetMapping("/jobs/{id}")
  @MayUse(Audience.OWNER)
  String job(@PathVariable String id, Model model) {
    model.addAttribute("job", found(id));
    return "home/job";
  }

  @PostMapping("/jobs/{id}/cancel")
  @MayUse(Audience.OWNER)
  String cancel(@PathVariable String id) {
    desk.jobs().cancel(found(id).id());
    return "redirect:/jobs/" + id;
  }

  @PostMapping("/jobs/{id}/restart")
  @MayUse(Audience.OWNER)
  String restart(@PathVariable String id) {
    desk.jobs().restart(found(id).id());
    return "redirect:/jobs/" + id;
  }

  @GetMapping("/jobs/{id}/file")
  @MayUse(Audience.OWNER)
  ResponseEntity<FileSystemResource> file(@PathVariable String id) {
    Job job = found(id);
    Path zip = desk.location().folder().resolve("outgoing").resolve(job.id() + ".zip");
    return ResponseEntity.ok()
        .header(HttpHeaders.CONTENT_TYPE, "application/zip")
        .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + job.input() + ".zip\"")
        .body(new FileSystemResource(zip));
  }

  private Job found(String id) {
    return desk.jobs()
        .find(id)
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(Place.of(id), "no such job", "a job of this desk", "")));
  }
}
