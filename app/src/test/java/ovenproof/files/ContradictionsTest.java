package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Rows that are right by themselves and contradict each other. Each asserts place, found, expected
 * and remedy.
 */
class ContradictionsTest {
  @TempDir Path root;
  Folder folder;

  @BeforeEach
  void makeFolder() {
    folder = new Folder(root);
  }

  @Test
  void aKeyThatStandsTwiceIsSaid() {
    folder.append("products.csv", "alder,Another");
    assertThat(folder.lines())
        .containsExactly(
            "products.csv:4:1: found alder for the second time, expected each product once; it stands already in line 2");
  }

  @Test
  void theSameReplicateTwiceIsSaid() {
    folder.append("runs.csv", "alder-2,alder,toast,1,A1,day-2,2026-03-05T10:00");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:4:21: found alder toast standard replicate 1 for the second time, expected each replicate once, or \"redo_of\" with its cause; it is already alder-1");
  }

  @Test
  void aRedoNeedsACause() {
    folder.replace("runs.csv", "session,started", "session,started,redo_of");
    folder.append("runs.csv", "alder-2,alder,toast,1,A1,day-2,2026-03-05T10:00,alder-1");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:4:49: found alder-2 repeats alder-1 without a cause, expected the cause, written before results were seen; fill in \"cause\"; without one the first run counts and this one is deleted");
  }

  @Test
  void aCauseComesBeforeTheRedo() {
    folder.replace("runs.csv", "session,started", "session,started,redo_of,cause,cause_at");
    folder.append(
        "runs.csv",
        "alder-2,alder,toast,1,A1,day-2,2026-03-05T10:00,alder-1,low mains,2026-03-05T12:00");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:4:67: found a cause written after the repetition had started, expected a time before 2026-03-05T10:00; a cause found afterwards is a deviation: enter it in deviations.csv");
  }

  @Test
  void aRedoOfAnotherProductIsSaid() {
    folder.replace("runs.csv", "session,started", "session,started,redo_of,cause,cause_at");
    folder.append(
        "runs.csv",
        "birch-2,birch,toast,2,B1,day-2,2026-03-05T10:00,alder-1,low mains,2026-03-05T09:00");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:4:49: found alder-1, which is of another product, test, variant or replicate, expected an attempt at the same planned run");
  }

  @Test
  void aRunRepeatsNothingInACircle() {
    folder.replace("runs.csv", "session,started", "session,started,redo_of,cause,cause_at");
    folder.append(
        "runs.csv", "alder-2,alder,toast,1,A1,day-2,2026-03-05T10:00,alder-3,x,2026-03-05T09:00");
    folder.append(
        "runs.csv", "alder-3,alder,toast,1,A1,day-2,2026-03-06T10:00,alder-2,x,2026-03-05T09:00");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:4:49: found a circle of repetitions, expected a first attempt",
            "runs.csv:5:49: found a circle of repetitions, expected a first attempt");
  }

  @Test
  void aSpecimenOfAnotherProductIsSaid() {
    folder.replace("runs.csv", "1,B1", "1,A1");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:3:23: found A1, which is of the product alder, expected a specimen of birch; correct the specimen or the product");
  }

  @Test
  void oneApplianceIsInOneRunAtATime() {
    folder.append("runs.csv", "alder-2,alder,toast,2,A1,day-1,2026-03-04T10:03");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:4:32: found alder-2 while alder-1 was going on in A1, expected one run at a time in one appliance; correct the start, the events or the specimen");
  }

  @Test
  void aColdStartSoonAfterARunIsWarnedOf() {
    folder.append("runs.csv", "alder-2,alder,toast,2,A1,day-1,2026-03-04T10:15");
    assertThat(folder.lines())
        .containsExactly(
            "warning: runs.csv:4:32: found a cold start 8 min after alder-1, expected time to cool (usually 60 to 120 min, shown by a probe near ambient); if it was warm, enter a deviation");
  }

  @Test
  void aReachedCapIsNoOtherStop() {
    folder.replace("events.csv", "+10 min,cap", "+12 min,ends-by-itself");
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:4:22: found ends-by-itself, after 12 min 0 s, expected cap: the limit of 10 min was passed; write cap; the run is then known as longer than 10 min");
  }

  @Test
  void aCapThatWasNotReachedIsSaid() {
    folder.replace("events.csv", "+10 min,cap", "+7 min,cap");
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:4:21: found cap, after 7 min 0 s, expected a cap of 10 min that was reached; say what ended the run, or correct the time");
  }

  @Test
  void aSecondStopIsSaid() {
    folder.append("events.csv", "birch-1,stop,+9 min,ends-by-itself");
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:6:9: found a second stop of birch-1 batch 1, expected one stop for each batch; fill in \"batch\", or let one correct the other");
  }

  @Test
  void aStopOutsideTheRulesIsWarnedOf() {
    folder.replace("events.csv", "ends-by-itself", "shade");
    assertThat(folder.lines())
        .containsExactly(
            "warning: events.csv:3:34: found a stop by shade, expected a stop rule of the test (ends-by-itself, cap); if it is right, the method was not followed: enter a deviation");
  }

  @Test
  void aStopWithoutBeginningIsWarnedOf() {
    folder.replace("events.csv", "alder-1,load,+0:00,\n", "");
    assertThat(folder.lines())
        .containsExactly(
            "warning: runs.csv:2:1: found alder-1 has a stop but neither start nor load, expected an event from which its time counts; add a load to events.csv");
  }

  @Test
  void aRunWithoutStopIsWarnedOf() {
    folder.replace("events.csv", "birch-1,stop,+10 min,cap\n", "");
    assertThat(folder.lines())
        .containsExactly(
            "warning: runs.csv:3:1: found birch-1 has events but no stop, expected a stop event that says what ended it; add it to events.csv");
  }

  @Test
  void foodDoesNotGainMass() {
    folder.replace("pieces.csv", "131 g", "161 g");
    assertThat(folder.lines())
        .containsExactly(
            "pieces.csv:2:21: found 161 g, more than before (152 g), expected a mass up to 152 g; exchanged, or weighed with its tray?");
  }

  @Test
  void lotsThatFollowTheProductsAreWarnedOf() {
    folder.write("lots.csv", "lot,food\nL1,bread\nL2,bread\n");
    folder.write("pieces.csv", "run,batch,piece,lot\nalder-1,1,all,L1\nbirch-1,1,all,L2\n");
    assertThat(folder.lines())
        .containsExactly(
            "warning: pieces.csv:2:15: found lots of toast that no two groups of products share, expected every lot given to several products; a difference between products may be one between lots");
  }

  @Test
  void aMeasuredFactFarFromItsNameplateIsWarnedOf() {
    folder.write("facts.csv", "product,fact,nameplate,measured\nalder,volume,20 L,17 L\n");
    assertThat(folder.lines())
        .containsExactly(
            "warning: facts.csv:2:19: found 17 L, 15 % below the nameplate's 20 L, expected a difference of at most 10 %; measure again; if it stays, it is a finding");
  }

  @Test
  void oneRaterIsWarnedOf() {
    folder.write("rated.csv", "product,fact,rater,step\nalder,controls,ann,3\n");
    assertThat(folder.lines())
        .containsExactly(
            "warning: rated.csv:2:16: found 1 of 2 raters for controls of alder, expected 2 people who rate independently; ask another person, who has not seen this step");
  }

  @Test
  void ratersFarApartAreWarnedOf() {
    folder.write(
        "rated.csv", "product,fact,rater,step\nalder,controls,ann,1\nalder,controls,ben,3\n");
    assertThat(folder.lines())
        .containsExactly(
            "warning: rated.csv:3:20: found steps from 1 to 3 for the same thing, expected steps that differ by one at most; read the worded steps together; then each corrects their own entry or keeps it");
  }

  @Test
  void oneChannelShowsOneApplianceAtATime() {
    folder.write("traces/log.csv", "t,a\n0,20\n");
    folder.write(
        "traces.csv",
        "file,channel,place,product\ntraces/log.csv,a,centre,alder\ntraces/log.csv,a,centre,birch\n");
    assertThat(folder.lines())
        .containsExactly(
            "traces.csv:3:16: found the channel \"a\" of traces/log.csv claimed for centre of birch and, in line 2, for centre of alder, expected one place in one appliance at a time; give both rows \"from\" and \"to\", or correct one of them");
  }

  @Test
  void twoCentresOfOneApplianceAreSaid() {
    folder.write("traces/log.csv", "t,a,b\n0,20,20\n");
    folder.write(
        "traces.csv",
        "file,channel,place,product\ntraces/log.csv,a,centre,alder\ntraces/log.csv,b,centre,alder\n");
    assertThat(folder.lines())
        .containsExactly(
            "traces.csv:3:18: found centre of alder by two channels, \"a\" and \"b\", expected one channel for each place; name the places apart, or limit them with \"from\" and \"to\"");
  }

  @Test
  void aChannelBelongsToAnAppliance() {
    folder.write("traces/log.csv", "t,a\n0,20\n");
    folder.write("traces.csv", "file,channel,place\ntraces/log.csv,a,centre\n");
    assertThat(folder.lines())
        .containsExactly(
            "traces.csv:2:18: found centre of no appliance, expected \"product\" or \"run\"; only ambient and mains may belong to the room");
  }

  @Test
  void aCorrectionNamesAnEntry() {
    folder.replace("readings.csv", "value,instrument", "value,instrument,entry,corrects");
    folder.append("readings.csv", "alder-1,skin,80 °C,P1,e2,e1");
    assertThat(folder.lines())
        .containsExactly(
            "readings.csv:3:26: found \"e1\", expected the key of an entry of this table",
            "readings.csv:3:1: found alder-1 skin for the second time, expected each run + reading + batch + piece + face + time once; it stands already in line 2");
  }

  @Test
  void theSameReadingTwiceIsSaid() {
    folder.append("readings.csv", "alder-1,skin,80 °C,P1");
    assertThat(folder.lines())
        .containsExactly(
            "readings.csv:3:1: found alder-1 skin for the second time, expected each run + reading + batch + piece + face + time once; it stands already in line 2");
  }

  @Test
  void aBlindCodeStandsForOneSample() {
    folder.write(
        "ratings.csv",
        "session,assessor,run,batch,mark,value,code\np,t,alder-1,1,crisp,5,417\np,t,birch-1,1,crisp,5,417\n");
    assertThat(folder.lines())
        .containsExactly(
            "ratings.csv:3:23: found the code 417 on two samples of p, expected a code of its own for each sample; the other is alder-1 batch 1");
  }

  @Test
  void aRatingWithoutBatchIsWarnedOf() {
    folder.replace("ratings.csv", "alder-1,1,", "alder-1,,");
    assertThat(folder.lines())
        .containsExactly(
            "warning: ratings.csv:2:18: found 1 rating without batch, expected the batch that was tasted; a batch is what a rating says something about; fill in \"batch\"");
  }

  @Test
  void notRunAndRunAreOneTooMany() {
    folder.write("not-run.csv", "product,test,state,reason\nalder,toast,cannot-do,no slot\n");
    assertThat(folder.lines())
        .containsExactly(
            "not-run.csv:2:13: found cannot-do, although runs.csv has counted runs of it, expected the one or the other; delete this row, or make the runs trials if they were declared so");
  }

  @Test
  void aProbeThatMovedIsWarnedOf() {
    folder.append("calibrations.csv", "P1,2026-03-09,1.2 K,0.3 K");
    assertThat(folder.lines())
        .containsExactly(
            "warning: calibrations.csv:3:15: found a shift of 1.7 K since 2026-03-02, expected at most 1 K; what it read since then is in doubt");
  }

  @Test
  void anInstrumentWithoutUncertaintyIsWarnedOf() {
    folder.replace("instruments.csv", "temperature,1 K", "temperature,");
    folder.write("calibrations.csv", "instrument,on,correction,uncertainty\n");
    assertThat(folder.lines())
        .containsExactly(
            "warning: instruments.csv:2:1: found P1 without uncertainty or calibration, expected one of them; fill in \"uncertainty\", or check it against something known");
  }

  @Test
  void aTrialAfterCountedRunsIsWarnedOf() {
    folder.replace("runs.csv", "session,started", "session,started,kind");
    folder.append("runs.csv", "alder-2,alder,toast,1,A1,day-2,2026-03-05T10:00,trial");
    assertThat(folder.lines())
        .containsExactly(
            "warning: runs.csv:4:49: found a trial after counted runs of the same test, expected trials before them; a trial is declared beforehand, to find the setting");
  }
}
