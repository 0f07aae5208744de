package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.join;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.q;
import static j2html.TagCreator.text;
import static j2html.TagCreator.ul;

import j2html.tags.DomContent;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Inquiry;
import ovenproof.campaign.InquiryStep;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Words;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What makers and readers asked after publication, and what came of it. Of an inquiry that is not
 * decided only its deadline is told; who asked is told as a role, never by name.
 */
final class InquiryPart {
  static final String ANCHOR = "inquiries";
  static final String FILE = "data/inquiries.json";

  private final View view;
  private final Edition edition;

  InquiryPart(View view) {
    this.view = view;
    this.edition = view.edition();
  }

  private static List<Inquiry> decided(Edition edition) {
    return edition.inquiries().stream().filter(i -> !i.isOpen()).toList();
  }

  /** The part of the corrections page; empty when nobody asked. */
  Optional<DomContent> part() {
    if (edition.inquiries().isEmpty()) {
      return Optional.empty();
    }
    List<DomContent> content = new ArrayList<>();
    decided(edition).forEach(i -> content.add(inquiry(i)));
    edition.inquiries().stream()
        .filter(Inquiry::isOpen)
        .forEach(i -> content.add(Elements.quiet(open(i))));
    return Optional.of(
        Elements.part(
            ANCHOR,
            Words.capital(Words.count(edition.inquiries().size(), "inquiry", "inquiries")),
            List.of("What makers and readers asked after publication, and what came of it."),
            content.toArray(DomContent[]::new)));
  }

  private DomContent inquiry(Inquiry inquiry) {
    InquiryStep decision = inquiry.decision().orElseThrow();
    return div(
        p(join(asked(inquiry) + ". ", outcome(decision), said(decision.words()))),
        questioned(inquiry.sentences()),
        runs(inquiry.runs()));
  }

  private String asked(Inquiry inquiry) {
    String product = inquiry.product();
    return Words.day(day(inquiry.askedAt()))
        + ": "
        + asker(inquiry)
        + " asked about "
        + (product == null ? "the review" : edition.name(product));
  }

  /** Who asked, as a role. */
  private static String asker(Inquiry inquiry) {
    return switch (inquiry.from()) {
      case "maker" -> "a maker";
      case "reader" -> "a reader";
      default -> "someone";
    };
  }

  private DomContent outcome(InquiryStep decision) {
    String word = Words.capital(Objects.requireNonNull(decision.outcome()).word());
    Integer number = decision.edition();
    String on = " on " + Words.day(day(decision.at()));
    return number == null
        ? text(word + on + ". ")
        : join(word + on + ", see ", a("edition " + number).withHref("#edition-" + number), ". ");
  }

  private DomContent said(String words) {
    return text(words.isBlank() ? "" : view.names().hidden(words.strip()));
  }

  private DomContent questioned(List<String> sentences) {
    return sentences.isEmpty() ? text("") : ul(each(sentences, s -> li(q(view.names().hidden(s)))));
  }

  /** Links to what it rests on; runs that this edition does not have are named. */
  private DomContent runs(List<String> runs) {
    if (runs.isEmpty()) {
      return text("");
    }
    List<DomContent> parts = new ArrayList<>();
    for (String run : runs) {
      parts.add(text(parts.isEmpty() ? "Runs: " : ", "));
      boolean known = edition.campaign().run(run).isPresent();
      parts.add(known ? a(run).withHref(view.addresses().run(run)) : text(run));
    }
    return p(each(parts, part -> part)).withClass("quiet");
  }

  private String open(Inquiry inquiry) {
    LocalDate deadline = inquiry.deadline();
    String until =
        deadline == null || inquiry.isAnswered()
            ? ""
            : ", an answer is due by " + Words.day(deadline);
    String answered = inquiry.isAnswered() ? ", answered, not decided" : ", open";
    return asked(inquiry) + answered + until + ".";
  }

  private LocalDate day(Instant at) {
    return day(edition, at);
  }

  private static LocalDate day(Edition edition, Instant at) {
    return LocalDate.ofInstant(at, edition.campaign().info().zone());
  }

  /** The outcomes by product, for standing lists of other reviews. */
  static JsonNode json(Edition edition) {
    ObjectNode document = JsonNodeFactory.instance.objectNode();
    document.put("format", 1);
    ArrayNode all = document.putArray("inquiries");
    for (Inquiry inquiry : decided(edition)) {
      InquiryStep decision = inquiry.decision().orElseThrow();
      all.addObject()
          .put("product", inquiry.product())
          .put("from", inquiry.from())
          .put("asked", day(edition, inquiry.askedAt()).toString())
          .put("outcome", Objects.requireNonNull(decision.outcome()).word())
          .put("decided", day(edition, decision.at()).toString())
          .put("edition", decision.edition());
    }
    return document;
  }

  /** {@code corrected 2026-04-10}: outcomes that concern one product, of a document of another. */
  static List<String> outcomes(JsonNode document, @Nullable String product) {
    List<String> outcomes = new ArrayList<>();
    for (JsonNode inquiry : document.path("inquiries")) {
      String about = inquiry.path("product").asString("");
      if (about.isEmpty() || about.equals(product)) {
        outcomes.add(
            inquiry.path("outcome").asString("").toLowerCase(Locale.ROOT)
                + " "
                + inquiry.path("decided").asString(""));
      }
    }
    return outcomes;
  }
}
