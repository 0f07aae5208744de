package ovenproof.verdict.question;

import java.util.ArrayList;
import java.util.List;
import ovenproof.verdict.TextTable;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The answer to a question about a verdict: a table and what it says. Text, page and JSON show the
 * same one.
 *
 * @param id of the question, as the command line and JSON name it
 * @param columns heads of the table
 * @param rows cells: text, or numbers where JSON should have them
 * @param sentences what the table says, and its limits
 */
public record QuestionAnswer(
    String id,
    String title,
    List<String> columns,
    List<List<Object>> rows,
    List<String> sentences) {

  public QuestionAnswer {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    sentences = List.copyOf(sentences);
  }

  /** As text: title, table, sentences. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>(List.of("", title));
    List<List<String>> cells = new ArrayList<>(List.of(columns));
    rows.forEach(row -> cells.add(row.stream().map(Object::toString).toList()));
    lines.addAll(TextTable.lines(cells));
    lines.addAll(sentences);
    return lines;
  }

  /** As JSON: rows as objects by column. */
  public ObjectNode json() {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("id", id);
    node.put("title", title);
    ArrayNode table = node.putArray("rows");
    for (List<Object> row : rows) {
      ObjectNode cells = table.addObject();
      for (int c = 0; c < columns.size(); c++) {
        Object cell = row.get(c);
        if (cell instanceof Integer whole) {
          cells.put(columns.get(c), whole);
        } else if (cell instanceof Double number) {
          cells.put(columns.get(c), Double.isFinite(number) ? number : null);
        } else {
          cells.put(columns.get(c), cell.toString());
        }
      }
    }
    ArrayNode said = node.putArray("sentences");
    sentences.forEach(said::add);
    return node;
  }
}
