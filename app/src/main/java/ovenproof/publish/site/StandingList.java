package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.each;
import static j2html.TagCreator.p;
import static j2html.TagCreator.small;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.text;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.FrozenEdition;
import ovenproof.publish.edition.FrozenEdition.Standing;
import ovenproof.publish.edition.Words;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The standing list: what every review of the desk printed last of each product, this one's and
 * those published before.
 *
 * <p>Scores are put beside each other only under one method and version: another version may have
 * other curves. No margin was computed over campaigns, so the list gives no ranks and no tiers.
 */
final class StandingList {
  static final String PAGE = "standing.html";
  private static final Pattern FIRST_NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private final List<Review> reviews;

  private StandingList(List<Review> reviews) {
    this.reviews = reviews;
  }

  /** A review whose newest edition counts; its address is empty for the one being published. */
  private record Review(String title, String address, FrozenEdition edition, JsonNode inquiries) {
    /** Where corrections and inquiries of this review stand. */
    String corrections() {
      return address.isEmpty()
          ? Editions.PAGE
          : address.substring(0, address.length() - SiteAddresses.INDEX.length()) + Editions.PAGE;
    }
  }

  private record Entry(Standing product, Review review) {}

  /**
   * This edition and those of sites published before.
   *
   * @param target where this site will stand; the others are linked from there
   * @throws InputException with every place that is no published site
   */
  static StandingList of(Edition edition, Path target, List<Path> others) {
    List<Review> reviews = new ArrayList<>();
    reviews.add(
        new Review(
            edition.campaign().info().title(),
            "",
            FrozenEdition.of(edition, 1, null),
            InquiryPart.json(edition)));
    List<Problem> problems = new ArrayList<>();
    for (Path other : others) {
      Optional<FrozenEdition> newest = Optional.ofNullable(ReviewSite.editions(other).newest());
      if (newest.isEmpty()) {
        String expected = "a review site that was published before";
        problems.add(Problem.error(Place.of(other.toString()), "no editions", expected, ""));
      } else {
        String title =
            read(other.resolve("data/datapackage.json")).path("title").asString("Another review");
        JsonNode inquiries = read(other.resolve(InquiryPart.FILE));
        reviews.add(new Review(title, address(target, other), newest.get(), inquiries));
      }
    }
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
    return new StandingList(reviews);
  }

  /** A document of another site; an empty one when it has none, as older sites do not. */
  private static JsonNode read(Path document) {
    try {
      return MAPPER.readTree(Files.readString(document));
    } catch (JacksonException | java.nio.file.NoSuchFileException e) {
      return MAPPER.createObjectNode();
    } catch (IOException e) {
      throw new OutsideException("could not read " + document + ": " + e, e);
    }
  }

  private static String address(Path target, Path other) {
    Path from = target.toAbsolutePath().normalize();
    Path to = other.toAbsolutePath().normalize();
    return java.util.Objects.equals(from.getRoot(), to.getRoot())
        ? from.relativize(to).resolve("index.html").toString().replace('\\', '/')
        : to.resolve("index.html").toUri().toString();
  }

  boolean isEmpty() {
    return reviews.size() < 2;
  }

  /** Products by method; of a product that was tested twice under one method the latest. */
  private Map<String, List<Entry>> byMethod() {
    Map<String, Map<String, Entry>> found = new TreeMap<>();
    List<Review> oldestFirst =
        reviews.stream()
            .sorted(
                Comparator.comparing((Review r) -> r.edition().published())
                    .thenComparing(r -> r.address().isEmpty()))
            .toList();
    for (Review review : oldestFirst) {
      for (Standing product : review.edition().products()) {
        found
            .computeIfAbsent(review.edition().method(), m -> new LinkedHashMap<>())
            .put(product.id(), new Entry(product, review));
      }
    }
    Map<String, List<Entry>> sorted = new LinkedHashMap<>();
    found.forEach(
        (method, entries) ->
            sorted.put(
                method,
                entries.values().stream()
                    .sorted(
                        Comparator.comparing((Entry e) -> points(e.product().score())).reversed())
                    .toList()));
    return sorted;
  }

  /** The printed figure; what is open stands below what is known. */
  private static BigDecimal points(String printed) {
    Matcher number = FIRST_NUMBER.matcher(printed);
    boolean open = printed.contains("open");
    return !open && number.find() ? new BigDecimal(number.group()) : BigDecimal.ONE.negate();
  }

  Page page() {
    Map<String, List<Entry>> groups = byMethod();
    int products = groups.values().stream().mapToInt(List::size).sum();
    List<DomContent> parts = new ArrayList<>();
    groups.forEach((method, entries) -> parts.add(group(parts.size() + 1, method, entries)));
    return new Page(
        PAGE,
        "Standing list: "
            + Words.count(products, "result", "results")
            + " of "
            + Words.count(reviews.size(), "review", "reviews"),
        List.of(
            p(
                "What each review printed last. Two products of different reviews were not cooked"
                    + " in the same sessions, and no margin was computed between them: read them as"
                    + " different only where their intervals lie well apart.")),
        parts,
        null);
  }

  private static DomContent group(int number, String method, List<Entry> entries) {
    return Elements.part(
        "method-" + number,
        Words.capital(Words.count(entries.size(), "product", "products")) + ", method " + method,
        List.of("Scores of different methods, or of different versions of one, do not compare."),
        Elements.wide(
            "Standing list, method " + method,
            table(
                thead(
                    Elements.columns(
                        "Product", ">Score", ">90 % interval", "Review", "Price", "Asked since")),
                tbody(each(entries, StandingList::row)))));
  }

  private static DomContent row(Entry entry) {
    Review review = entry.review();
    String address = review.address().isEmpty() ? SiteAddresses.INDEX : review.address();
    String price = entry.product().price();
    return tr(
        th(entry.product().name()).attr("scope", "row"),
        Elements.figure(entry.product().score()),
        Elements.figure(entry.product().interval()),
        td(
            a(review.title()).withHref(address),
            j2html.TagCreator.br(),
            small(Words.day(review.edition().published())).withClass("quiet nowrap")),
        td(price == null ? "not noted" : price),
        td(asked(entry)));
  }

  private static DomContent asked(Entry entry) {
    List<String> outcomes = InquiryPart.outcomes(entry.review().inquiries(), entry.product().id());
    return outcomes.isEmpty()
        ? text("–")
        : a(String.join(", ", outcomes))
            .withHref(entry.review().corrections() + "#" + InquiryPart.ANCHOR);
  }
}
