package ovenproof.core.panel.table;

import java.util.Set;

/** What a set of labels seems to name. */
final class LabelKind {

  private LabelKind() {}

  /** Role that a set of labels seems to have; IGNORED when nothing tells. */
  static Role of(Set<String> labels) {
    double n = labels.size();
    long persons = labels.stream().filter(LabelKind::isPersonLabel).count();
    long products = labels.stream().filter(Vocabulary::isProduct).count();
    long attributes = labels.stream().filter(Vocabulary::isAttributeWord).count();
    long sessions = labels.stream().filter(Vocabulary::isSession).count();
    long repeats = labels.stream().filter(Vocabulary::isReplicate).count();
    if (products >= 0.8 * n) {
      return Role.PRODUCT;
    }
    if (sessions == n
        && labels.stream()
            .anyMatch(l -> Vocabulary.role(l) == Role.SESSION || Vocabulary.isDay(l))) {
      return Role.SESSION;
    }
    if (repeats == n
        && n <= 6
        && labels.stream()
            .allMatch(l -> Vocabulary.tokens(l).stream().noneMatch(t -> t.matches("\\d{3,}")))) {
      return Role.REPLICATE;
    }
    if (persons >= 0.6 * n) {
      return Role.ASSESSOR;
    }
    if (attributes >= 0.4 * n) {
      return Role.ATTRIBUTE;
    }
    return Role.IGNORED;
  }

  private static boolean isPersonLabel(String label) {
    return Vocabulary.isPerson(label) || Vocabulary.role(label) == Role.ASSESSOR;
  }
}
