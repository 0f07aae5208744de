package ovenproof.files;

import java.util.List;
import java.util.Optional;

/**
 * One table of a campaign folder.
 *
 * @param file its name in the folder
 * @param title what its rows are
 * @param columns required ones first
 * @param key columns that together identify a row; empty when rows have no identity
 */
public record Table(String file, String title, List<Column> columns, List<String> key) {

  public Table {
    columns = List.copyOf(columns);
    key = List.copyOf(key);
  }

  public List<String> columnNames() {
    return columns.stream().map(Column::name).toList();
  }

  public Optional<Column> column(String name) {
    return columns.stream().filter(c -> c.name().equals(name)).findFirst();
  }
}
