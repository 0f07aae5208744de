package ovenproof.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.contract.MeasurementJson;
import ovenproof.core.colour.BrowningIndex;
import ovenproof.core.colour.Lab;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoCalibration;
import ovenproof.core.photo.PhotoScale;
import ovenproof.core.photo.PieceShade;
import ovenproof.core.photo.PixelBox;
import ovenproof.core.photo.PixelPoint;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What one photograph says, as JSON (format 1, see docs/photo.schema.json) and as text. */
final class PhotoReport {

  private final String file;
  private final String sha256;
  private final PhotoFile opened;
  private final PhotoAnalysis analysis;
  private final List<String> labels;
  private final ShadeSettings settings;
  private final @Nullable Integer expected;
  private final List<String> warnings = new ArrayList<>();

  PhotoReport(
      String file,
      String sha256,
      PhotoFile opened,
      PhotoAnalysis analysis,
      List<String> labels,
      ShadeSettings settings,
      @Nullable Integer expected) {
    this.file = file;
    this.sha256 = sha256;
    this.opened = opened;
    this.analysis = analysis;
    this.labels = labels;
    this.settings = settings;
    this.expected = expected;
    warnings.addAll(opened.warnings());
    warnings.addAll(analysis.warnings());
  }

  String sha256() {
    return sha256;
  }

  void warn(String warning) {
    warnings.add(warning);
  }

  /** No food, or a count that does not fit: to be resolved, not guessed. */
  List<Problem> problems() {
    List<Problem> out = new ArrayList<>();
    int found = analysis.pieces().size();
    if (found == 0 || (expected != null && expected != found)) {
      out.add(
          Problem.error(
              Place.of(file),
              found == 0 ? "no food" : found + (found == 1 ? " piece" : " pieces"),
              expected == null ? "at least one piece" : expected + " pieces",
              "use another ground, or correct the outlines on the photo page"));
    }
    return out;
  }

  ObjectNode json() {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("format", 1);
    node.put("file", file);
    node.put("sha256", sha256);
    node.put("width", opened.picture().width());
    node.put("height", opened.picture().height());
    var takenAt = opened.metadata().takenAt();
    node.put("takenAt", takenAt == null ? null : takenAt.toString());
    ArrayNode labelNodes = node.putArray("labels");
    labels.forEach(labelNodes::add);
    chart(node.putObject("chart"));
    PhotoCalibration calibration = analysis.calibration();
    node.put("calibrated", calibration.kind() == PhotoCalibration.Kind.CHART);
    node.put("comparability", calibration.comparability());
    PhotoScale scale = analysis.scale();
    node.put("pixelsPerMillimetre", scale == null ? null : scale.pixelsPerMillimetre());
    ArrayNode pieces = node.putArray("pieces");
    analysis.pieces().forEach(p -> piece(p, pieces.addObject()));
    summary(node.putObject("summary"));
    ArrayNode warningNodes = node.putArray("warnings");
    warnings.forEach(warningNodes::add);
    return node;
  }

  private void chart(ObjectNode node) {
    PhotoCalibration calibration = analysis.calibration();
    node.put("found", analysis.chart().isWhole());
    node.put("patches", analysis.chart().patchesInFrame());
    points(node.putArray("corners"), analysis.chart().corners());
    node.put("deltaE00Mean", calibration.deltaE00Mean());
    node.put("deltaE00Max", calibration.deltaE00Max());
    node.put("deltaE00LeaveOneOut", calibration.leaveOneOutMean());
    node.put("withinGate", calibration.withinGate());
    node.put("method", calibration.method());
  }

  private void piece(PhotoAnalysis.Piece piece, ObjectNode node) {
    PieceShade shade = piece.shade();
    Outline outline = shade.outline();
    node.put("id", piece.id());
    PixelBox box = outline.box();
    node.putArray("box").add(box.left()).add(box.top()).add(box.width()).add(box.height());
    points(node.putArray("outline"), outline.points());
    node.put("area", outline.area());
    Lab mean = shade.mean();
    node.put("L", mean == null ? null : (Double) mean.lightness());
    node.put("a", mean == null ? null : (Double) mean.a());
    node.put("b", mean == null ? null : (Double) mean.b());
    List<Measurement> all = shade.measurements(Subject.NONE.withPiece(piece.id()));
    node.put("deltaE00ToTarget", value(all, "shade-difference"));
    node.put("deltaLToTarget", value(all, "lightness-difference"));
    node.put("evennessSd", value(all, "evenness-sd"));
    node.put("evennessRange", value(all, "evenness-range"));
    node.put("shareNearTarget", share(all, "share-near-target"));
    node.put("shareDark", share(all, "share-dark"));
    node.put("sharePale", share(all, "share-pale"));
    node.put("largestDarkPatch", share(all, "largest-dark-patch"));
    node.put("largestPalePatch", share(all, "largest-pale-patch"));
    node.put("rim", value(all, "rim-difference"));
    node.put("tiltFrontBack", value(all, "tilt-front-back"));
    node.put("tiltLeftRight", value(all, "tilt-left-right"));
    node.put("mottle", value(all, "mottle"));
    node.put("browningIndex", browning(mean));
    node.set("measurements", MeasurementJson.write(all));
  }

