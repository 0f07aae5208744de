package ovenproof.files;

import java.nio.file.Files;
import java.nio.file.Path;

/** The documentation's folder, whichever module the tests run in. */
final class Docs {

  private Docs() {}

  static Path folder() {
    Path here = Path.of("").toAbsolutePath();
    Path docs = here.resolve("docs/files.md");
    return (Files.exists(docs) ? here : here.getParent()).resolve("docs");
  }
}
