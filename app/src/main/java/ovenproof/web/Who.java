package ovenproof.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Locale;

/**
 * Who sits at the desk: a role, chosen by whoever does, kept in a cookie. There are no accounts.
 */
public enum Who {
  LEAD,
  OPERATOR,
  COOK,
  TASTER,
  EDITOR;

  static final String COOKIE = "ovenproof-who";

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static List<Who> all() {
    return List.of(values());
  }

  /** The role chosen in this browser; the lead if none was. */
  public static Who of(HttpServletRequest request) {
    Cookie[] cookies = request.getCookies();
    if (cookies != null) {
      for (Cookie cookie : cookies) {
        for (Who who : values()) {
          if (cookie.getName().equals(COOKIE) && cookie.getValue().equals(who.word())) {
            return who;
          }
        }
      }
    }
    return LEAD;
  }
}