  private static @Nullable Double browning(@Nullable Lab mean) {
    double value = mean == null ? Double.NaN : BrowningIndex.of(mean);
    return Double.isFinite(value) ? value : null;
  }

  private void summary(ObjectNode node) {
    node.put("pieces", analysis.pieces().size());
    List<Lab> means =
        analysis.pieces().stream()
            .map(p -> p.shade().mean())
            .filter(java.util.Objects::nonNull)
            .toList();
    node.put("L", mean(means.stream().map(Lab::lightness).toList()));
    node.put("a", mean(means.stream().map(Lab::a).toList()));
    node.put("b", mean(means.stream().map(Lab::b).toList()));
    PhotoAnalysis.Piece worst = analysis.worst(settings.target());
    node.put("worstPiece", worst == null ? null : worst.id());
  }

  private static @Nullable Double mean(List<Double> values) {
    return values.isEmpty()
        ? null
        : (Double) values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
  }

  private static void points(ArrayNode node, List<PixelPoint> points) {
    for (PixelPoint p : points) {
      node.addArray().add(Math.round(10 * p.x()) / 10.0).add(Math.round(10 * p.y()) / 10.0);
    }
  }

  /** The value, or the bound when it is only known to lie below it. */
  private static @Nullable Double value(List<Measurement> all, String id) {
    Measurement m = all.stream().filter(x -> x.id().equals(id)).findFirst().orElseThrow();
    return m.value() != null ? m.value() : m.high();
  }

  private static @Nullable Double share(List<Measurement> all, String id) {
    Double percent = value(all, id);
    return percent == null ? null : (Double) (percent / 100);
  }

  void print(PrintWriter out) {
    out.println(file);
    out.println("  " + chartLine());
    out.println("  " + analysis.calibration().comparability());
    if (!analysis.pieces().isEmpty()) {
      out.println(header());
    }
    for (PhotoAnalysis.Piece piece : analysis.pieces()) {
      out.println(line(piece));
    }
    labels.forEach(l -> out.println("  label: " + l));
    warnings.forEach(w -> out.println("  warning: " + w));
    out.flush();
  }

  private String chartLine() {
    PhotoCalibration c = analysis.calibration();
    if (c.deltaE00Mean() == null || c.deltaE00Max() == null) {
      int patches = analysis.chart().patchesInFrame();
      return patches == 0 ? "chart: none" : "chart: " + patches + " of 24 patches in the frame";
    }
    return String.format(
        Locale.ROOT,
        "chart: mean ΔE00 %.1f, largest %.1f (%s)",
        c.deltaE00Mean(),
        c.deltaE00Max(),
        c.method());
  }

  private String header() {
    String target = settings.target() == null ? "" : "   ΔE00     ΔL*  near %  dark %  pale %";
    return "  piece      L*     ±      a*      b*  uneven    rim" + target;
  }

  private String line(PhotoAnalysis.Piece piece) {
    List<Measurement> all = piece.shade().measurements(Subject.NONE.withPiece(piece.id()));
    Measurement lightness = all.get(0);
    String text =
        String.format(Locale.ROOT, "  %5s", piece.id())
            + cell(lightness.value(), 8)
            + cell(lightness.uncertainty(), 6)
            + cell(value(all, "a-mean"), 8)
            + cell(value(all, "b-mean"), 8)
            + cell(value(all, "evenness-sd"), 8)
            + cell(value(all, "rim-difference"), 7);
    if (settings.target() == null) {
      return text;
    }
    return text
        + cell(value(all, "shade-difference"), 7)
        + cell(value(all, "lightness-difference"), 8)
        + cell(value(all, "share-near-target"), 8)
        + cell(value(all, "share-dark"), 8)
        + cell(value(all, "share-pale"), 8);
  }

  private static String cell(@Nullable Double value, int width) {
    return value == null
        ? " ".repeat(width - 1) + "–"
        : String.format(Locale.ROOT, "%" + width + ".1f", value);
  }
}
