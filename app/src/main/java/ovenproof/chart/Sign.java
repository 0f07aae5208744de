package ovenproof.chart;

/** Small shapes that stand beside a word, never instead of it. */
public enum Sign {
  /** Bead in its tray: done, supported, saved. */
  HOLDS("sign holds") {
    @Override
    void draw(Svg svg) {
      tray(svg, null);
      svg.empty("circle", "class", "b", "cx", "17", "cy", "12.5", "r", "5.5");
    }
  },
  /** Bead beside its tray: contradicted, wrong. */
  FAILS("sign fails") {
    @Override
    void draw(Svg svg) {
      svg.empty("path", "class", "t", "d", "M2 9v11h17V9");
      svg.empty("circle", "class", "b", "cx", "28", "cy", "14.5", "r", "5.5");
    }
  },
  /** Bead on the lip: unclear, running. */
  ON_THE_LIP("sign edgy") {
    @Override
    void draw(Svg svg) {
      svg.empty("path", "class", "t", "d", "M4 11v9h20V11");
      svg.empty("circle", "class", "b", "cx", "24", "cy", "6", "r", "5.5");
    }
  },
  /** Bead without a tray: without evidence. */
  NAKED("sign naked") {
    @Override
    void draw(Svg svg) {
      svg.empty("circle", "class", "b", "cx", "17", "cy", "12.5", "r", "5.5");
    }
  },
  /** Empty dashed tray: missing, waiting. */
  EMPTY("sign naked") {
    @Override
    void draw(Svg svg) {
      tray(svg, "3 3");
    }
  },
  /** Whole tray with nothing in it: looked for, and not there. */
  ABSENT("sign") {
    @Override
    void draw(Svg svg) {
      tray(svg, null);
    }
  },
  /** Tray with an arrow through its right side: censored. */
  OVER("sign") {
    @Override
    void draw(Svg svg) {
      svg.empty("path", "class", "t", "d", "M4 9v11h26");
      svg.empty("path", "class", "t", "d", "M24 14l6 6-6 6", "stroke-width", "2");
    }
  },
  /** Dotted rail: cannot do. */
  CANNOT("sign naked") {
    @Override
    void draw(Svg svg) {
      svg.empty("path", "class", "t", "d", "M4 20h26", "stroke-dasharray", "2 4");
    }
  },
  /** One stroke: a deviation that is noted. */
  CLASS_1("sign") {
    @Override
    void draw(Svg svg) {
      strokes(svg, 1);
    }
  },
  /** Two strokes: a deviation for which results are given with and without. */
  CLASS_2("sign") {
    @Override
    void draw(Svg svg) {
      strokes(svg, 2);
    }
  },
  /** Three strokes, struck through: a deviation that voids the run. */
  CLASS_3("sign fails") {
    @Override
    void draw(Svg svg) {
      strokes(svg, 3);
      svg.empty("path", "class", "t", "d", "M2 17L26 5");
    }
  };

  private final String classes;

  Sign(String classes) {
    this.classes = classes;
  }

  abstract void draw(Svg svg);

  /** The shape, hidden from screen readers: the word beside it says the same. */
  public String svg() {
    Svg svg =
        new Svg().open("svg", "class", classes, "viewBox", "0 0 34 22", "aria-hidden", "true");
    draw(svg);
    return svg.close().toString();
  }

  /** The sign of a deviation's class, 1 to 3. */
  public static Sign ofDeviationClass(int deviationClass) {
    return switch (deviationClass) {
      case 1 -> CLASS_1;
      case 2 -> CLASS_2;
      case 3 -> CLASS_3;
      default ->
          throw new IllegalArgumentException("deviation class is 1 to 3, found " + deviationClass);
    };
  }

  private static void tray(Svg svg, @org.jspecify.annotations.Nullable String dashes) {
    svg.empty("path", "class", "t", "d", "M4 9v11h26V9", "stroke-dasharray", dashes);
  }

  private static void strokes(Svg svg, int count) {
    for (int i = 0; i < count; i++) {
      svg.empty("path", "class", "t", "d", "M" + (6 + 7 * i) + " 3v16");
    }
  }
}
