package ovenproof.tracepage;

import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.apache.batik.transcoder.image.PNGTranscoder;

/** Drawings as files. */
final class Raster {

  private static final float WIDTH_PIXELS = 2400;

  private Raster() {}

  /** The drawing as an SVG file. */
  static byte[] svg(String drawing) {
    return ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + drawing + "\n")
        .getBytes(StandardCharsets.UTF_8);
  }

  /** The drawing as pixels, {@value #WIDTH_PIXELS} wide. */
  static byte[] png(String drawing) {
    PNGTranscoder transcoder = new PNGTranscoder();
    transcoder.addTranscodingHint(ImageTranscoder.KEY_WIDTH, WIDTH_PIXELS);
    ByteArrayOutputStream out = new ByteArrayOutputStream(60_000);
    try {
      transcoder.transcode(
          new TranscoderInput(new StringReader(drawing)), new TranscoderOutput(out));
    } catch (TranscoderException e) {
      throw new IllegalStateException("a picture that was drawn here cannot be rastered", e);
    }
    return out.toByteArray();
  }
}
