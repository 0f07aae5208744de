package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.figcaption;
import static j2html.TagCreator.figure;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.img;
import static j2html.TagCreator.li;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.span;
import static j2html.TagCreator.ul;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;
import ovenproof.publish.card.ShadeScale;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * Every counted batch of every product under one exposure, in small, with the scale of crust shades
 * and the shade that is wanted. Only pictures with a colour chart: others do not compare.
 */
final class BatchStrip {
  private static final int[] STEPS = {80, 70, 60, 50, 40, 30, 20};
  private static final int STEP_WIDTH = 64;

  private final View view;
  private final TestPlan test;
  private final String path;

  BatchStrip(View view, TestPlan test, String path) {
    this.view = view;
    this.test = test;
    this.path = path;
  }

  /** A picture with the run it is of. */
  private record Small(Run run, View.Picture picture) {}

  /** Nothing when there are fewer than two pictures that compare. */
  DomContent part() {
    List<DomContent> rows = new ArrayList<>();
    int pictures = 0;
    for (ProductVerdict product : view.edition().verdict().products()) {
      List<Small> small = small(product.id());
      pictures += small.size();
      if (!small.isEmpty()) {
        rows.add(row(product, small));
      }
    }
    return pictures < 2
        ? rawHtml("")
        : Elements.part(
            "batches",
            "Every batch under one exposure",
            List.of(
                "All counted batches"
                    + (face() == null ? "" : ", " + face())
                    + ", calibrated by the chart in each frame: the same surface has the same colour"
                    + " on all of them. Pictures without a chart are left out."),
            scale(),
            div(each(rows, r -> r)).withClass("batches"));
  }

  private @Nullable String face() {
    TestPlan.PhotoPlan photos = test.photos();
    return photos == null || photos.faces().isEmpty() ? null : photos.faces().get(0);
  }

  private List<Small> small(String product) {
    String face = face();
    List<Small> out = new ArrayList<>();
    for (Run run : view.edition().countedRuns(product, test.id())) {
      for (View.Picture picture : view.pictures(run)) {
        boolean wanted = face == null || picture.face().isEmpty() || picture.face().equals(face);
        if (wanted && picture.calibrated()) {
          out.add(new Small(run, picture));
        }
      }
    }
    return out;
  }

  private DomContent row(ProductVerdict product, List<Small> small) {
    return div(
        h3(
            a(product.name())
                .withHref(SiteAddresses.link(path, view.addresses().product(product.id())))),
        ul(each(small, s -> li(picture(s)))).withClass("small-pictures"));
  }

  private DomContent picture(Small small) {
    View.Picture picture = small.picture();
    String batch = picture.batch() == 1 ? "" : ", batch " + picture.batch();
    return a(
            img()
                .withSrc(SiteAddresses.link(path, picture.path()))
                .withAlt(picture.sentence())
                .attr("width", picture.width())
                .attr("height", picture.height())
                .attr("loading", "lazy"),
            span("run " + small.run().replicate() + batch))
        .withHref(SiteAddresses.link(path, view.addresses().run(small.run().id())));
  }

  /** Crusts from pale to dark with their L*, and the one that is wanted. */
  private DomContent scale() {
    StringBuilder svg = new StringBuilder();
    int width = STEP_WIDTH * STEPS.length;
    TestPlan.PhotoPlan photos = test.photos();
    TestPlan.Shade target = photos == null ? null : photos.target();
    svg.append("<svg class=\"shades\" role=\"img\" viewBox=\"0 0 ")
        .append(width)
        .append(" 62\" aria-label=\"Crust shades from L* 80 to 20")
        .append(
            target == null
                ? ""
                : String.format(Locale.ROOT, "; wanted: L* %.0f", target.lightness()))
        .append("\">");
    for (int i = 0; i < STEPS.length; i++) {
      int x = i * STEP_WIDTH;
      svg.append("<rect x=\"").append(x).append("\" y=\"16\" width=\"").append(STEP_WIDTH);
      svg.append("\" height=\"26\" fill=\"").append(ShadeScale.colour(STEPS[i])).append("\"/>");
      svg.append("<text x=\"")
          .append(x + STEP_WIDTH / 2)
          .append("\" y=\"58\" text-anchor=\"middle\">");
      svg.append(STEPS[i]).append("</text>");
    }
    if (target != null) {
      double x = STEP_WIDTH * ((STEPS[0] - target.lightness()) / 10 + 0.5);
      svg.append(
          String.format(
              Locale.ROOT,
              "<path d=\"M%.1f 14l-6 -10h12z\"/><text x=\"%.1f\" y=\"12\">wanted %.0f</text>",
              x,
              x + 10,
              target.lightness()));
    }
    svg.append("</svg>");
    return figure(rawHtml(svg.toString()), figcaption("L* of crusts, pale to dark"));
  }
}
