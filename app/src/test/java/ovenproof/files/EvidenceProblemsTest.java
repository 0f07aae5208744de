package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that are not what a table says they are. Each asserts place, found, expected and remedy.
 */
class EvidenceProblemsTest {
  @TempDir Path root;
  Folder folder;

  @BeforeEach
  void makeFolder() {
    folder = new Folder(root);
  }

  @Test
  void aPathThatClimbsOutIsRefused() {
    folder.write("photos.csv", "file,run,batch,face\n../secret.jpg,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"../secret.jpg\", expected a path that does not leave the folder; copy the file into the folder");
  }

  @Test
  void anAbsolutePathIsRefused() {
    folder.write("photos.csv", "file,run,batch,face\n/etc/passwd,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"/etc/passwd\", expected a path inside the campaign folder; copy the file into the folder");
  }

  @Test
  void backslashesAreSaid() {
    folder.write("photos.csv", "file,run,batch,face\nphotos\\a.jpg,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"photos\\a.jpg\", expected a path with forward slashes; write photos/a.jpg");
  }

  @Test
  void aLinkThatLeavesTheFolderIsRefused() throws IOException {
    Path outside = Path.of(System.getProperty("java.home"), "release");
    Files.createSymbolicLink(root.resolve("link.jpg"), outside);
    folder.write("photos.csv", "file,run,batch,face\nlink.jpg,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"link.jpg\", expected a file of the folder, not a link that leads out of it; copy the file itself into the folder");
  }

  @Test
  void aMissingFileIsSaid() {
    folder.write("photos.csv", "file,run,batch,face\nphotos/a.jpg,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"photos/a.jpg\", expected a file of the campaign folder; copy it there, or correct the name");
  }

  @Test
  void anEmptyPhotoIsSaid() {
    folder.write("photos/a.jpg", new byte[0]);
    folder.write("photos.csv", "file,run,batch,face\nphotos/a.jpg,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"photos/a.jpg\", expected a file with something in it; it is empty (0 bytes): copy it again");
  }

  @Test
  void aTextNamedLikeAPictureIsSaid() {
    folder.write("photos/a.jpg", "this is no picture at all");
    folder.write("photos.csv", "file,run,batch,face\nphotos/a.jpg,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"photos/a.jpg\", expected a JPEG, PNG or WebP picture; its content is none, whatever its name");
  }

  @Test
  void aPictureOfNineHundredMegapixelsIsRefusedByItsHeader() {
    folder.write("photos/a.png", Pictures.pngHeader(30_000, 30_000));
    folder.write("photos.csv", "file,run,batch,face\nphotos/a.png,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"photos/a.png\", expected a picture of at most 250 megapixels; its header says 30000 × 30000 pixels: export it smaller");
  }

  @Test
  void aHeicPictureIsToldHowToBecomeAJpeg() {
    folder.write("photos/a.heic", Pictures.heicHeader());
    folder.write("photos.csv", "file,run,batch,face\nphotos/a.heic,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"photos/a.heic\", expected a JPEG or PNG picture; it is HEIC: export it as JPEG (phones: camera settings, most compatible format)");
  }

  @Test
  void aDamagedPictureIsSaid() {
    folder.write("photos/a.jpg", java.util.Arrays.copyOf(Pictures.jpeg(8, 8), 30));
    folder.write("photos.csv", "file,run,batch,face\nphotos/a.jpg,alder-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found \"photos/a.jpg\", expected a whole picture; its header is damaged: copy it again");
  }

  @Test
  void theSamePictureTwiceIsWarnedOf() {
    folder.write("a.jpg", Pictures.jpeg(8, 8)).write("b.jpg", Pictures.jpeg(8, 8));
    folder.write("photos.csv", "file,run,batch,face\na.jpg,alder-1,1,top\nb.jpg,birch-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "warning: photos.csv:3:1: found \"b.jpg\", expected a picture of its own; its content is the same as that of a.jpg");
  }

  @Test
  void anUnknownFaceIsSaid() {
    folder.write("a.jpg", Pictures.jpeg(8, 8));
    folder.write("photos.csv", "file,run,batch,face\na.jpg,alder-1,1,botom\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:17: found \"botom\", expected a face of the photo plan (top, underside)");
  }

  @Test
  void aPhotoWithoutFaceIsSaidWhereThereAreTwo() {
    folder.write("a.jpg", Pictures.jpeg(8, 8));
    folder.write("photos.csv", "file,run,batch\na.jpg,alder-1,1\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:7: found a photo that does not say which face it shows, expected one of top, underside; fill in \"face\"");
  }

  @Test
  void aLoggersLineLongerThanAMebibyteIsSaid() {
    folder.write("traces/log.csv", "1,".repeat(600_000));
    folder.write("traces.csv", "file,channel,place,product\ntraces/log.csv,a,centre,alder\n");
    assertThat(folder.lines())
        .containsExactly(
            "traces.csv:2:1: found \"traces/log.csv\", expected a logger's file with lines of ordinary length; line 1 is longer than 1 MiB: is it a text file?");
  }
}
