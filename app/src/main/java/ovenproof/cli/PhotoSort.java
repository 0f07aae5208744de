package ovenproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.bench.PhotoProposals;
import ovenproof.bench.PhotoProposals.Proposal;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.evidence.photo.PhotoSorting.Shot;
import ovenproof.evidence.photo.RunLabel;
import ovenproof.evidence.photo.RunLabels;
import ovenproof.files.AddedPhotos;
import ovenproof.files.AddedPhotos.Added;
import ovenproof.files.CampaignFolder;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import picocli.CommandLine.Option;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Says to which run of a campaign photographs belong, asks what is doubtful, and adds them when
 * told. Until then nothing is changed.
 */
final class PhotoSort {
  private static final int SHOWN_EVERY = 10;
  private static final String LEFT_OUT = "-";

  @Option(
      names = "--campaign",
      paramLabel = "DIR",
      description = {
        "Sort instead of measure: say to which run of this campaign each photograph belongs, by its"
            + " name, the label in the frame, else its time against the runs. Nothing is changed."
      })
  private @Nullable Path campaign;

  @Option(
      names = "--answer",
      paramLabel = "FILE=RUN",
      description = {
        "For one that is asked or wrong: the run, with batch and face if need be, as on a label"
            + " (toast-alder-1/batch:2/face:underside); - leaves it out. As often as needed."
      })
  private Map<String, String> answers = new LinkedHashMap<>();

  @Option(
      names = "--keep",
      description = "Copy those with a place into the campaign and add their rows to photos.csv.")
  private boolean keep;

  /** Whether it is asked for. */
  boolean isWanted() {
    return campaign != null;
  }

  /** A photograph with its place, or with what is wrong with it. */
  private record Seen(Path from, @Nullable Shot shot, List<Problem> problems) {}

  /** Where one goes; {@code photo} is null when it goes nowhere. */
  private record Placed(
      Path from, String words, String why, boolean asked, @Nullable Photo photo) {}

  int run(List<Path> files, boolean json, PrintWriter out, PrintWriter err) {
    Path folder = java.util.Objects.requireNonNull(campaign);
    Campaign c = CampaignFolder.withAllMeasures().load(folder).campaign();
    List<Seen> seen = look(files, c, err);
    List<Problem> problems = new ArrayList<>();
    seen.forEach(s -> problems.addAll(s.problems()));
    Map<Path, RunLabel> answered = answered(files, c, problems);
    AddedPhotos into = new AddedPhotos(folder, c);
    List<Placed> places = places(seen, answered, c, into);
    boolean kept = keep && problems.stream().noneMatch(p -> p.place().file().startsWith("--"));
    if (kept) {
      into.add(added(places));
    }
    if (json) {
      Json.print(out, document(folder, places, kept));
    } else {
      print(places, kept, folder, out);
    }
    problems.forEach(p -> err.println(Ovenproof.line(p)));
    boolean asked = places.stream().anyMatch(Placed::asked);
    return asked || !problems.isEmpty() ? ExitCode.INPUT : ExitCode.FINE;
  }

  // ---------- looking ----------

  private static List<Seen> look(List<Path> files, Campaign c, PrintWriter err) {
    List<Seen> seen = new ArrayList<>();
    SideBySide.run(
        files.size(),
        i -> look(files.get(i), c),
        i -> {},
        (i, outcome) -> {
          seen.add(outcome.get());
          progress(i + 1, files.size(), err);
        });
    return seen;
  }

  private static void progress(int done, int all, PrintWriter err) {
    if (all > 1 && (done % SHOWN_EVERY == 0 || done == all)) {
      err.println(done + " of " + all + " photographs looked at");
      err.flush();
    }
  }

  private static Seen look(Path file, Campaign c) {
    try {
      byte[] bytes = PhotoCommand.bytes(file);
      PhotoFile photo = PhotoFile.open(bytes, file.toString());
      Instant taken = PhotoProposals.taken(photo, c.info().zone());
      Shot shot =
          new Shot(
              String.valueOf(file.getFileName()),
              PhotoFile.fingerprint(bytes),
              taken,
              RunLabels.read(photo.picture()));
      return new Seen(file, shot, List.of());
    } catch (InputException unreadable) {
      return new Seen(file, null, unreadable.problems());
    }
  }

  // ---------- placing ----------

  /** What a person said, by file; what makes no sense is a problem. */
  private Map<Path, RunLabel> answered(List<Path> files, Campaign c, List<Problem> problems) {
    Map<Path, RunLabel> out = new LinkedHashMap<>();
    answers.forEach(
        (name, said) -> {
          List<Path> meant = files.stream().filter(f -> isCalled(f, name)).toList();
          RunLabel label = said.equals(LEFT_OUT) ? new RunLabel("", null, null) : label(said, c);
          if (meant.size() != 1 || label == null) {
            problems.add(
                Problem.error(
                    Place.of("--answer " + name + "=" + said),
                    meant.size() != 1
                        ? meant.size() + " photographs of this name"
                        : "\"" + said + "\"",
                    meant.size() != 1
                        ? "one of the photographs given"
                        : "a run of this campaign, or - to leave it out",
                    label == null ? "runs are listed in runs.csv" : "give its whole path"));
          } else {
            out.put(meant.get(0), label);
          }
        });
    return out;
  }

  private static boolean isCalled(Path file, String name) {
    return file.toString().equals(name) || String.valueOf(file.getFileName()).equals(name);
  }

