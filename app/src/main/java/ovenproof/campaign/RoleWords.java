package ovenproof.campaign;

import java.util.Locale;
import java.util.Set;

/** Words that stand where a name may stand and name nobody: they may be published. */
public final class RoleWords {
  private static final Set<String> ROLES =
      Set.of("lead", "operator", "cook", "taster", "editor", "owner");

  private RoleWords() {}

  /** Whether whoever is entered so is told as a role, whatever the case of the letters. */
  public static boolean isRole(String name) {
    return ROLES.contains(name.strip().toLowerCase(Locale.ROOT));
  }
}
