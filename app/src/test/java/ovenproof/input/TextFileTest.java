package ovenproof.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class TextFileTest {
  private final Problems problems = new Problems();

  @Test
  void aLineOfAGibibyteIsRefusedAfterTheFirstMebibyte() {
    Endless line = new Endless(1L << 30);
    assertThat(TextFile.read(line, "events.csv", problems)).isEmpty();
    assertThat(line.given).isLessThan(3L << 20);
    assertThat(problems.all())
        .extracting(Problem::toString)
        .containsExactly(
            "events.csv:1: found a line longer than 1 MiB, expected lines of ordinary length; is"
                + " this the file you meant, and not a picture or a binary log?");
  }

  @Test
  void aLineOfExactlyTheLimitIsRead() {
    byte[] line = "a".repeat(TextFile.LONGEST_LINE).getBytes(StandardCharsets.UTF_8);
    assertThat(TextFile.read(new ByteArrayInputStream(line), "a.csv", problems)).isPresent();
    assertThat(problems.all()).isEmpty();
  }

  @Test
  void theByteOrderMarkIsNoText() {
    byte[] text = "\uFEFFa".getBytes(StandardCharsets.UTF_8);
    assertThat(TextFile.read(new ByteArrayInputStream(text), "a.csv", problems)).contains("a");
  }

  @Test
  void aByteThatIsNoUtf8HasALineAndAColumn() {
    byte[] text = {'a', '\n', 'b', (byte) 0xFF};
    assertThat(TextFile.read(new ByteArrayInputStream(text), "a.csv", problems)).isEmpty();
    assertThat(problems.all().get(0).place()).isEqualTo(new Place("a.csv", 2, 2));
  }

  /** So many letters without a line break, made while they are read. */
  private static final class Endless extends InputStream {
    private final long length;
    private long given;

    Endless(long length) {
      this.length = length;
    }

    @Override
    public int read() {
      return given++ < length ? 'a' : -1;
    }
  }
}
