package ovenproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.core.panel.AssessorWeighting;
import ovenproof.core.panel.PairAdjustment;
import ovenproof.core.panel.PairedTest;
import ovenproof.core.panel.PanelAnalysis;
import ovenproof.core.panel.TriangleTest;
import ovenproof.core.panel.table.RatingTableReader;
import ovenproof.core.panel.table.ReadTable;
import ovenproof.core.panel.table.ReadingChoices;
import ovenproof.core.panel.table.Role;
import ovenproof.core.panel.table.Sheet;
import ovenproof.core.panel.table.TableProblem;
import ovenproof.core.statistics.Interval;
import ovenproof.evidence.ratings.RatingFile;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code ovenproof panel FILE}. */
@Command(
    name = "panel",
    footer = {"", "For example: ovenproof panel examples/phone-and-thermometer/ratings.csv"},
    mixinStandardHelpOptions = true,
    description = {
      "Statistics of a rating table: means, tests, groups, people.",
      "The table may be long or wide, CSV or .xlsx; how it was read is said. Options below are only"
          + " needed where it was read wrongly."
    })
final class PanelCommand implements Callable<Integer> {

  @Parameters(paramLabel = "FILE", arity = "0..1", description = "The rating table.")
  private @Nullable Path file;

  @Option(names = "--json", description = "Print everything as JSON.")
  private boolean json;

  @Option(names = "--plot", paramLabel = "SVG", description = "Draw marks, means and letters.")
  private @Nullable Path plot;

  @Option(names = "--assessor", paramLabel = "COLUMN", description = "The column that says who.")
  private @Nullable String assessor;

  @Option(names = "--product", paramLabel = "COLUMN", description = "The column that says what.")
  private @Nullable String product;

  @Option(names = "--session", paramLabel = "COLUMN", description = "The column of sittings.")
  private @Nullable String session;

  @Option(
      names = "--batch",
      paramLabel = "COLUMN",
      description = "The column that tells batches of a product apart.")
  private @Nullable String batch;

  @Option(names = "--order", paramLabel = "COLUMN", description = "Place in the serving order.")
  private @Nullable String order;

  @Option(names = "--replicate", paramLabel = "COLUMN", description = "Repeated servings.")
  private @Nullable String replicate;

  @Option(names = "--attribute", paramLabel = "COLUMN", description = "What was judged.")
  private @Nullable String attribute;

  @Option(
      names = "--mark",
      paramLabel = "COLUMN",
      split = ",",
      description = "The columns of marks; then no other is one.")
  private List<String> marks = new ArrayList<>();

  @Option(
      names = "--ignore",
      paramLabel = "COLUMN",
      split = ",",
      description = "Columns that are no ratings.")
  private List<String> ignored = new ArrayList<>();

  @Option(
      names = "--products-in",
      paramLabel = "WHERE",
      description = "Of a wide table: ${COMPLETION-CANDIDATES}.")
  private @Nullable Side productsIn;

  /** Where the products of a wide table stand. */
  enum Side {
    COLUMNS,
    ROWS
  }

  @Option(
      names = "--same",
      paramLabel = "WORD=MEANT",
      description = "Two spellings of one name; repeat as needed.")
  private Map<String, String> same = Map.of();

  @Option(
      names = "--scale",
      paramLabel = "LOW..HIGH",
      description = "The scale of the marks; marks outside are said and left out.")
  private @Nullable String scale;

  @Option(
      names = "--pairs",
      paramLabel = "WAY",
      description = "How all pairs are adjusted: ${COMPLETION-CANDIDATES}.")
  private PairAdjustment pairs = PairAdjustment.TUKEY;

  @Option(
      names = "--weights",
      paramLabel = "RULE",
      description =
          "Weights of the people, declared beforehand: ${COMPLETION-CANDIDATES}. Shown beside the"
              + " plain means.")
  private AssessorWeighting weights = AssessorWeighting.EQUAL;

  @Option(
      names = "--triangle",
      paramLabel = "RIGHT/ALL",
      description = "A triangle test instead of a table, e.g. 14/30.")
  private @Nullable String triangle;

