package ovenproof.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.input.Written;

/** Reads which file shows what. */
final class EvidenceRows {
  private static final Pattern BOX =
      Pattern.compile("([\\p{L}\\p{N}_.-]{1,100}):(\\d{1,6}),(\\d{1,6}),(\\d{1,6}),(\\d{1,6})");

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
                row.textOrNull("note")));
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
            row.textOrNull("note")));
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

  private static Photo.Box box(Matcher box) {
    return new Photo.Box(
        box.group(1),
        Integer.parseInt(box.group(2)),
        Integer.parseInt(box.group(3)),
        Integer.parseInt(box.group(4)),
        Integer.parseInt(box.group(5)));
  }
}
