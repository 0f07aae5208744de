package ovenproof.core.panel.table;

import org.jspecify.annotations.Nullable;
import ovenproof.core.panel.Rating;

/** What words may name. */
enum NameKind {
  ASSESSOR("people"),
  PRODUCT("products"),
  ATTRIBUTE("attributes"),
  SESSION("sessions");

  final String plural;

  NameKind(String plural) {
    this.plural = plural;
  }

  @Nullable String of(Rating rating) {
    return switch (this) {
      case ASSESSOR -> rating.assessor();
      case PRODUCT -> rating.product();
      case ATTRIBUTE -> rating.attribute();
      case SESSION -> rating.session();
    };
  }
}
