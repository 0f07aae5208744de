package ovenproof.chart;

import java.util.Locale;

/**
 * A self-starting chart: each session's z as a bead between the limits, the smoothed z as a line.
 * Sessions beyond a limit are beads with a ring and carry their name.
 *
 * @param name what is charted
 * @param sessions their names, in order of time
 * @param z standard normal if nothing changed; NaN where not yet known
 * @param ewma smoothed z; NaN before it is judged
 * @param ewmaLimits limit of |ewma|; NaN before it is judged
 */
public record ControlChart(
    String name, String[] sessions, double[] z, double[] ewma, double[] ewmaLimits) {
  private static final double HEIGHT = 200;
  private static final double TOP = 14;
  private static final double FLOOR = 166;
  private static final double REACH = 5;
  private static final double LIMIT = 3;

  public String svg() {
    Svg svg =
        new Svg()
            .open(
                "svg", "class", "chart", "height", HEIGHT, "role", "img", "aria-label", sentence());
    for (double level : new double[] {LIMIT, 0, -LIMIT}) {
      svg.empty(
          "line",
          "class",
          level == 0 ? "axis" : "ceil",
          "x1",
          "0",
          "x2",
          "100%",
          "y1",
          y(level),
          "y2",
          y(level));
    }
    svg.text("+3", "class", "halo", "x", "0", "y", y(LIMIT) - 4);
    svg.text("−3", "class", "halo", "x", "0", "y", y(-LIMIT) - 4);
    smoothed(svg);
    beads(svg);
    return svg.close().toString();
  }

  private String sentence() {
    StringBuilder words =
        new StringBuilder(name).append(" of the reference appliance by session: ");
    int beyond = 0;
    for (int i = 0; i < z.length; i++) {
      if (isBeyond(i)) {
        words.append(beyond == 0 ? "" : ", ").append(sessions[i]).append(" beyond its limit");
        beyond++;
      }
    }
    return words.append(beyond == 0 ? z.length + " sessions, none beyond a limit" : "").toString();
  }

  private boolean isBeyond(int session) {
    boolean judged = !Double.isNaN(ewma[session]);
    return judged
        && (Math.abs(z[session]) > LIMIT || Math.abs(ewma[session]) > ewmaLimits[session]);
  }

  private void smoothed(Svg svg) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < ewma.length; i++) {
      if (!Double.isNaN(ewma[i])) {
        path.append(path.isEmpty() ? "M" : " L")
            .append(String.format(Locale.ROOT, "%.2f %.1f", percent(i), y(ewma[i])));
      }
    }
    if (!path.isEmpty()) {
      svg.open(
          "svg",
          "width",
          "100%",
          "height",
          HEIGHT,
          "viewBox",
          "0 0 100 " + Svg.number(HEIGHT),
          "preserveAspectRatio",
          "none");
      svg.empty("path", "class", "curve own thin", "d", path);
      svg.close();
    }
  }

  private void beads(Svg svg) {
    for (int i = 0; i < z.length; i++) {
      String x = Svg.percent(percent(i));
      if (!Double.isNaN(z[i])) {
        svg.empty("circle", "class", "bead", "cx", x, "cy", y(z[i]), "r", "5");
        if (isBeyond(i)) {
          svg.empty("circle", "class", "ring", "fill", "none", "cx", x, "cy", y(z[i]), "r", "9");
        }
      }
      boolean named = isBeyond(i) || i == 0 || i == z.length - 1;
      if (named) {
        svg.text(sessions[i], "x", x, "y", FLOOR + 24, "text-anchor", DotPlot.anchor(percent(i)));
      }
    }
  }

  private double percent(int session) {
    return z.length < 2 ? 50 : 4 + 92.0 * session / (z.length - 1);
  }

  private static double y(double value) {
    double kept = Math.max(-REACH, Math.min(REACH, value));
    return TOP + (FLOOR - TOP) * (REACH - kept) / (2 * REACH);
  }
}
