package ovenproof.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.CustomNode;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.SourceSpan;
import org.commonmark.node.Text;
import org.commonmark.parser.IncludeSourceSpans;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.NodeRenderer;
import org.commonmark.renderer.html.HtmlNodeRendererContext;
import org.commonmark.renderer.html.HtmlRenderer;
import ovenproof.draft.DraftReading.Found;
import ovenproof.proof.Proof.Finding;

/**
 * A draft as readers will see it, its claims marked. HTML in the text is shown as text, addresses
 * that run scripts are dropped.
 */
public final class DraftPreview {
  private static final Parser PARSER =
      Parser.builder().includeSourceSpans(IncludeSourceSpans.BLOCKS_AND_INLINES).build();
  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder()
          .escapeHtml(true)
          .sanitizeUrls(true)
          .nodeRendererFactory(MarkRenderer::new)
          .build();

  private DraftPreview() {}

  /** A piece of text that belongs to a claim. */
  private static final class Mark extends CustomNode {
    private final Found found;
    private final String words;
    private final boolean last;

    Mark(Found found, String words, boolean last) {
      this.found = found;
      this.words = words;
      this.last = last;
    }
  }

  private static final class MarkRenderer implements NodeRenderer {
    private final HtmlNodeRendererContext context;

    MarkRenderer(HtmlNodeRendererContext context) {
      this.context = context;
    }

    @Override
    public Set<Class<? extends Node>> getNodeTypes() {
      return Set.of(Mark.class);
    }

    @Override
    public void render(Node node) {
      Mark mark = (Mark) node;
      var out = context.getWriter();
      String state = state(mark.found);
      out.tag("mark", Map.of("class", state));
      out.text(mark.words);
      if (mark.last) {
        String number = Integer.toString(mark.found.number());
        out.tag(
            "a",
            Map.of(
                "class", "ref",
                "href", "#f" + number,
                "aria-label", words(mark.found) + ", finding " + number));
        out.text(number);
        out.tag("/a");
      }
      out.tag("/mark");
    }
  }

  /** Class of a claim's mark. */
  public static String state(Found found) {
    return found.isConfirmed() ? "supported" : found.claim().finding().word();
  }

  /** What is said of a claim. */
  public static String words(Found found) {
    if (found.isConfirmed()) {
      return "confirmed";
    }
    return found.claim().finding() == Finding.UNSUPPORTED
        ? "without evidence"
        : found.claim().finding().word();
  }

  public static String html(DraftReading reading) {
    Node document = PARSER.parse(reading.resolved());
    level(document);
    List<Found> claims =
        reading.found().stream()
            .filter(f -> f.at() >= 0)
            .sorted(Comparator.comparingInt(Found::at))
            .toList();
    List<Text> texts = new ArrayList<>();
    document.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Text text) {
            texts.add(text);
          }
        });
    texts.forEach(text -> mark(text, claims));
    return RENDERER.render(document);
  }

  /** Headings below the page's own, without a gap. */
  private static void level(Node document) {
    int[] last = {1};
    document.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Heading heading) {
            heading.setLevel(Math.min(6, Math.min(heading.getLevel() + 1, last[0] + 1)));
            last[0] = heading.getLevel();
            visitChildren(heading);
          }
        });
  }

  private static void mark(Text text, List<Found> claims) {
    List<SourceSpan> spans = text.getSourceSpans();
    String words = text.getLiteral();
    if (spans.size() != 1 || spans.get(0).getLength() != words.length()) {
      return;
    }
    int from = spans.get(0).getInputIndex();
    int done = 0;
    boolean linked = isLinked(text);
    for (Found found : claims) {
      int start = Math.max(done, found.at() - from);
      int claimEnd = found.at() + found.claim().text().length() - from;
      int end = Math.min(words.length(), claimEnd);
      if (start >= end) {
        continue;
      }
      if (start > done) {
        text.insertBefore(new Text(words.substring(done, start)));
      }
      boolean last = claimEnd <= words.length() && !linked;
      text.insertBefore(new Mark(found, words.substring(start, end), last));
      done = end;
    }
    if (done > 0) {
      text.setLiteral(words.substring(done));
    }
  }

  private static boolean isLinked(Node node) {
    for (Node parent = node.getParent(); parent != null; parent = parent.getParent()) {
      if (parent instanceof Link) {
        return true;
      }
    }
    return false;
  }
}
