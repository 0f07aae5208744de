package ovenproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.PhotoAnalyser;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.evidence.photo.PhotoOverlay;
import ovenproof.evidence.photo.RunLabels;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;

/** {@code ovenproof photo FILE…}. */
@Command(
    name = "photo",
    footer = {
      "",
      "For example: ovenproof photo examples/phone-and-thermometer/photos/marl-toast.jpg"
    },
    mixinStandardHelpOptions = true,
    description = {
      "Shade and evenness of the food in photographs.",
      "A 24-patch chart anywhere in the frame is found and used; the pieces are found and numbered"
          + " row by row. Colours are CIELAB under D50.",
      "With --campaign: sorts photographs to the runs of a campaign."
    })
final class PhotoCommand implements Callable<Integer> {

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description = "JPEG, PNG, WebP or HEIC, or a folder of them.")
  private List<Path> files = List.of();

  @Option(
      names = "--pieces",
      paramLabel = "N",
      description = "How many pieces there are; another count is a problem to resolve.")
  private @Nullable Integer pieces;

  @Option(
      names = "--target",
      paramLabel = "L,a,b",
      description = "The shade wanted, e.g. 62,10,32; then distance and shares are given.")
  private @Nullable String target;

  @Option(
      names = "--chart-pitch",
      paramLabel = "LENGTH",
      description = "From the middle of a patch of the chart to the next, e.g. 41mm: the scale.")
  private @Nullable String chartPitch;

  @Option(
      names = "--overlay",
      paramLabel = "PNG",
      description = "Draw what was found; with several files a number is added to the name.")
  private @Nullable Path overlay;

  @Option(names = "--json", description = "Print everything as JSON.")
  private boolean json;

  @Mixin private PhotoSort sort = new PhotoSort();

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    files = PhotoSort.pictures(files);
    if (sort.isWanted()) {
      return sort.run(files, json, out(), err());
    }
    ShadeSettings settings = ShadeSettings.withDefaults().withTarget(target());
    PhotoAnalyser analyser = analyser(settings);
    ArrayNode documents = JsonNodeFactory.instance.arrayNode();
    Map<String, Path> seen = new HashMap<>();
    List<Problem> problems = new ArrayList<>();
    SideBySide.run(
        files.size(),
        i -> one(files.get(i), i, analyser, settings),
        this::progress,
        (i, outcome) -> {
          try {
            PhotoReport report = outcome.get();
            Path first = seen.putIfAbsent(report.sha256(), files.get(i));
            if (first != null) {
              report.warn("the same picture as " + first);
            }
            tell(report, documents);
            problems.addAll(report.problems());
          } catch (InputException unreadable) {
            problems.addAll(unreadable.problems());
          }
        });
    if (json && !documents.isEmpty()) {
      Json.print(out(), files.size() == 1 ? documents.get(0) : documents);
    }
    problems.forEach(p -> err().println(Ovenproof.line(p)));
    boolean fine = problems.stream().noneMatch(p -> p.severity() == Problem.Severity.ERROR);
    return fine ? ExitCode.FINE : ExitCode.INPUT;
  }

  private void tell(PhotoReport report, ArrayNode documents) {
    if (json) {
      documents.add(report.json());
    } else {
      report.print(out());
    }
  }

  private PhotoReport one(Path path, int index, PhotoAnalyser analyser, ShadeSettings settings) {
    String name = path.toString();
    byte[] bytes = bytes(path);
    String sha256 = PhotoFile.fingerprint(bytes);
    PhotoFile file = PhotoFile.open(bytes, name);
    PhotoAnalysis analysis = analyser.analyse(file.picture(), "camera:" + path.getFileName());
    PhotoReport report =
        new PhotoReport(
            name, sha256, file, analysis, RunLabels.read(file.picture()), settings, pieces);
    if (overlay != null) {
      write(overlayPath(overlay, index), file, analysis, settings);
    }
    return report;
  }

  static byte[] bytes(Path path) {
    if (!Files.isRegularFile(path)) {
      String found = Files.isDirectory(path) ? "a folder" : "no such file";
      throw new InputException(Problem.error(Place.of(path.toString()), found, "a photograph", ""));
    }
    try {
      if (Files.size(path) > PhotoFile.LARGEST_BYTES) {
        throw new InputException(
            Problem.error(
                Place.of(path.toString()),
                Files.size(path) / (1 << 20) + " MB",
                "at most " + PhotoFile.LARGEST_BYTES / (1 << 20) + " MB",
                "export it as JPEG"));
      }
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw new OutsideException("Reading " + path + " failed: " + e.getMessage(), e);
    }
  }

  private Path overlayPath(Path wanted, int index) {
    if (files.size() == 1) {
      return wanted;
    }
    String name = String.valueOf(wanted.getFileName());
    int dot = name.lastIndexOf('.');
    String stem = dot < 0 ? name : name.substring(0, dot);
    return wanted.resolveSibling(stem + "-" + (index + 1) + ".png");
  }

  private static void write(
      Path path, PhotoFile file, PhotoAnalysis analysis, ShadeSettings settings) {
    try {
      Path folder = path.toAbsolutePath().getParent();
      Path temporary = Files.createTempFile(folder, ".photo", ".png");
      ImageIO.write(
          PhotoOverlay.draw(file.picture(), analysis, settings), "png", temporary.toFile());
      Files.move(temporary, path, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new OutsideException("Writing " + path + " failed: " + e.getMessage(), e);
    }
  }

  private PhotoAnalyser analyser(ShadeSettings settings) {
    PhotoAnalyser analyser = PhotoAnalyser.withDefaults().with(settings);
    if (pieces != null) {
      if (pieces < 1) {
        throw usage("--pieces must be at least 1, found " + pieces);
      }
      analyser = analyser.expecting(pieces);
    }
    return chartPitch == null ? analyser : analyser.withChartPitch(pitch(chartPitch));
  }

  private double pitch(String text) {
    try {
      double millimetres = QuantityParser.parse(text, Dimension.LENGTH).contract();
      if (millimetres > 0) {
        return millimetres;
      }
    } catch (IllegalArgumentException e) {
      // Said below, as for a length of nothing.
    }
    throw usage("--chart-pitch must be a length such as 41mm, found " + text);
  }

  private @Nullable Lab target() {
    if (target == null) {
      return null;
    }
    String[] parts = target.split("[,; ]+");
    try {
      double l = Double.parseDouble(parts[0]);
      if (parts.length == 3 && l >= 0 && l <= 100) {
        return Lab.d50(l, Double.parseDouble(parts[1]), Double.parseDouble(parts[2]));
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw usage("--target must be L,a,b with L from 0 to 100, such as 62,10,32; found " + target);
  }

  private ParameterException usage(String message) {
    return new ParameterException(command().commandLine(), message);
  }

  private void progress(int index) {
    if (files.size() > 1) {
      err().println((index + 1) + " of " + files.size() + "  " + files.get(index));
    }
  }

  private PrintWriter out() {
    return command().commandLine().getOut();
  }

  private PrintWriter err() {
    return command().commandLine().getErr();
  }

  private CommandSpec command() {
    if (spec == null) {
      throw new IllegalStateException("no command");
    }
    return spec;
  }
}
