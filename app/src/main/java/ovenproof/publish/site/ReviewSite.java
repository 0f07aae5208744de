package ovenproof.publish.site;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import ovenproof.campaign.Run;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.EditionHistory;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.FrozenEdition;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.VerdictJson;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Makes all pages of one edition. */
public final class ReviewSite {
  /** Tells a folder made here from any other. */
  public static final String MARKER = ".ovenproof-site";

  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private static final List<String> LOOK =
      List.of(
          "mark.svg",
          "fonts/OFL.txt",
          "fonts/sofia-sans-latin-wght-normal.woff2",
          "fonts/sofia-sans-extra-condensed-latin-wght-normal.woff2");

  private final Edition edition;
  private final PictureCache cache;

  /**
   * What was published at a place so far; none when nothing was.
   *
   * @throws ovenproof.input.InputException if the list of editions is damaged
   */
  public static EditionHistory editions(Path site) {
    return Editions.read(site.resolve(Editions.FILE));
  }

  public ReviewSite(Edition edition, PictureCache cache) {
    this.edition = edition;
    this.cache = cache;
  }

  /**
   * What was written.
   *
   * @param warnings what could not be shown
   */
  public record Written(int pages, int pictures, List<String> warnings) {
    public Written {
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * Writes the site into a folder that is still a draft, with the standing list if there are
   * others.
   *
   * @param target where the folder will stand
   * @param earlier the site whose editions this one follows, or a path where nothing is
   * @param why the reason printed beside a new edition, or null
   * @param others sites of other reviews, for the standing list
   * @throws InputException if the printed digits do not add up, an earlier edition is damaged, or
   *     another site is none: then nothing may be published
   */
  public Written write(
      SiteFolder folder,
      Path target,
      Path earlier,
      @org.jspecify.annotations.Nullable String why,
      List<Path> others) {
    return write(folder, earlier, why, StandingList.of(edition, target, others));
  }

  /**
   * Writes the site into a folder that is still a draft.
   *
   * @param earlier the site whose editions this one follows, or a path where nothing is
   * @param why the reason printed beside a new edition, or null
   * @param standing results of other reviews; with none there is no such page
   * @throws InputException if the printed digits do not add up, or an earlier edition is damaged:
   *     then nothing may be published
   */
  Written write(
      SiteFolder folder,
      Path earlier,
      @org.jspecify.annotations.Nullable String why,
      StandingList standing) {
    refuseDisagreement();
    SiteAddresses addresses = new SiteAddresses();
    Pictures pictures = new Pictures(edition, addresses, cache);
    Map<String, List<View.Picture>> shown = pictures.write(folder);
    Editions editions = Editions.after(earlier, edition, why);
    View view =
        new View(
            edition,
            new Findings(edition),
            addresses,
            PrivateNames.of(edition),
            shown,
            new Traces(edition).draw(),
            changes(editions.history()));
    DataTables tables = new DataTables(edition, view.names());
    List<Page> pages = pages(view, tables);
    InquiryPart inquiries = new InquiryPart(view);
    pages.add(EditionPages.corrections(editions.history(), editions.newestPage(), inquiries));
    if (!standing.isEmpty()) {
      pages.add(standing.page());
    }
    Frame frame = new Frame(edition, !standing.isEmpty());
    pages.parallelStream().forEach(page -> folder.write(page.path(), frame.render(page)));
    look(folder);
    data(folder, tables);
    json(folder, InquiryPart.FILE, InquiryPart.json(edition));
    FrozenEdition newest = java.util.Objects.requireNonNull(editions.history().newest());
    String frozen = frame.render(EditionPages.frozen(newest, editions.newestPage()));
    editions.write(folder, earlier, edition, frozen);
    int number = shown.values().stream().mapToInt(List::size).sum();
    return new Written(pages.size(), number, pictures.unreadable());
  }

  private static List<View.Change> changes(EditionHistory history) {
    return history.changes().stream()
        .map(c -> new View.Change(c.after().published(), c.after().why(), c.sentence()))
        .toList();
  }

  private void refuseDisagreement() {
    List<Problem> problems =
        ComparisonTable.disagreements(edition).stream()
            .map(
                sentence ->
                    Problem.error(
                        Place.of("verdict"),
                        sentence,
                        "totals that follow from the printed sub-scores",
                        "compute the verdict again"))
            .toList();
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
  }

  private List<Page> pages(View view, DataTables tables) {
    List<Page> pages = new ArrayList<>();
    pages.add(new IndexPage(view).page());
    pages.add(new MethodPage(view).page());
    IndexPages lists = new IndexPages(view);
    pages.add(lists.products());
    pages.add(lists.tests());
    pages.add(lists.evidence());
    pages.add(lists.data(tables.contents()));
    for (TestPlan test : view.tests()) {
      pages.add(new TestPage(view, test).page());
    }
    for (ProductVerdict product : edition.verdict().products()) {
      pages.add(new ProductPage(view, product).page());
      for (TestPlan test : view.tests()) {
        product
            .test(test.id())
            .ifPresent(node -> pages.add(new ScorePage(view, product, test, node).page()));
      }
    }
    for (Run run : edition.campaign().runs()) {
      pages.add(new RunPage(view, run).page());
    }
    return pages;
  }

  private static void look(SiteFolder folder) {
    String style =
        new String(resource("/static/look/look.css"), StandardCharsets.UTF_8)
            + "\n"
            + new String(resource("/ovenproof/publish/site/site.css"), StandardCharsets.UTF_8);
    folder.write(SiteAddresses.STYLE, style);
    for (String file : LOOK) {
      folder.write("look/" + file, resource("/static/look/" + file));
    }
  }

  private static byte[] resource(String path) {
    try (InputStream stream = ReviewSite.class.getResourceAsStream(path)) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks its resource " + path);
      }
      return stream.readAllBytes();
    } catch (IOException e) {
      throw new IllegalStateException("the program cannot read its resource " + path, e);
    }
  }

  private void data(SiteFolder folder, DataTables tables) {
    tables.csv().forEach((name, text) -> folder.write("data/" + name, text));
    json(folder, "data/datapackage.json", tables.dataPackage());
    json(folder, "data/verdict.json", VerdictJson.of(edition.verdict()));
  }

  static void json(SiteFolder folder, String path, JsonNode node) {
    folder.write(path, MAPPER.writeValueAsString(node) + "\n");
  }
}
