package ovenproof.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PixelPoint;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.DateOrder;
import ovenproof.input.Written;

/** Reads which file shows what. */
final class EvidenceRows {
  private static final Pattern BOX =
      Pattern.compile("([\\p{L}\\p{N}_.-]{1,100}):(\\d{1,6}),(\\d{1,6}),(\\d{1,6}),(\\d{1,6})");

  private static final Pattern OUTLINE =
      Pattern.compile(
          "([\\p{L}\\p{N}_.-]{1,100}):(\\d{1,6},\\d{1,6}(?:,\\d{1,6},\\d{1,6}){2,2000})");

  private static final Pattern CHART_CORNERS =
      Pattern.compile("\\d{1,6},\\d{1,6}(?:\\s+\\d{1,6},\\d{1,6}){3}");

  private static final double LEAST_CHART_PIXELS = 24 * 16;

  private final Context context;

  EvidenceRows(Context context) {
    this.context = context;
  }

  Optional<TraceBinding> trace(Row row) {
    Optional<String> place = row.find("place").flatMap(Written::key);
    var from = context.time(row, "from");
    var to = context.time(row, "to");
    if (from != null && to != null && !from.isBefore(to)) {
      row.error("to", row.raw("to").strip(), "a time after \"from\"", "");
    }
    var starts = context.time(row, "starts");
    double offset =
        row.find("clock_offset")
            .flatMap(w -> w.quantity(Dimension.TIME))
            .map(Quantity::contract)
            .orElse(0.0);
    return place.map(
        p ->
            new TraceBinding(
                row.raw("file").strip(),
                row.raw("channel").strip(),
                p,
                row.textOrNull("product"),
                row.textOrNull("run"),
                row.textOrNull("instrument"),
                from,
                to,
                starts,
                offset,
                readAs(row),
                row.textOrNull("note")));
  }

  /** A person's answers to what the file leaves open; null when there are none. */
  private static TraceBinding.@Nullable ReadAs readAs(Row row) {
    Double interval =
        row.find("interval")
            .flatMap(w -> w.quantity(Dimension.TIME))
            .map(Quantity::contract)
            .orElse(null);
    if (interval != null && !(interval > 0)) {
      row.error("interval", row.raw("interval").strip(), "a time above 0", "");
      interval = null;
    }
    Unit unit =
        row.find("temperatures")
            .flatMap(Written::unit)
            .filter(
                u -> {
                  boolean fits = u.dimension() == Dimension.TEMPERATURE;
                  if (!fits) {
                    row.error("temperatures", row.raw("temperatures").strip(), "C, F or K", "");
                  }
                  return fits;
                })
            .orElse(null);
    DateOrder dates = row.find("dates").flatMap(w -> w.word(DateOrder.class)).orElse(null);
    TraceBinding.ReadAs as = new TraceBinding.ReadAs(interval, unit, dates, counts(row));
    return as.saysNothing() ? null : as;
  }

  private static @Nullable Unit counts(Row row) {
    Unit unit = row.find("counts").flatMap(Written::unit).orElse(null);
    if (unit != null && unit.dimension() != Dimension.TIME) {
      row.error("counts", row.raw("counts").strip(), "s, min, h or ms", "");
      return null;
    }
    return unit;
  }

  Optional<Photo> photo(Row row) {
    Integer batch = row.find("batch").flatMap(w -> w.wholeNumber(1, 50)).orElse(null);
    String face = key(row, "face");
    var taken = context.time(row, "taken");
    String camera = key(row, "camera");
    List<Photo.Box> boxes = row.find("boxes").map(EvidenceRows::boxes).orElse(List.of());
    return Optional.of(
        new Photo(
            row.raw("file").strip(),
            row.raw("run").strip(),
            batch,
            face,
            taken,
            camera,
            boxes,
            row.find("outlines").map(EvidenceRows::outlines).orElse(List.of()),
            frame(row),
            row.textOrNull("note")));
  }

  private static Photo.Frame frame(Row row) {
    Optional<Written> written = row.find("chart_pitch");
    Quantity pitch = written.flatMap(w -> w.quantity(Dimension.LENGTH)).orElse(null);
    if (pitch != null && !(pitch.contract() > 0)) {
      written.orElseThrow().error("a length above 0, such as 41 mm", "");
      pitch = null;
    }
    return new Photo.Frame(
        pitch,
        row.find("chart_corners").map(EvidenceRows::chartCorners).orElse(List.of()),
        row.find("front").flatMap(w -> w.word(ShadeSettings.Front.class)).orElse(null));
  }

  private static List<Photo.Corner> chartCorners(Written written) {
    if (!CHART_CORNERS.matcher(written.text()).matches()) {
      written.error("four corners such as 1200,80 1500,82 1498,280 1199,278", "");
      return List.of();
    }
    List<Photo.Corner> corners = corners(written.text().replaceAll("\\s+", ","));
    List<PixelPoint> points = corners.stream().map(c -> new PixelPoint(c.x(), c.y())).toList();
    if (!(new Outline(points).area() >= LEAST_CHART_PIXELS)) {
      written.error("corners in the order in which one walks around the chart", "");
      return List.of();
    }
    return corners;
  }

  private static @Nullable String key(Row row, String column) {
    return row.find(column).flatMap(Written::key).orElse(null);
  }

  private static List<Photo.Box> boxes(Written written) {
    List<Photo.Box> boxes = new ArrayList<>();
    for (String word : written.text().split("\\s+")) {
      Matcher box = BOX.matcher(word);
      if (!box.matches() || box.group(4).matches("0+") || box.group(5).matches("0+")) {
        new Written(word, written.place(), written.problems())
            .error("a box such as 1:120,80,300,280 (piece:x,y,width,height)", "");
      } else if (boxes.stream().anyMatch(b -> b.piece().equals(box.group(1)))) {
        new Written(word, written.place(), written.problems()).error("each piece once", "");
      } else {
        boxes.add(box(box));
      }
    }
    return boxes;
  }

  private static List<Photo.Drawn> outlines(Written written) {
    List<Photo.Drawn> outlines = new ArrayList<>();
    for (String word : written.text().split("\\s+")) {
      Matcher outline = OUTLINE.matcher(word);
      if (!outline.matches()) {
        new Written(word, written.place(), written.problems())
            .error("an outline such as 1:120,80,420,80,420,360 (piece:x,y,x,y,x,y …)", "");
      } else if (outlines.stream().anyMatch(o -> o.piece().equals(outline.group(1)))) {
        new Written(word, written.place(), written.problems()).error("each piece once", "");
      } else {
        outlines.add(new Photo.Drawn(outline.group(1), corners(outline.group(2))));
      }
    }
    return outlines;
  }

  private static List<Photo.Corner> corners(String numbers) {
    String[] n = numbers.split(",");
    List<Photo.Corner> corners = new ArrayList<>();
    for (int i = 0; i + 1 < n.length; i += 2) {
      corners.add(new Photo.Corner(Integer.parseInt(n[i]), Integer.parseInt(n[i + 1])));
    }
    return corners;
  }

  private static Photo.Box box(Matcher box) {
    return new Photo.Box(
        box.group(1),
        Integer.parseInt(box.group(2)),
        Integer.parseInt(box.group(3)),
        Integer.parseInt(box.group(4)),
        Integer.parseInt(box.group(5)));
  }
}
