package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a mark column stands for beside the keys of its row; parts that do not apply are null. A
 * header may name one thing or two ("Alder_crisp"): each part has its role.
 */
record WideLabel(
    @Nullable String product,
    @Nullable String assessor,
    @Nullable String attribute,
    @Nullable String session,
    @Nullable String replicate) {

  static String words(String[] pair, List<Role> roles) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < pair.length; i++) {
      words.add(noun(roles.get(i)) + " \"" + pair[i] + "\"");
    }
    return String.join(" and ", words);
  }

  private static String noun(Role role) {
    return switch (role) {
      case ASSESSOR -> "the person";
      case PRODUCT -> "the product";
      case ATTRIBUTE -> "the attribute";
      case SESSION -> "the session";
      default -> "the repetition";
    };
  }

  static List<Role> partRoles(List<String[]> pairs, Role main, List<String> questions) {
    int parts = pairs.get(0).length;
    if (parts == 1) {
      return List.of(main);
    }
    List<Role> kinds = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      int part = i;
      kinds.add(
          LabelKind.of(
              pairs.stream()
                  .map(p -> p[part])
                  .collect(Collectors.toCollection(LinkedHashSet::new))));
    }
    int place = kinds.indexOf(main);
    if (place < 0) {
      place = Math.max(0, kinds.indexOf(Role.IGNORED));
      askForPart(pairs, kinds, main, questions);
    }
    List<Role> roles = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      roles.add(i == place ? main : otherRole(kinds.get(i), main));
    }
    return distinctRoles(roles);
  }

  private static void askForPart(
      List<String[]> pairs, List<Role> kinds, Role main, List<String> questions) {
    boolean oneQuestion = pairs.stream().map(p -> p[1]).distinct().count() == 1;
    if (kinds.stream().filter(k -> k == Role.IGNORED).count() > 1 && !oneQuestion) {
      questions.add(
          "Which part of \""
              + String.join(" / ", pairs.get(0))
              + "\" is "
              + (main == Role.PRODUCT ? "the product" : "the person")
              + "? The first was taken, the second as the attribute.");
    }
  }

  /** No two parts say the same: the later one becomes what is still free. */
  private static List<Role> distinctRoles(List<Role> roles) {
    List<Role> free =
        new ArrayList<>(List.of(Role.ATTRIBUTE, Role.REPLICATE, Role.SESSION, Role.PRODUCT));
    free.removeAll(roles);
    List<Role> result = new ArrayList<>();
    for (Role role : roles) {
      result.add(result.contains(role) ? free.remove(0) : role);
    }
    return result;
  }

  private static Role otherRole(Role kind, Role main) {
    boolean people =
        kind == Role.ASSESSOR && main == Role.PRODUCT
            || kind == Role.PRODUCT && main == Role.ASSESSOR;
    boolean plain = kind == Role.SESSION || kind == Role.REPLICATE;
    return people || plain ? kind : Role.ATTRIBUTE;
  }

  static WideLabel of(String[] parts, List<Role> roles) {
    Map<Role, String> by = new EnumMap<>(Role.class);
    for (int i = 0; i < parts.length; i++) {
      by.put(roles.get(i), parts[i]);
    }
    return new WideLabel(
        by.get(Role.PRODUCT),
        by.get(Role.ASSESSOR),
        by.get(Role.ATTRIBUTE),
        by.get(Role.SESSION),
        by.get(Role.REPLICATE));
  }
}
