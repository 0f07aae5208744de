package ovenproof.web;

import java.util.List;
import java.util.Locale;

/**
 * The stages of the job in the order of the job, each with its pages: this is the navigation. A
 * page is in it by one line here. A stage without a page is not shown.
 */
public enum Stage {
  PRODUCTS(new Page("The field", "/products")),
  METHOD(new Page("Tests and text", "/method")),
  PREP(
      new Page("Setting cards", "/settings"),
      new Page("Plan", "/plan"),
      new Page("Labels", "/labels")),
  BENCH(
      new Page("Runs", "/bench"),
      new Page("Files", "/sort"),
      new Page("Traces", "/traces"),
      new Page("Photos", "/photos")),
  PANEL(new Page("Tastings", "/panel"), new Page("Tasters", "/panel/tasters")),
  VERDICT(
      new Page("Ranking", "/verdict"),
      new Page("Questions", "/verdict/questions"),
      new Page("Side by side", "/verdict/compare"),
      new Page("Over the years", "/verdict/years")),
  PUBLISH(new Page("Draft", "/draft"), new Page("Review", "/publish")),
  INSTRUMENTS(),
  RECORD(new Page("Who did what", "/record"), new Page("Inquiries", "/inquiries"));

  /**
   * A page of a stage.
   *
   * @param path below the campaign's address
   */
  public record Page(String name, String path) {}

  private final List<Page> pages;

  Stage(Page... pages) {
    this.pages = List.of(pages);
  }

  public List<Page> pages() {
    return pages;
  }

  /** As the navigation shows it. */
  public String word() {
    return name().charAt(0) + name().substring(1).toLowerCase(Locale.ROOT);
  }

  /** Whether it stands apart from the way through the job. */
  public boolean aside() {
    return this == INSTRUMENTS || this == RECORD;
  }

  /** The stages that have a page. */
  public static List<Stage> shown() {
    return List.of(values()).stream().filter(s -> !s.pages.isEmpty()).toList();
  }

  /** The page of an address, the longest path that it begins with; for marking where one is. */
  public static String pathOf(String address) {
    return shown().stream()
        .flatMap(s -> s.pages.stream())
        .map(Page::path)
        .filter(p -> address.matches("/c/[^/]+" + p + "(/.*)?"))
        .reduce("", (a, b) -> a.length() >= b.length() ? a : b);
  }
}
