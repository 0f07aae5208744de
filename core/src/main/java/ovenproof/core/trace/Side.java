package ovenproof.core.trace;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;

/** Sides of a cavity, as places are named in the languages that loggers are used in. */
enum Side {
  FRONT(
      "front",
      "vorn",
      "vorne",
      "avant",
      "devant",
      "delante",
      "delantera",
      "delantero",
      "davanti",
      "anteriore",
      "frente",
      "voor",
      "fram",
      "前"),
  BACK(
      "back",
      "rear",
      "hinten",
      "arrière",
      "arriere",
      "fond",
      "atrás",
      "trasera",
      "trasero",
      "dietro",
      "posteriore",
      "traseira",
      "achter",
      "bak",
      "奥",
      "后",
      "後"),
  LEFT(
      "left",
      "links",
      "gauche",
      "izquierda",
      "izquierdo",
      "sinistra",
      "sinistro",
      "esquerda",
      "vänster",
      "venstre",
      "左"),
  RIGHT(
      "right", "rechts", "droite", "droit", "derecha", "derecho", "destra", "destro", "direita",
      "höger", "høyre", "højre", "右"),
  TOP(
      "top",
      "upper",
      "oben",
      "haut",
      "arriba",
      "superior",
      "superiore",
      "alto",
      "cima",
      "boven",
      "topp",
      "oppe",
      "上"),
  BOTTOM(
      "bottom",
      "lower",
      "unten",
      "bas",
      "abajo",
      "inferior",
      "inferiore",
      "basso",
      "baixo",
      "onder",
      "botten",
      "bunn",
      "bund",
      "下");

  /** Shorter words are parts of others: top of stop, bas of basket. */
  private static final int TELLING_LENGTH = 4;

  private final Set<String> words;

  Side(String... words) {
    this.words = Set.of(words);
  }

  /** Whether a channel's name says that it is on this side. */
  boolean isSaid(String name) {
    String level = name.toLowerCase(Locale.ROOT);
    return words.stream()
            .anyMatch(
                w -> (w.length() >= TELLING_LENGTH || w.charAt(0) > 0x2e80) && level.contains(w))
        || HeaderText.of(name).says(words);
  }

  /** Whether any side is said. */
  static boolean isAnySaid(String name) {
    return Arrays.stream(values()).anyMatch(side -> side.isSaid(name));
  }
}
