package ovenproof.desk;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import ovenproof.input.OutsideException;

/** Held while a program works on the desk; a second program is told who holds it. */
record DeskLock(RandomAccessFile file, FileLock lock) {
  static DeskLock take(Path folder) {
    try {
      Files.createDirectories(folder);
      RandomAccessFile file = new RandomAccessFile(folder.resolve("desk.lock").toFile(), "rw");
      FileLock lock = tryLock(file);
      if (lock == null) {
        String holder = file.readLine();
        file.close();
        throw held(folder, holder);
      }
      file.setLength(0);
      file.write(
          ("process " + ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.UTF_8));
      return new DeskLock(file, lock);
    } catch (IOException failure) {
      throw new OutsideException(
          "cannot write to the desk's folder " + folder + ": " + failure.getMessage(), failure);
    }
  }

  private static @Nullable FileLock tryLock(RandomAccessFile file) throws IOException {
    try {
      // Past the name of the holder, so that others may read it.
      return file.getChannel().tryLock(1L << 40, 1, false);
    } catch (OverlappingFileLockException heldHere) {
      return null;
    }
  }

  private static OutsideException held(Path folder, @Nullable String holder) {
    return new OutsideException(
        "the desk "
            + folder
            + " is in use by "
            + (holder == null ? "another program" : holder)
            + ". Stop that one, or choose another folder with --desk.",
        new IllegalStateException("locked"));
  }

  void close() {
    try {
      lock.release();
      file.close();
    } catch (IOException alreadyGone) {
      // The system releases the lock with the process.
    }
  }
}
