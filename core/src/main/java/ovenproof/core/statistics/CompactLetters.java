package ovenproof.core.statistics;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * Letters beside the names: two items share a letter exactly when they were not shown to differ.
 * Each letter marks a set to which nothing can be added, and none can be spared (insert and absorb
 * of Piepho, Journal of Computational and Graphical Statistics 13, 2004, 456–466).
 *
 * <p>Sharing a letter is no proof of being equal. A letter is a statement about pairs and gives no
 * tiers: a–ab–b is possible.
 */
public final class CompactLetters {

  private CompactLetters() {}

  /**
   * @param differs {@code differs[i][j]}: items i and j were shown to differ; only i &lt; j is
   *     read. Items come in the order in which letters shall start, best first
   * @return the letters of each item, e.g. {@code ab}; one item gets {@code a}
   */
  public static List<String> of(boolean[][] differs) {
    int items = differs.length;
    List<BitSet> groups = new ArrayList<>();
    BitSet all = new BitSet();
    all.set(0, items);
    groups.add(all);
    for (int i = 0; i < items; i++) {
      for (int j = i + 1; j < items; j++) {
        if (differs[i][j]) {
          groups = absorb(split(groups, i, j));
        }
      }
    }
    List<BitSet> needed = dropSpare(groups);
    needed.sort(
        Comparator.comparingInt((BitSet g) -> g.nextSetBit(0)).thenComparing(CompactLetters::bits));
    return letters(needed, items);
  }

  private static List<BitSet> split(List<BitSet> groups, int i, int j) {
    List<BitSet> result = new ArrayList<>();
    for (BitSet group : groups) {
      if (group.get(i) && group.get(j)) {
        result.add(without(group, j));
        result.add(without(group, i));
      } else {
        result.add(group);
      }
    }
    return result;
  }

  private static List<BitSet> absorb(List<BitSet> groups) {
    List<BitSet> kept = new ArrayList<>();
    groups.sort(Comparator.comparingInt(BitSet::cardinality).reversed());
    for (BitSet group : groups) {
      if (!group.isEmpty() && kept.stream().noneMatch(k -> contains(k, group))) {
        kept.add(group);
      }
    }
    return kept;
  }

  /** Drops a group when every pair and every item of it is marked by another group as well. */
  private static List<BitSet> dropSpare(List<BitSet> groups) {
    List<BitSet> kept = new ArrayList<>(groups);
    kept.sort(Comparator.comparingInt(BitSet::cardinality));
    for (BitSet group : List.copyOf(kept)) {
      List<BitSet> others = new ArrayList<>(kept);
      others.remove(group);
      if (isCovered(group, others)) {
        kept = others;
      }
    }
    return kept;
  }

  private static boolean isCovered(BitSet group, List<BitSet> others) {
    int[] members = group.stream().toArray();
    for (int i : members) {
      for (int j : members) {
        if (others.stream().noneMatch(o -> o.get(i) && o.get(j))) {
          return false;
        }
      }
    }
    return true;
  }

  private static List<String> letters(List<BitSet> groups, int items) {
    List<String> letters = new ArrayList<>();
    for (int item = 0; item < items; item++) {
      StringBuilder text = new StringBuilder();
      for (int g = 0; g < groups.size(); g++) {
        if (groups.get(g).get(item)) {
          text.append(letter(g));
        }
      }
      letters.add(text.toString());
    }
    return letters;
  }

  /** a … z, then A … Z, then a1, b1, … */
  private static String letter(int index) {
    String alphabet = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    int turn = index / alphabet.length();
    String letter = alphabet.substring(index % alphabet.length(), index % alphabet.length() + 1);
    return turn == 0 ? letter : letter + turn;
  }

  private static boolean contains(BitSet outer, BitSet inner) {
    BitSet rest = (BitSet) inner.clone();
    rest.andNot(outer);
    return rest.isEmpty();
  }

  private static BitSet without(BitSet group, int item) {
    BitSet rest = (BitSet) group.clone();
    rest.clear(item);
    return rest;
  }

  /** Members as text that sorts like the members themselves. */
  private static String bits(BitSet group) {
    StringBuilder text = new StringBuilder();
    group.stream().forEach(i -> text.append((char) ('0' + i)));
    return text.toString();
  }
}
