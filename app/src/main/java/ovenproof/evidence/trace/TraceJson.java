package ovenproof.evidence.trace;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.contract.MeasurementJson;
import ovenproof.core.measure.Measurement;
import ovenproof.core.safety.CoreSafety;
import ovenproof.core.safety.CoreWords;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.Layout;
import ovenproof.core.trace.Question;
import ovenproof.core.trace.TimeAxis;
import ovenproof.core.trace.TraceFile;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The JSON of {@code trace}: how a file was read, its channels and measurements. */
public final class TraceJson {

  private TraceJson() {}

  public static ObjectNode write(
      String name, TraceFile file, @Nullable TraceSession session, List<Measurement> measurements) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("format", 1);
    node.put("file", name);
    node.set("layout", layout(file));
    ArrayNode channels = node.putArray("channels");
    (session == null ? file : session.file()).channels().forEach(c -> channels.add(channel(c)));
    node.set("measurements", MeasurementJson.write(measurements));
    ArrayNode questions = node.putArray("questions");
    file.questions().forEach(q -> questions.add(question(q)));
    ArrayNode warnings = node.putArray("warnings");
    file.warnings().forEach(warnings::add);
    file.problems().forEach(warnings::add);
    if (session != null) {
      ArrayNode notes = node.putArray("notes");
      session.notes().forEach(notes::add);
      node.put("story", session.story());
      session.core().ifPresent(judged -> node.set("core", core(judged, session)));
    }
    return node;
  }

  private static ObjectNode core(CoreSafety judged, TraceSession session) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("state", judged.state().words());
    node.put("why", judged.why());
    node.put("source", CoreWords.source(session.criterion()).strip());
    node.put("caution", CoreWords.CAUTION);
    return node;
  }

  private static ObjectNode layout(TraceFile file) {
    Layout layout = file.layout();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("form", layout.form().word());
    node.put("encoding", layout.encoding());
    node.put("delimiter", layout.delimiter());
    node.put("decimal", layout.decimal());
    node.put("headerLine", layout.headerLine());
    node.put("firstDataLine", layout.firstDataLine());
    node.put("rows", layout.rows());
    node.put("skippedRows", layout.skippedRows());
    node.set("time", time(file.time()));
    node.put("segments", file.segments().size());
    ObjectNode metadata = node.putObject("metadata");
    layout.metadata().forEach(metadata::put);
    node.put("certainty", layout.certainty());
    ArrayNode explanation = node.putArray("explanation");
    layout.explanation().forEach(explanation::add);
    return node;
  }

  private static ObjectNode time(TimeAxis axis) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("form", axis.form().word());
    ArrayNode columns = node.putArray("columns");
    axis.columns().forEach(columns::add);
    node.put("description", axis.description());
    node.put("start", start(axis));
    node.put("startEpochMillis", axis.startEpochMillis());
    node.put("zone", axis.zone().name().toLowerCase(java.util.Locale.ROOT));
    node.put("stepSeconds", Math.rint(axis.medianStepSeconds() * 1e6) / 1e6);
    double[] seconds = axis.seconds();
    node.put("durationSeconds", seconds.length == 0 ? 0 : seconds[seconds.length - 1]);
    return node;
  }

  private static @Nullable String start(TimeAxis axis) {
    Long millis = axis.startEpochMillis();
    if (millis != null) {
      String text = java.time.Instant.ofEpochMilli(millis).toString();
      return axis.zone() == TimeAxis.Zone.ABSOLUTE ? text : text.substring(0, text.length() - 1);
    }
    return Double.isNaN(axis.startOfDaySeconds())
        ? null
        : java.time.LocalTime.ofNanoOfDay((long) (axis.startOfDaySeconds() % 86_400 * 1e9))
            .toString();
  }

  private static ObjectNode channel(Channel c) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("name", c.name());
    node.put("quantity", c.quantityWord());
    node.put("unit", c.dimension() == null ? null : c.unit().symbol());
    node.put("rows", c.rows());
    node.put("gaps", c.gaps());
    node.put("unused", c.state() == Channel.State.UNUSED);
    node.put("suspect", c.state() == Channel.State.SUSPECT);
    node.put("why", c.why());
    node.put("role", c.role().word());
    node.put("header", c.header());
    node.put("unitAsWritten", c.unitAsWritten());
    return node;
  }

  private static ObjectNode question(Question q) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("id", q.id());
    node.put("text", q.text());
    node.put("assumed", q.assumed());
    ArrayNode readings = node.putArray("readings");
    q.readings().forEach(readings::add);
    node.put("why", q.why());
    return node;
  }
}
