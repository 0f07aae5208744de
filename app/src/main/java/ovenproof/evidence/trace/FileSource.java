package ovenproof.evidence.trace;

import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import ovenproof.core.trace.LogSource;

/**
 * A file that is read piece by piece. Pieces are copied, not mapped: fresh memory costs more than
 * the copy, and a file that is cut while it is mapped ends the program.
 */
final class FileSource implements LogSource, AutoCloseable {

  private final FileChannel channel;
  private final long size;

  FileSource(Path file) throws IOException {
    channel = FileChannel.open(file, StandardOpenOption.READ);
    size = channel.size();
  }

  @Override
  public long size() {
    return size;
  }

  /**
   * @throws UncheckedIOException when the disk fails or the file has become shorter
   */
  @Override
  public void copy(long position, byte[] into, int offset, int length) {
    ByteBuffer buffer = ByteBuffer.wrap(into, offset, length);
    try {
      while (buffer.hasRemaining()) {
        long at = position + length - buffer.remaining();
        if (channel.read(buffer, at) < 0) {
          throw new EOFException("it became shorter while it was read");
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