  @Option(
      names = "--paired",
      paramLabel = "FIRST/ALL",
      description = "A paired preference instead of a table, e.g. 12/15.")
  private @Nullable String paired;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = command().commandLine().getOut();
    if (triangle != null || paired != null) {
      countedTest(out);
      return ExitCode.FINE;
    }
    if (file == null) {
      throw new ParameterException(command().commandLine(), "a rating table is needed: FILE");
    }
    List<Sheet> sheets = RatingFile.read(file);
    ReadTable table = RatingTableReader.read(sheets, choices());
    PanelAnalysis analysis = PanelAnalysis.of(table.ratings(), pairs, weights);
    PanelReport report = new PanelReport(file.toString(), table, analysis);
    if (plot != null) {
      write(plot, report.picture());
    }
    if (json) {
      Json.print(out, report.json());
    } else {
      report.print(out);
    }
    return say(table);
  }

  private CommandSpec command() {
    if (spec == null) {
      throw new IllegalStateException("no command");
    }
    return spec;
  }

  private ReadingChoices choices() {
    ReadingChoices choices = ReadingChoices.none();
    choices = with(choices, assessor, Role.ASSESSOR);
    choices = with(choices, product, Role.PRODUCT);
    choices = with(choices, session, Role.SESSION);
    choices = with(choices, batch, Role.BATCH);
    choices = with(choices, order, Role.ORDER);
    choices = with(choices, replicate, Role.REPLICATE);
    choices = with(choices, attribute, Role.ATTRIBUTE);
    for (String mark : marks) {
      choices = choices.with(mark, Role.MARK);
    }
    for (String column : ignored) {
      choices = choices.with(column, Role.IGNORED);
    }
    for (Map.Entry<String, String> pair : same.entrySet()) {
      choices = choices.withSame(pair.getKey(), pair.getValue());
    }
    if (productsIn != null) {
      choices = choices.withInColumns(productsIn == Side.COLUMNS ? Role.PRODUCT : Role.ASSESSOR);
    }
    return choices.withScale(scale());
  }

  private static ReadingChoices with(ReadingChoices choices, @Nullable String column, Role role) {
    return column == null ? choices : choices.with(column, role);
  }

  private @Nullable Interval scale() {
    if (scale == null) {
      return null;
    }
    double[] ends = numbers(scale, "\\.\\.", "--scale must be LOW..HIGH, e.g. 1..9");
    return new Interval(ends[0], ends[1]);
  }

  private double[] numbers(String text, String separator, String rule) {
    String[] parts = text.split(separator);
    try {
      double[] numbers = {Double.parseDouble(parts[0]), Double.parseDouble(parts[1])};
      if (parts.length == 2) {
        return numbers;
      }
    } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
      // Said below.
    }
    throw new ParameterException(command().commandLine(), rule + ", found " + text);
  }

  private void countedTest(PrintWriter out) {
    boolean odd = triangle != null;
    String counts = odd ? triangle : paired;
    String rule = odd ? "--triangle must be RIGHT/ALL" : "--paired must be FIRST/ALL";
    double[] numbers = numbers(counts == null ? "" : counts, "/", rule);
    if (!(numbers[0] >= 0 && numbers[1] >= 1 && numbers[0] <= numbers[1])) {
      throw new ParameterException(command().commandLine(), rule + ", found " + counts);
    }
    int first = (int) numbers[0];
    int all = (int) numbers[1];
    if (odd) {
      TriangleTest test = TriangleTest.of(first, all);
      PanelReport.printTriangle(out, test, json);
    } else {
      PairedTest test = PairedTest.of(first, all, PairedTest.Hypothesis.EITHER);
      PanelReport.printPaired(out, test, json);
    }
  }

  private static void write(Path target, String text) {
    try {
      Path folder = target.toAbsolutePath().getParent();
      Path temporary = Files.createTempFile(folder, ".panel", ".svg");
      Files.writeString(temporary, text, StandardCharsets.UTF_8);
      Files.move(temporary, target, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new OutsideException(
          String.format(Locale.ROOT, "Writing %s failed: %s", target, e.getMessage()), e);
    }
  }

  /** Problems and questions to stderr; the exit code. */
  private int say(ReadTable table) {
    PrintWriter err = command().commandLine().getErr();
    for (TableProblem problem : table.problems()) {
      err.println(
          Problem.error(
              new Place(place(problem), problem.line(), problem.column()),
              problem.found(),
              problem.expected(),
              problem.remedy()));
    }
    table.questions().forEach(q -> err.println("question: " + q));
    return table.problems().isEmpty() ? ExitCode.FINE : ExitCode.INPUT;
  }

  private String place(TableProblem problem) {
    return file + (problem.sheet().isEmpty() ? "" : "#" + problem.sheet());
  }
}
