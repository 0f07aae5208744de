package ovenproof.photopage;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.TestPlan;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Workbench;

/** Photographs beside each other: of a campaign's tests, of one test, of one run. */
@Controller
class ContactSheetController {
  private final Workbench workbench;

  ContactSheetController(Workbench workbench) {
    this.workbench = workbench;
  }

  /** A test with photographs. */
  public record PhotographedTest(String id, String name, long photos) {}

  /** A picture on the sheet. */
  public record Frame(String path, String run, String words, String alt, String mended) {}

  /** The pictures of one product. */
  public record Strip(String product, String name, List<Frame> frames) {}

  @GetMapping("/c/{cid}/photos")
  @MayUse(Audience.OWNER)
  String index(@PathVariable String cid, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<PhotographedTest> tests = new ArrayList<>();
    for (TestPlan test : c.method().tests()) {
      long photos = c.photos().stream().filter(p -> isOf(c, p, test)).count();
      if (photos > 0) {
        tests.add(new PhotographedTest(test.id(), test.name(), photos));
      }
    }
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("tests", tests);
    model.addAttribute("count", c.photos().size());
    return "photopage/photos";
  }

  @GetMapping("/c/{cid}/tests/{test}/photos")
  @MayUse(Audience.OWNER)
  String sheet(
      @PathVariable String cid,
      @PathVariable String test,
      @RequestParam(defaultValue = "") String face,
      @RequestParam(defaultValue = "calibrated") String look,
      Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan plan = c.method().test(test).orElseThrow(() -> unknown("test"));
    List<Photo> photos = c.photos().stream().filter(p -> isOf(c, p, plan)).toList();
    List<String> faces =
        photos.stream()
            .map(p -> p.face() == null ? "" : p.face())
            .filter(f -> !f.isEmpty())
            .distinct()
            .sorted()
            .toList();
    List<Strip> strips =
        strips(c, photos.stream().filter(p -> face.isEmpty() || face.equals(p.face())).toList());
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("test", plan);
    model.addAttribute("faces", faces);
    model.addAttribute("face", face);
    model.addAttribute("look", Look.of(look).word());
    model.addAttribute("looks", Look.ofFrame());
    model.addAttribute("strips", strips);
    return "photopage/sheet";
  }

  /** A row of frames for each product that has some. */
  private static List<Strip> strips(Campaign c, List<Photo> photos) {
    List<Strip> strips = new ArrayList<>();
    for (Campaign.Product product : c.products()) {
      List<Frame> frames =
          photos.stream()
              .filter(p -> run(c, p).product().equals(product.id()))
              .map(p -> frame(c, p))
              .toList();
      if (!frames.isEmpty()) {
        strips.add(new Strip(product.id(), product.name(), frames));
      }
    }
    return strips;
  }

  /** Every batch of every product under one exposure: pieces only, calibrated. */
  @GetMapping("/c/{cid}/tests/{test}/strip")
  @MayUse(Audience.OWNER)
  String strip(
      @PathVariable String cid,
      @PathVariable String test,
      @RequestParam(defaultValue = "") String face,
      Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan plan = c.method().test(test).orElseThrow(() -> unknown("test"));
    List<String> faces =
        plan.photos() == null
            ? List.of()
            : plan.photos().faces().stream().filter(f -> !f.equals(Photo.BEFORE)).toList();
    String shown = face.isEmpty() && !faces.isEmpty() ? faces.get(0) : face;
    List<Strip> strips =
        strips(
            c,
            c.photos().stream()
                .filter(p -> isOf(c, p, plan) && (p.face() == null || p.face().equals(shown)))
                .filter(p -> c.whyNotCounted(run(c, p)).isEmpty())
                .toList());
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("test", plan);
    model.addAttribute("faces", faces);
    model.addAttribute("face", shown);
    model.addAttribute("strips", strips);
    return "photopage/strip";
  }

  @GetMapping("/c/{cid}/runs/{id}/photos")
  @MayUse(Audience.OWNER)
  String ofRun(@PathVariable String cid, @PathVariable String id, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    Run run = c.run(id).orElseThrow(() -> unknown("run"));
    String product = c.product(run.product()).map(Campaign.Product::name).orElse(run.product());
    List<Frame> frames =
        c.photos().stream().filter(p -> p.run().equals(id)).map(p -> frame(c, p)).toList();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("run", run);
    model.addAttribute("product", product);
    model.addAttribute("frames", frames);
    return "photopage/run";
  }

  private static boolean isOf(Campaign c, Photo photo, TestPlan test) {
    return c.run(photo.run()).filter(r -> r.test().equals(test.id())).isPresent();
  }

  private static Run run(Campaign c, Photo photo) {
    return c.run(photo.run()).orElseThrow(() -> unknown("run"));
  }

  private static Frame frame(Campaign c, Photo photo) {
    Run run = run(c, photo);
    String product = c.product(run.product()).map(Campaign.Product::name).orElse(run.product());
    String face = photo.face() == null ? "" : ", " + photo.face();
    String batch = photo.batch() == null || photo.batch() == 1 ? "" : ", batch " + photo.batch();
    String kind = run.kind() == Run.Kind.TRIAL ? "trial" : "run " + run.replicate();
    return new Frame(
        photo.file(),
        run.id(),
        kind + batch + face,
        product + ", " + kind + batch + face,
        photo.outlines().isEmpty() ? "" : "outlines mended");
  }

  private static InputException unknown(String what) {
    return new InputException(
        Problem.error(
            Place.of("request"), "no such " + what, "one of this campaign", "go back and choose"));
  }
}
