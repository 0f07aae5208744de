package ovenproof.evidence.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import ovenproof.evidence.photo.PhotoSorting.Certainty;
import ovenproof.evidence.photo.PhotoSorting.RunTime;
import ovenproof.evidence.photo.PhotoSorting.Shot;
import ovenproof.evidence.photo.PhotoSorting.Sorted;

class PhotoSortingTest {
  private static final Instant TEN = Instant.parse("2026-03-02T10:00:00Z");
  private static final List<RunTime> RUNS =
      List.of(run("toast-alder-1", 0), run("toast-birch-1", 60), run("toast-alder-2", 120));

  private static RunTime run(String key, int afterMinutes) {
    Instant start = TEN.plus(Duration.ofMinutes(afterMinutes));
    return new RunTime(key, start, start.plus(Duration.ofMinutes(20)));
  }

  private static Shot shot(String file, @Nullable Integer afterMinutes, String... labels) {
    Instant at = afterMinutes == null ? null : TEN.plus(Duration.ofMinutes(afterMinutes));
    return new Shot(file, "sha-" + file, at, List.of(labels));
  }

  @Test
  void aLabelSaysRunBatchAndFace() {
    Sorted sorted = only(shot("a.jpg", 24, "run:toast-alder-1/batch:2/face:underside"));
    assertThat(sorted.certainty()).isEqualTo(Certainty.LABEL);
    assertThat(sorted.run()).isEqualTo("toast-alder-1");
    assertThat(sorted.label()).contains(new RunLabel("toast-alder-1", 2, "underside"));
  }

  @Test
  void aBareKeyOnALabelDoes() {
    assertThat(only(shot("a.jpg", null, "toast-birch-1")).run()).isEqualTo("toast-birch-1");
  }

  @Test
  void whatAStrangersCodeSaysIsNoLabel() {
    Sorted sorted = only(shot("a.jpg", 24, "https://example.org/shop?id=1"));
    assertThat(sorted.certainty()).isEqualTo(Certainty.TIME);
    assertThat(sorted.run()).isEqualTo("toast-alder-1");
  }

  @Test
  void aLabelLeftFromYesterdayIsAsked() {
    Sorted sorted = only(shot("a.jpg", 20 + 26 * 60, "run:toast-alder-1"));
    assertThat(sorted.certainty()).isEqualTo(Certainty.ASK);
    assertThat(sorted.why()).contains("26 h after its end").contains("another run");
  }

  @Test
  void aLabelOfARunThatHadNotBegunIsAsked() {
    assertThat(only(shot("a.jpg", 30, "run:toast-alder-2")).why()).contains("before the run began");
  }

  @Test
  void theLabelsOfTwoRunsAreAskedWithBoth() {
    Sorted sorted = only(shot("a.jpg", 84, "run:toast-alder-1", "run:toast-birch-1"));
    assertThat(sorted.certainty()).isEqualTo(Certainty.ASK);
    assertThat(sorted.candidates()).containsExactly("toast-alder-1", "toast-birch-1");
  }

  @Test
  void theSameBytesAreSaidToBeTheSamePicture() {
    Shot first = shot("a.jpg", 24);
    Shot again = new Shot("copy of a.jpg", first.sha256(), first.takenAt(), List.of());
    List<Sorted> sorted = PhotoSorting.sort(List.of(first, again), RUNS);
    assertThat(sorted.get(1).certainty()).isEqualTo(Certainty.DUPLICATE);
    assertThat(sorted.get(1).why()).isEqualTo("the same picture as a.jpg");
  }

  /** Summer time forgotten in the camera: three labelled photographs tell, the others follow. */
  @Test
  void labelledPhotographsCorrectTheClockForTheOthers() {
    List<Shot> shots =
        List.of(
            shot("1.jpg", 24 + 60, "run:toast-alder-1"),
            shot("2.jpg", 85 + 60, "run:toast-birch-1"),
            shot("3.jpg", 146 + 60, "run:toast-alder-2"),
            shot("4.jpg", 83 + 60));
    assertThat(PhotoSorting.clockAhead(shots, RUNS)).isEqualTo(Duration.ofMinutes(60));
    Sorted unlabelled = PhotoSorting.sort(shots, RUNS).get(3);
    assertThat(unlabelled.certainty()).isEqualTo(Certainty.TIME);
    assertThat(unlabelled.run()).isEqualTo("toast-birch-1");
  }

  @Test
  void twoLabelsOrLabelsThatDisagreeCorrectNothing() {
    List<Shot> two =
        List.of(shot("1.jpg", 84, "toast-alder-1"), shot("2.jpg", 145, "toast-birch-1"));
    assertThat(PhotoSorting.clockAhead(two, RUNS)).isZero();
    List<Shot> three = new ArrayList<>(two);
    three.set(1, shot("2.jpg", 400, "toast-birch-1"));
    three.add(shot("3.jpg", 150, "toast-alder-2"));
    assertThat(PhotoSorting.clockAhead(three, RUNS)).isZero();
  }

  /** Three batches out of one oven: each photograph is of the batch that came out before it. */
  @Test
  void theTimeTellsTheBatch() {
    Instant end = TEN.plus(Duration.ofMinutes(60));
    RunTime batches =
        new RunTime(
            "toast-alder-1",
            TEN,
            end,
            List.of(
                new PhotoSorting.BatchEnd(1, TEN.plus(Duration.ofMinutes(20))),
                new PhotoSorting.BatchEnd(2, TEN.plus(Duration.ofMinutes(28))),
                new PhotoSorting.BatchEnd(3, end)),
            List.of());
    List<Shot> shots = List.of(shot("a.jpg", 24), shot("b.jpg", 31), shot("c.jpg", 62));
    assertThat(PhotoSorting.sort(shots, List.of(batches)))
        .extracting(Sorted::batch)
        .containsExactly(1, 2, 3);
  }

  /** Two ovens end together; somebody noted the photograph of one of them. */
  @Test
  void aNotedPhotographTellsWhichOfTwoRunsItIs() {
    RunTime alder = RUNS.get(0);
    RunTime birch =
        new RunTime(
            "toast-birch-1",
            alder.start(),
            alder.end(),
            List.of(),
            List.of(TEN.plus(Duration.ofMinutes(24))));
    List<RunTime> both = List.of(alder, birch);
    assertThat(PhotoSorting.sort(List.of(shot("a.jpg", 24)), both).get(0).run())
        .isEqualTo("toast-birch-1");
    assertThat(PhotoSorting.sort(List.of(shot("b.jpg", 30)), both).get(0).certainty())
        .isEqualTo(Certainty.ASK);
  }

  @Test
  void withoutLabelAndTimeAPersonIsAsked() {
    Sorted sorted = only(shot("a.jpg", null));
    assertThat(sorted.certainty()).isEqualTo(Certainty.ASK);
    assertThat(sorted.why()).isEqualTo("no label in the frame and no time in the file");
  }

  private static Sorted only(Shot shot) {
    return PhotoSorting.sort(List.of(shot), RUNS).get(0);
  }
}
