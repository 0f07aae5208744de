package ovenproof.home;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.chart.Sign;
import ovenproof.web.Workbench;

/** Where a run stands, folded from its entries. */
public enum RunState {
  COUNTED(Sign.HOLDS, "counted"),
  RUNNING(Sign.ON_THE_LIP, "running"),
  TRIAL(Sign.NAKED, "trial, not scored"),
  VOID(Sign.CLASS_3, "void by a class 3 deviation"),
  REDONE(Sign.FAILS, "redone");

  private final Sign sign;
  private final String words;

  RunState(Sign sign, String words) {
    this.sign = sign;
    this.words = words;
  }

  public Sign sign() {
    return sign;
  }

  public String words() {
    return words;
  }

  /** Where every run of a campaign stands. */
  public record All(Map<Run, RunState> byRun) {
    public RunState of(Run run) {
      return java.util.Objects.requireNonNull(byRun.get(run));
    }

    public long count(RunState state) {
      return byRun.values().stream().filter(s -> s == state).count();
    }
  }

  /** All runs of a version of a campaign, folded once, in time linear in the entries. */
  public static All all(Workbench.Sheet sheet) {
    return sheet.derived(All.class, campaign -> new All(all(campaign)));
  }

  private static Map<Run, RunState> all(Campaign campaign) {
    Set<String> begun = new HashSet<>();
    Set<String> stopped = new HashSet<>();
    for (Event event : Entry.effective(campaign.events())) {
      if (event.type() == Event.Type.START) {
        begun.add(event.run());
      } else if (event.type() == Event.Type.STOP) {
        stopped.add(event.run());
      }
    }
    Set<String> voided = new HashSet<>();
    for (Deviation deviation : Entry.effective(campaign.deviations())) {
      if (deviation.deviationClass() == 3) {
        voided.add(deviation.run());
      }
    }
    Set<String> redone = new HashSet<>();
    campaign.runs().forEach(r -> redone.add(String.valueOf(r.redoOf())));
    Map<Run, RunState> states = new LinkedHashMap<>();
    for (Run run : campaign.runs()) {
      states.put(run, of(run, begun, stopped, voided, redone));
    }
    return states;
  }

  private static RunState of(
      Run run, Set<String> begun, Set<String> stopped, Set<String> voided, Set<String> redone) {
    if (voided.contains(run.id())) {
      return VOID;
    }
    if (redone.contains(run.id())) {
      return REDONE;
    }
    if (begun.contains(run.id()) && !stopped.contains(run.id())) {
      return RUNNING;
    }
    return run.kind() == Run.Kind.TRIAL ? TRIAL : COUNTED;
  }
}
