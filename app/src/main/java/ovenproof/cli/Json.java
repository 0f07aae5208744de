package ovenproof.cli;

import java.io.PrintWriter;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Prints JSON for {@code --json}: indented, UTF-8, one document, a newline at its end. */
final class Json {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
          .build();

  private Json() {}

  static void print(PrintWriter out, JsonNode document) {
    out.println(MAPPER.writeValueAsString(document));
    out.flush();
  }
}
