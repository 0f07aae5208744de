package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.core.photo.Picture;
import ovenproof.evidence.photo.RunLabel;

/** A card of photographs against a campaign folder, through the command line. */
class PhotoSortTest {
  @TempDir private Path box;
  private Path campaign;
  private Path card;

  @BeforeEach
  void aCampaignAndACard() throws IOException {
    campaign = box.resolve("campaign");
    card = Files.createDirectories(box.resolve("card"));
    assertThat(run("new", campaign.toString(), "--starter", "toasters").code).isZero();
    write("products.csv", "product,name\nalder,Invented Alder\nbirch,Invented Birch\n");
    write(
        "runs.csv",
        "run,product,test,replicate,started\n"
            + "toast-alder-1,alder,medium,1,2026-03-02T10:00:00\n"
            + "toast-birch-1,birch,medium,1,2026-03-02T11:00:00\n");
    write(
        "events.csv",
        "run,event,time,batch\ntoast-alder-1,remove,+4:00,1\ntoast-birch-1,remove,+4:00,1\n");
  }

  private record Said(int code, String out, String err) {}

  private static Said run(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
            .execute(words);
    return new Said(code, out.toString(), err.toString());
  }

  private Said sort(String... more) {
    List<String> words = List.of("photo", card.toString(), "--campaign", campaign.toString());
    return run(Stream.concat(words.stream(), Stream.of(more)).toArray(String[]::new));
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(campaign.resolve(name), text);
  }

  private List<String> rows() throws IOException {
    return Files.readAllLines(campaign.resolve("photos.csv")).stream().skip(1).toList();
  }

  /** A picture of one shade, told from others by it, with a label in it or none. */
  private void photograph(String name, int shade, String label) throws IOException {
    BufferedImage image = new BufferedImage(300, 240, BufferedImage.TYPE_INT_RGB);
    int[] plain = new int[300 * 240];
    java.util.Arrays.fill(plain, shade << 16 | shade << 8 | shade);
    image.setRGB(0, 0, 300, 240, plain, 0, 300);
    if (!label.isEmpty()) {
      Picture code = PrintedLabel.of(label, 200);
      image.setRGB(20, 20, code.width(), code.height(), code.pixels(), 0, code.width());
    }
    ImageIO.write(image, "png", card.resolve(name).toFile());
  }

  @Test
  void labelsAndNamesTellTheRunAndNothingIsChangedUntilTold() throws IOException {
    photograph("IMG_1.png", 120, new RunLabel("toast-alder-1", 1, "back").text());
    photograph("toast-birch-1-front.png", 130, "");
    List<String> before = rows();
    Said said = sort();
    assertThat(said.code).isZero();
    assertThat(said.out)
        .contains("toast-alder-1, batch 1, back")
        .contains("its label is in the frame")
        .contains("toast-birch-1, batch 1, front")
        .contains("its name says the run")
        .contains("Nothing was changed");
    assertThat(rows()).isEqualTo(before);
    assertThat(campaign.resolve("photos")).doesNotExist();
  }

  @Test
  void thoseWithAPlaceAreKeptWholeAndPassTheCheck() throws IOException {
    photograph("IMG_1.png", 120, new RunLabel("toast-alder-1", 1, "back").text());
    photograph("who-knows.png", 140, "");
    Said said = sort("--keep");
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.out)
        .contains("no label in the frame and no time in the file")
        .contains("1 with a place, 1 asked, 0 left out.")
        .contains("--answer FILE=RUN");
    assertThat(rows())
        .hasSize(1)
        .first()
        .asString()
        .startsWith("photos/IMG_1.png,toast-alder-1,1,");
    assertThat(campaign.resolve("photos/IMG_1.png"))
        .hasSameBinaryContentAs(card.resolve("IMG_1.png"));
    assertThat(run("check", campaign.toString()).err).doesNotContain("photos");
  }

  @Test
  void whatIsKeptOnceIsKnownTheSecondTime() throws IOException {
    photograph("toast-alder-1-front.png", 120, "");
    sort("--keep");
    Said again = sort("--keep");
    assertThat(again.out).contains("in the campaign already, as photos/toast-alder-1-front.png");
    assertThat(rows()).hasSize(1);
  }

  @Test
  void anotherPictureOfTheSameNameDoesNotReplaceTheFirst() throws IOException {
    photograph("toast-alder-1-front.png", 120, "");
    sort("--keep");
    photograph("toast-alder-1-front.png", 90, "");
    sort("--keep");
    assertThat(rows()).hasSize(2).last().asString().startsWith("photos/toast-alder-1-front-2.png,");
  }

  @Test
  void answersSettleWhatIsAskedAndLeaveOut() throws IOException {
    photograph("a.png", 120, "");
    photograph("b.png", 130, "");
    Said said = sort("--answer", "a.png=toast-birch-1/batch:1/face:back", "--answer", "b.png=-");
    assertThat(said.code).isZero();
    assertThat(said.out).contains("toast-birch-1, batch 1, back").contains("you said so");
  }

  @Test
  void anAnswerThatNamesNoRunOrNoPhotographIsSaidAndNothingIsKept() throws IOException {
    photograph("a.png", 120, "");
    photograph("toast-alder-1-front.png", 130, "");
    Said said = sort("--answer", "a.png=toast-elm-9", "--answer", "z.png=-", "--keep");
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err)
        .contains("\"toast-elm-9\"")
        .contains("a run of this campaign")
        .contains("0 photographs of this name");
    assertThat(rows()).isEmpty();
  }

  @Test
  void twoLabelsInOneFrameAndACopyAreSaid() throws IOException {
    photograph("a.png", 120, new RunLabel("toast-alder-1", 1, null).text());
    Files.copy(card.resolve("a.png"), card.resolve("copy.png"));
    assertThat(sort().out).contains("the same picture as a.png");
  }

  @Test
  void aBrokenFileIsSaidAndTheOthersAreSorted() throws IOException {
    photograph("toast-alder-1-front.png", 120, "");
    Files.write(card.resolve("cut.jpg"), new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff, 1});
    Said said = sort();
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("cut.jpg").contains("damaged JPEG");
    assertThat(said.out).contains("toast-alder-1, batch 1");
  }

  @Test
  void theDocumentIsAsItsSchemaSays() throws IOException {
    photograph("toast-alder-1-front.png", 120, "");
    photograph("a.png", 130, "");
    String json = sort("--json").out;
    assertThat(JsonSchemasTest.schema("photo-sorting").validate(json, InputFormat.JSON)).isEmpty();
  }

  @Test
  void aFolderWithoutPhotographsIsSaid() {
    Said said = sort();
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("a folder without photographs");
  }
}
