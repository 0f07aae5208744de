package ovenproof.core.measure;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was measured: a product, a run of it, and inside the run a batch, a piece, a face or a
 * channel. Written as {@code run:alder-toast-1/batch:2/piece:3/face:top}.
 */
public record Subject(
    @Nullable String product,
    @Nullable String run,
    @Nullable Integer batch,
    @Nullable String piece,
    @Nullable String face,
    @Nullable String channel) {

  /** For a file that belongs to no run yet. */
  public static final Subject NONE = new Subject(null, null, null, null, null, null);

  public static Subject ofRun(String run) {
    return new Subject(null, run, null, null, null, null);
  }

  public static Subject ofProduct(String product) {
    return new Subject(product, null, null, null, null, null);
  }

  public static Subject ofChannel(String channel) {
    return new Subject(null, null, null, null, null, channel);
  }

  public Subject withRun(@Nullable String newRun) {
    return new Subject(product, newRun, batch, piece, face, channel);
  }

  public Subject withBatch(@Nullable Integer newBatch) {
    return new Subject(product, run, newBatch, piece, face, channel);
  }

  public Subject withPiece(@Nullable String newPiece) {
    return new Subject(product, run, batch, newPiece, face, channel);
  }

  public Subject withFace(@Nullable String newFace) {
    return new Subject(product, run, batch, piece, newFace, channel);
  }

  public Subject withChannel(@Nullable String newChannel) {
    return new Subject(product, run, batch, piece, face, newChannel);
  }

  @Override
  public String toString() {
    List<String> parts = new ArrayList<>();
    add(parts, "product", product);
    add(parts, "run", run);
    add(parts, "batch", batch);
    add(parts, "piece", piece);
    add(parts, "face", face);
    add(parts, "channel", channel);
    return String.join("/", parts);
  }

  private static void add(List<String> parts, String name, @Nullable Object value) {
    if (value != null) {
      parts.add(name + ":" + value);
    }
  }
}
