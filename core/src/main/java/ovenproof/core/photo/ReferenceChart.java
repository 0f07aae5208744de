package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.colour.Lab;

/**
 * The common 24-patch chart: four rows of six, from dark skin at the upper left to black at the
 * lower right, the greys in the last row.
 *
 * <p>Geometry in units of the pitch from patch to patch: the centre of patch (column, row) is
 * (column + ½, row + ½), so the grid of patches spans 6 × 4.
 */
public final class ReferenceChart {

  public static final int COLUMNS = 6;
  public static final int ROWS = 4;
  public static final int PATCHES = COLUMNS * ROWS;

  /** Index of the first of the six greys, white. */
  static final int FIRST_GREY = 18;

  /** Which print of the chart: the pigments changed in November 2014. */
  public enum Edition {
    /**
     * Source: X-Rite, new colour specifications for its 24-patch and SG charts, 2016; as given in
     * the public data module of the colour-science project (BSD-3).
     */
    AFTER_2014(
        new double[][] {
          {37.54, 14.37, 14.92}, // dark skin
          {64.66, 19.27, 17.50}, // light skin
          {49.32, -3.82, -22.54}, // blue sky
          {43.46, -12.74, 22.72}, // foliage
          {54.94, 9.61, -24.79}, // blue flower
          {70.48, -32.26, -0.37}, // bluish green
          {62.73, 35.83, 56.50}, // orange
          {39.43, 10.75, -45.17}, // purplish blue
          {50.57, 48.64, 16.67}, // moderate red
          {30.10, 22.54, -20.87}, // purple
          {71.77, -24.13, 58.19}, // yellow green
          {71.51, 18.24, 67.37}, // orange yellow
          {28.37, 15.42, -49.80}, // blue
          {54.38, -39.72, 32.27}, // green
          {42.43, 51.05, 28.62}, // red
          {81.80, 2.67, 80.41}, // yellow
          {50.63, 51.28, -14.12}, // magenta
          {49.57, -29.71, -28.32}, // cyan
          {95.19, -1.03, 2.93}, // white 9.5
          {81.29, -0.57, 0.44}, // neutral 8
          {66.89, -0.75, -0.06}, // neutral 6.5
          {50.76, -0.13, 0.14}, // neutral 5
          {35.63, -0.46, -0.48}, // neutral 3.5
          {20.64, 0.07, -0.46}, // black 2
        }),
    /** Source: GretagMacbeth, 2005; as given in the same module. */
    BEFORE_2014(
        new double[][] {
          {37.986, 13.555, 14.059}, // dark skin
          {65.711, 18.130, 17.810}, // light skin
          {49.927, -4.880, -21.905}, // blue sky
          {43.139, -13.095, 21.905}, // foliage
          {55.112, 8.844, -25.399}, // blue flower
          {70.719, -33.397, -0.199}, // bluish green
          {62.661, 36.067, 57.096}, // orange
          {40.020, 10.410, -45.964}, // purplish blue
          {51.124, 48.239, 16.248}, // moderate red
          {30.325, 22.976, -21.587}, // purple
          {72.532, -23.709, 57.255}, // yellow green
          {71.941, 19.363, 67.857}, // orange yellow
          {28.778, 14.179, -50.297}, // blue
          {55.261, -38.342, 31.370}, // green
          {42.101, 53.378, 28.190}, // red
          {81.733, 4.039, 79.819}, // yellow
          {51.935, 49.986, -14.574}, // magenta
          {51.038, -28.631, -28.638}, // cyan
          {96.539, -0.425, 1.186}, // white 9.5
          {81.257, -0.638, -0.335}, // neutral 8
          {66.766, -0.734, -0.504}, // neutral 6.5
          {50.867, -0.153, -0.270}, // neutral 5
          {35.656, -0.421, -1.231}, // neutral 3.5
          {20.461, -0.079, -0.973}, // black 2
        });

    private final List<Lab> patches;

    Edition(double[][] values) {
      List<Lab> labs = new ArrayList<>();
      for (double[] v : values) {
        labs.add(Lab.d50(v[0], v[1], v[2]));
      }
      this.patches = List.copyOf(labs);
    }

    /** CIELAB under D50, row by row from the upper left. */
    public List<Lab> patches() {
      return patches;
    }
  }

  private static final List<String> NAMES =
      List.of(
          "dark skin",
          "light skin",
          "blue sky",
          "foliage",
          "blue flower",
          "bluish green",
          "orange",
          "purplish blue",
          "moderate red",
          "purple",
          "yellow green",
          "orange yellow",
          "blue",
          "green",
          "red",
          "yellow",
          "magenta",
          "cyan",
          "white 9.5",
          "neutral 8",
          "neutral 6.5",
          "neutral 5",
          "neutral 3.5",
          "black 2");

  private ReferenceChart() {}

  /** Trade name of a patch, 0…23. */
  public static String name(int patch) {
    return NAMES.get(patch);
  }
}
