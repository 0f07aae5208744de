package ovenproof.kitchen.folder;

import java.util.List;
import java.util.Map;

/** Why a rater chose a step, in the raters' words. */
final class Reasons {

  private static final Map<String, List<String>> WORDS =
      Map.of(
          "controls",
          List.of(
              "manual needed for every change",
              "temperature and time share one knob",
              "set within four turns, but no feel to the steps",
              "two knobs, one button, clear steps",
              "set at a glance with a wet hand"),
          "display",
          List.of(
              "none",
              "a lamp only",
              "readable from straight ahead",
              "readable from two metres",
              "readable from everywhere, shows what is measured"),
          "door-and-racks",
          List.of(
              "rack falls out",
              "door snaps shut, rack tilts half way",
              "rack holds half way, door needs two hands",
              "door stays where it is put, rack holds",
              "rack comes out by itself, door stays open"),
          "manual",
          List.of(
              "none",
              "pictures only, cautions missing",
              "cautions and settings, no times",
              "settings and times for ten foods",
              "settings, times, care, spare parts"));

  private Reasons() {}

  static String of(String fact, int step) {
    return WORDS.getOrDefault(fact, List.of("", "", "", "", "")).get(step);
  }
}