  private static @Nullable RunLabel label(String said, Campaign c) {
    return RunLabel.read(said).filter(l -> c.run(l.run()).isPresent()).orElse(null);
  }

  private static List<Placed> places(
      List<Seen> seen, Map<Path, RunLabel> answered, Campaign c, AddedPhotos into) {
    List<Seen> readable = seen.stream().filter(s -> s.shot() != null).toList();
    PhotoProposals proposals = new PhotoProposals(c);
    List<Shot> shots = new ArrayList<>();
    readable.forEach(s -> shots.add(java.util.Objects.requireNonNull(s.shot())));
    List<Proposal> proposed = proposals.of(shots);
    List<Placed> out = new ArrayList<>();
    List<String> taken = new ArrayList<>();
    for (int i = 0; i < readable.size(); i++) {
      Path from = readable.get(i).from();
      Placed place = place(from, proposed.get(i), answered.get(from), proposals, into, taken);
      out.add(place);
      if (place.photo() != null) {
        taken.add(place.photo().file());
      }
    }
    return out;
  }

  private static Placed place(
      Path from,
      Proposal proposal,
      @Nullable RunLabel said,
      PhotoProposals proposals,
      AddedPhotos into,
      List<String> taken) {
    if (said != null && said.run().isEmpty()) {
      return new Placed(from, "left out", "you said so", false, null);
    }
    if (!proposal.isNew() && said == null) {
      return new Placed(from, "left out", proposal.why(), false, null);
    }
    if (said == null && proposal.isAsked()) {
      return new Placed(from, "?", proposal.why(), true, null);
    }
    String id = said == null ? proposal.run() : said.run();
    Integer batch = said == null || said.batch() == null ? proposal.batch() : said.batch();
    String saidFace = said == null ? null : said.face();
    String face = proposals.face(id, saidFace == null ? proposal.face() : saidFace);
    Photo photo =
        new Photo(
            into.place(String.valueOf(from.getFileName()), taken),
            id,
            batch,
            face,
            proposal.shot().takenAt(),
            null,
            List.of(),
            null);
    String words = id + ", batch " + batch + (face == null ? "" : ", " + face);
    return new Placed(from, words, said == null ? proposal.why() : "you said so", false, photo);
  }

  private static List<Added> added(List<Placed> places) {
    List<Added> out = new ArrayList<>();
    for (Placed place : places) {
      if (place.photo() != null) {
        out.add(new Added(place.from(), place.photo()));
      }
    }
    return out;
  }

  // ---------- saying ----------

  private static void print(List<Placed> places, boolean kept, Path folder, PrintWriter out) {
    int name = width(places.stream().map(p -> p.from().toString()).toList());
    int words = width(places.stream().map(Placed::words).toList());
    for (Placed p : places) {
      out.println(
          String.format(
              Locale.ROOT, "%-" + name + "s  %-" + words + "s  %s", p.from(), p.words(), p.why()));
    }
    long placed = places.stream().filter(p -> p.photo() != null).count();
    long asked = places.stream().filter(Placed::asked).count();
    out.println();
    out.println(
        placed
            + " with a place, "
            + asked
            + " asked, "
            + (places.size() - placed - asked)
            + " left out.");
    if (asked > 0) {
      out.println(
          "Say the run of those asked with --answer FILE=RUN, or leave them out with FILE=-.");
    }
    out.println(
        kept
            ? placed + " copied to " + folder.resolve("photos") + ", their rows are in photos.csv."
            : "Nothing was changed; --keep copies those with a place and adds their rows.");
  }

  private static int width(List<String> texts) {
    return Math.max(1, texts.stream().mapToInt(String::length).max().orElse(1));
  }

  private static ObjectNode document(Path folder, List<Placed> places, boolean kept) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("format", 1);
    node.put("campaign", folder.toString());
    node.put("kept", kept);
    ArrayNode photos = node.putArray("photos");
    for (Placed p : places) {
      ObjectNode one = photos.addObject();
      one.put("file", p.from().toString());
      one.put("asked", p.asked());
      one.put("why", p.why());
      Photo photo = p.photo();
      one.put("run", photo == null ? null : photo.run());
      one.put("batch", photo == null ? null : photo.batch());
      one.put("face", photo == null ? null : photo.face());
      one.put("as", photo == null ? null : photo.file());
    }
    return node;
  }

  // ---------- folders ----------

  /** Files as given, and in place of a folder the pictures in it, by their names. */
  static List<Path> pictures(List<Path> given) {
    List<Path> out = new ArrayList<>();
    for (Path path : given) {
      if (Files.isDirectory(path)) {
        out.addAll(inside(path));
      } else {
        out.add(path);
      }
    }
    return out;
  }

  private static List<Path> inside(Path folder) {
    try (var all = Files.walk(folder)) {
      List<Path> found =
          all.filter(p -> Files.isRegularFile(p) && PhotoFile.isNamedLikeOne(p.toString()))
              .sorted()
              .toList();
      if (found.isEmpty()) {
        throw new InputException(
            Problem.error(
                Place.of(folder.toString()),
                "a folder without photographs",
                "JPEG, PNG, WebP or HEIC files in it",
                ""));
      }
      return found;
    } catch (IOException e) {
      throw new OutsideException("Reading " + folder + " failed: " + e.getMessage(), e);
    }
  }
}
