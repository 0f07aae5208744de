package ovenproof.proof;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Unit;
import ovenproof.files.CampaignFolder;
import ovenproof.measure.Measured;
import ovenproof.measure.Measured.Counts;
import ovenproof.measure.Measured.Value;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;

/**
 * An invented campaign of eight ovens whose measurements are frozen in a table, so that the truth
 * of a sentence about it never drifts with the simulation it came from. Scored afresh.
 */
final class FrozenCampaign {
  private static final Path PROOF = Path.of("src/test/resources/ovenproof/proof");

  final Campaign campaign;
  final Measured measured;
  final Verdict verdict;

  private FrozenCampaign(Path folder, Path measurements) {
    this.campaign = CampaignFolder.withAllMeasures().load(folder).campaign();
    this.measured = measured(measurements);
    this.verdict = new VerdictService(2).verdict(campaign, measured);
  }

  static FrozenCampaign load() {
    return new FrozenCampaign(PROOF.resolve("quarry-street"), PROOF.resolve("measured.csv"));
  }

  /** The same ovens simulated again later: some scores differ by a tenth. */
  static FrozenCampaign again() {
    Path folder = PROOF.resolve("quarry-street-again");
    return new FrozenCampaign(folder, folder.resolve("measured.csv"));
  }

  Proofreader proofreader() {
    return new Proofreader(campaign, measured, verdict);
  }

  static String text(String name) {
    try (InputStream in = FrozenCampaign.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalArgumentException("no test resource " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Measured measured(Path file) {
    List<Value> values = new ArrayList<>();
    try (CsvReader<NamedCsvRecord> rows =
        CsvReader.builder().ofNamedCsvRecord(Files.newBufferedReader(file))) {
      for (NamedCsvRecord row : rows) {
        add(values, row);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Measured(values, List.of());
  }

  /** A row with a batch belongs to the run above it. */
  private static void add(List<Value> values, NamedCsvRecord row) {
    String batch = row.getField("batch");
    if (batch.isEmpty()) {
      values.add(value(row, measurement(row), List.of()));
      return;
    }
    Value whole = values.remove(values.size() - 1);
    List<Measurement> parts = new ArrayList<>(whole.parts());
    parts.add(
        measurement(row)
            .withSubject(Subject.ofRun(row.getField("run")).withBatch(Integer.valueOf(batch))));
    values.add(value(row, whole.value(), parts));
  }

  private static Value value(NamedCsvRecord row, Measurement value, List<Measurement> parts) {
    return new Value(
        row.getField("test"),
        row.getField("use"),
        row.getField("product"),
        orNull(row, "run"),
        orNull(row, "variant"),
        Counts.valueOf(row.getField("counts")),
        value,
        parts);
  }

  private static Measurement measurement(NamedCsvRecord row) {
    Double u = number(row, "uncertainty");
    String run = orNull(row, "run");
    return new Measurement(
        row.getField("measure"),
        row.getField("label"),
        run == null ? Subject.ofProduct(row.getField("product")) : Subject.ofRun(run),
        number(row, "value"),
        unit(row.getField("unit")),
        u,
        u == null ? List.of() : List.of(new Component("run", u)),
        Integer.parseInt(row.getField("n")),
        Censoring.valueOf(row.getField("censored")),
        number(row, "low"),
        number(row, "high"),
        "frozen",
        1,
        orNull(row, "note"),
        List.of());
  }

  private static Unit unit(String symbol) {
    for (Unit unit : Unit.values()) {
      if (unit.symbol().equals(symbol)) {
        return unit;
      }
    }
    throw new IllegalArgumentException("no unit " + symbol);
  }

  private static @Nullable String orNull(NamedCsvRecord row, String column) {
    String text = row.getField(column);
    return text.isEmpty() ? null : text;
  }

  private static @Nullable Double number(NamedCsvRecord row, String column) {
    String text = row.getField(column);
    return text.isEmpty() ? null : Double.valueOf(text);
  }
}
