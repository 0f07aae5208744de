package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ovenproof.core.photo.FlatRegions.Region;

/** Regions by place, so that a look around one costs no look at all. */
final class RegionIndex {

  private static final int TILE = 32;

  private final Map<Long, List<Region>> tiles = new HashMap<>();

  RegionIndex(List<Region> regions) {
    for (Region r : regions) {
      tiles.computeIfAbsent(key(tile(r.x()), tile(r.y())), k -> new ArrayList<>()).add(r);
    }
  }

  /** All regions in the tiles that a circle touches, so also some a little farther away. */
  List<Region> near(double x, double y, double radius) {
    List<Region> out = new ArrayList<>();
    for (int tx = tile(x - radius); tx <= tile(x + radius); tx++) {
      for (int ty = tile(y - radius); ty <= tile(y + radius); ty++) {
        out.addAll(tiles.getOrDefault(key(tx, ty), List.of()));
      }
    }
    return out;
  }

  private static int tile(double coordinate) {
    return (int) Math.floor(coordinate / TILE);
  }

  private static long key(int tx, int ty) {
    return (long) tx << 32 | ty & 0xffffffffL;
  }
}
