package ovenproof.publish.site;

import j2html.tags.DomContent;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One page before its frame.
 *
 * @param path from the site's root
 * @param heading the finding, printed as h1 and used as title
 * @param intro sentences below the heading
 * @param parts sections in order
 * @param structuredData JSON-LD, or null
 */
record Page(
    String path,
    String heading,
    List<DomContent> intro,
    List<DomContent> parts,
    @Nullable String structuredData) {

  Page {
    intro = List.copyOf(intro);
    parts = List.copyOf(parts);
  }
}
