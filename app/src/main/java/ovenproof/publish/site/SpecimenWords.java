package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign.Specimen;

/** How a specimen came and went, in words. */
final class SpecimenWords {

  private SpecimenWords() {}

  static DomContent row(View view, Specimen specimen) {
    return tr(
        th(a(view.edition().name(specimen.product()))
                .withHref(view.addresses().product(specimen.product())))
            .attr("scope", "row"),
        td(specimen.id()),
        td(acquired(specimen)),
        td(became(specimen)));
  }

  static String acquired(Specimen specimen) {
    String how =
        switch (specimen.acquired()) {
          case BOUGHT -> "bought";
          case LENT -> "lent";
          case GIVEN -> "given free of charge";
          case OWNED -> "owned before";
          case UNKNOWN -> "not stated";
        };
    String from = specimen.from() == null ? "" : ", " + specimen.from();
    return how + from + on(specimen.on());
  }

  static String became(Specimen specimen) {
    String what =
        switch (specimen.became()) {
          case KEPT -> "kept";
          case RETURNED -> "returned";
          case GIVEN_AWAY -> "given away";
          case BROKEN -> "broken";
          case UNKNOWN -> "not stated";
        };
    return what + on(specimen.becameOn());
  }

  private static String on(@Nullable LocalDate day) {
    return day == null ? "" : ", " + Frame.day(day);
  }
}
