package ovenproof.kitchen.bench;

import java.util.List;
import java.util.Map;
import ovenproof.kitchen.physics.Oven;

/**
 * All that happened, and what would have happened without any luck.
 *
 * @param ovens in order of the campaign
 * @param presets toast preset chosen by trial
 * @param runs trials first, then sessions in order
 * @param noiseless one run of each oven and test: nominal mains, 21 °C, mean food and people
 */
public record Season(
    List<Oven> ovens,
    Map<String, Integer> presets,
    List<RunResult> runs,
    List<RunResult> noiseless) {

  public Season {
    ovens = List.copyOf(ovens);
    presets = Map.copyOf(presets);
    runs = List.copyOf(runs);
    noiseless = List.copyOf(noiseless);
  }

  /** The run of this key. */
  public RunResult run(String id) {
    return runs.stream()
        .filter(r -> r.plan().id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no run " + id));
  }

  /** The run of an oven on an ideal day. */
  public RunResult noiseless(String oven, TestKind test) {
    return noiseless.stream()
        .filter(r -> r.plan().oven().id().equals(oven) && r.plan().test() == test)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no oven named " + oven));
  }
}
