package ovenproof.files;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import ovenproof.input.InputException;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureRegistry;

/** A small valid campaign folder, invented, which a test then spoils in one place. */
final class Folder {
  static final String CAMPAIGN =
      """
      format: 1
      campaign: two-ovens
      title: Two invented ovens
      kitchen: Invented kitchen
      zone: Europe/Dublin
      currency: EUR
      invented: yes
      """;

  static final String METHOD =
      """
      format: 1
      method: small
      title: A small method
      version: "1"
      population: Invented ovens
      facts:
        - {id: volume, name: Usable volume, unit: L}
      rated:
        - id: controls
          name: Controls
          steps: [needs the manual, hard, fair, easy, clear without reading]
      tests:
        - id: toast
          name: Toast
          parts: 3
          replicates: 2
          batches: 2
          stops:
            - {when: ends-by-itself}
            - {when: cap, at: 10 min}
          photos: {faces: [top, underside], pieces: 4}
          marks:
            - id: crisp
              name: Crispness
              kind: intensity
              anchors: {0: fresh bread, 10: plain cracker}
          measures:
            - {id: time, take: time-to-stop}
            - {id: crisp, take: mark}
            - {id: skin, take: reading, unit: °C}
            - {id: shade, take: lightness-mean, face: top}
          criteria:
            - {id: time, name: Time, parts: 1, measure: time, curve: {points: [[3 min, 10], [8 min, 0]]}}
            - {id: crisp, name: Crispness, parts: 2, measure: crisp, curve: {points: [[0, 0], [10, 10]]}}
          gates:
            - {id: skin, name: Side skin, kind: ceiling, reason: quality, measure: skin, at_most: 90 °C, ceiling: 5}
        - id: use
          name: Use
          parts: 1
          replicates: 0
          measures:
            - {id: controls, take: rated}
          criteria:
            - {id: controls, name: Controls, parts: 1, measure: controls, curve: {rated: 4}}
      """;

  private final Path root;

  Folder(Path root) {
    this.root = root;
    write("campaign.yaml", CAMPAIGN);
    write("method.yaml", METHOD);
    write("products.csv", "product,name\nalder,Alder 20\nbirch,Birch 18\n");
    write("specimens.csv", "specimen,product,acquired\nA1,alder,bought\nB1,birch,bought\n");
    write(
        "runs.csv",
        """
        run,product,test,replicate,specimen,session,started
        alder-1,alder,toast,1,A1,day-1,2026-03-04T10:00:00
        birch-1,birch,toast,1,B1,day-1,2026-03-04T11:00
        """);
    write(
        "events.csv",
        """
        run,event,time,value
        alder-1,load,+0:00,
        alder-1,stop,2026-03-04T10:06:30,ends-by-itself
        birch-1,stop,+10 min,cap
        birch-1,load,+0:00,
        """);
    write("instruments.csv", "instrument,name,quantity,uncertainty\nP1,Probe 1,temperature,1 K\n");
    write("calibrations.csv", "instrument,on,correction,uncertainty\nP1,2026-03-02,-0.5 K,0.3 K\n");
    write("readings.csv", "run,reading,value,instrument\nalder-1,skin,176 °F,P1\n");
    write("pieces.csv", "run,batch,piece,before,after\nalder-1,1,all,152 g,131 g\n");
    write(
        "ratings.csv",
        "session,assessor,run,batch,mark,value\npanel-1,taster-1,alder-1,1,crisp,7.5\n");
  }

  Path root() {
    return root;
  }

  Folder write(String file, String text) {
    return write(file, text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  Folder write(String file, byte[] bytes) {
    try {
      Path path = root.resolve(file);
      Files.createDirectories(path.getParent());
      Files.write(path, bytes);
      return this;
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  /** Replaces one piece of a file's text, which must be there. */
  Folder replace(String file, String old, String text) {
    try {
      String all = Files.readString(root.resolve(file));
      if (!all.contains(old)) {
        throw new IllegalArgumentException(file + " does not contain " + old);
      }
      return write(file, all.replace(old, text));
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  Folder append(String file, String line) {
    try {
      return write(file, Files.readString(root.resolve(file)) + line + "\n");
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  List<Problem> check() {
    try {
      return new CampaignFolder(MeasureRegistry.all()).check(root);
    } catch (InputException refused) {
      return refused.problems();
    }
  }

  /** What {@code check} says, a line per problem. */
  List<String> lines() {
    return check().stream()
        .map(p -> (p.severity() == Problem.Severity.WARNING ? "warning: " : "") + p)
        .toList();
  }

  LoadedCampaign load() {
    return new CampaignFolder(MeasureRegistry.all()).load(root);
  }
}
