package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a method and a table may say of photographs: place, found, expected and remedy. */
class PhotoPlanProblemsTest {
  private static final String PLAN = "photos: {faces: [top, underside], pieces: 4}";
  private static final String SHADE = "- {id: shade, take: lightness-mean, face: top}";

  @TempDir Path root;
  Folder folder;

  @BeforeEach
  void makeFolder() {
    folder = new Folder(root);
    folder.write("a.jpg", Pictures.jpeg(9, 8));
  }

  @Test
  void everythingThatCanBeSaidPasses() {
    plan(
        "photos: {faces: [before, top, underside], pieces: 4, target: {from: shade-card},"
            + " chart_pitch: 41 mm, turned: sideways, area: 80 cm² ± 8 cm², judged: darkest-fifth,"
            + " classes: [{id: pale, from: 65}, {id: golden, from: 50}, {id: dark}]}");
    measures(
        "{id: dark, take: class-share}",
        "{id: dark-area, take: class-area, of: dark}",
        "{id: faces, take: top-minus-underside}",
        "{id: lost, take: lightness-lost}",
        "{id: worst, take: worst-piece}",
        "{id: front, take: cavity-front-back}",
        "{id: second, take: cavity-second-batch}");
    folder.write("b.jpg", Pictures.jpeg(10, 8));
    folder.write(
        "photos.csv",
        """
        file,run,batch,face,camera,boxes,chart_pitch,chart_corners,front
        a.jpg,alder-1,1,shade-card,phone-1,,41 mm,,
        b.jpg,alder-1,1,top,phone-1,"1:0,0,4,4 2:4,0,4,4 3:0,4,4,4 4:4,4,4,4",,"40,40 100,41 99,80 41,79",top
        """);
    assertThat(folder.lines()).isEmpty();
  }

  @Test
  void aPitchOfNothingIsRefused() {
    plan("photos: {faces: [top, underside], pieces: 4, chart_pitch: 0 mm}");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .startsWith("method.yaml:")
        .contains("found \"0 mm\"")
        .contains("measure it with a ruler");
  }

  @Test
  void classesStandFromPalestToDarkest() {
    plan(
        "photos: {faces: [top, underside], pieces: 4, classes: [{id: dark, from: 40}, {id: pale,"
            + " from: 65}]}");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .contains("found \"65\", expected an L* below 40")
        .contains("from palest to darkest");
  }

  @Test
  void aShareOfAClassNeedsClasses() {
    measures("{id: dark, take: class-share}");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .contains("a share of a class without classes, expected \"classes\" in \"photos\"");
  }

  @Test
  void aClassThatTheMethodDoesNotKnowIsSaidWithTheNearest() {
    plan(
        "photos: {faces: [top, underside], pieces: 4, classes: [{id: golden, from: 50}, {id:"
            + " dark}]}");
    measures("{id: share, take: class-share, of: drak}");
    assertThat(folder.lines()).singleElement().asString().contains("\"drak\"").contains("\"dark\"");
  }

  @Test
  void aDifferenceOfFacesNeedsTheFace() {
    plan("photos: {faces: [top], pieces: 4}");
    measures("{id: faces, take: top-minus-underside}");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .contains("a difference to a face that is not photographed, expected underside");
  }

  @Test
  void aShadeIsWrittenOrTakenFromACardNotBoth() {
    plan(
        "photos: {faces: [top, underside], pieces: 4, target: {L: 60, a: 9, b: 30, from:"
            + " shade-card}}");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .contains("a shade both written and taken from a card");
  }

  /** Golden, brown, dark, burnt give 79, 108, 94, 47 (handbook §8): it would reward burning. */
  @Test
  void theBrowningIndexIsNeverScoredAlone() {
    measures("{id: index, take: browning-index, face: top}");
    folder.replace(
        "method.yaml",
        "- {id: crisp, name: Crispness, parts: 2, measure: crisp, curve: {points: [[0, 0], [10, 10]]}}",
        "- {id: crisp, name: Crispness, parts: 2, measure: index, curve: {points: [[40, 0], [90, 10]]}}");
    assertThat(folder.lines())
        .anySatisfy(
            line ->
                assertThat(line)
                    .contains("found a criterion on the browning index, expected")
                    .contains("shown and never scored alone"));
  }

  @Test
  void cornersOfTheChartGoAroundIt() {
    folder.write(
        "photos.csv",
        "file,run,batch,face,chart_corners\na.jpg,alder-1,1,top,\"0,0 90,90 90,0 0,90\"\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:21: found \"0,0 90,90 90,0 0,90\", expected corners in the order in which"
                + " one walks around the chart");
    folder.write(
        "photos.csv", "file,run,batch,face,chart_corners\na.jpg,alder-1,1,top,\"0,0 90,90\"\n");
    assertThat(folder.lines()).singleElement().asString().contains("expected four corners such as");
  }

  @Test
  void aFrontThatIsNoSideIsSaid() {
    folder.write("photos.csv", "file,run,batch,face,front\na.jpg,alder-1,1,top,door\n");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .startsWith("photos.csv:2:21: found \"door\"");
  }

  @Test
  void aPictureOfSeveralRunsSaysWhichPiecesAreWhose() {
    folder.write("photos.csv", "file,run,batch,face\na.jpg,alder-1,1,top\na.jpg,birch-1,1,top\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:1: found a picture of several runs that does not say which pieces are of"
                + " alder-1, expected \"boxes\" or \"outlines\" in each of its rows; draw them on"
                + " the photo page, or write piece:x,y,w,h",
            "photos.csv:3:1: found a picture of several runs that does not say which pieces are of"
                + " birch-1, expected \"boxes\" or \"outlines\" in each of its rows; draw them on"
                + " the photo page, or write piece:x,y,w,h");
  }

  @Test
  void aSessionWithoutItsShadeCardIsSaid() {
    plan("photos: {faces: [top, underside], pieces: 4, target: {from: shade-card}}");
    folder.write("photos.csv", "file,run,batch,face,camera\na.jpg,alder-1,1,top,phone-1\n");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .contains("no shade card photographed in camera session phone-1");
  }

  private void plan(String plan) {
    folder.replace("method.yaml", PLAN, plan);
  }

  private void measures(String... uses) {
    folder.replace("method.yaml", SHADE, SHADE + "\n      - " + String.join("\n      - ", uses));
  }
}
