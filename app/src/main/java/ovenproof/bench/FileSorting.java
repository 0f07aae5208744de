package ovenproof.bench;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.desk.Attachment;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.EvidenceStore;
import ovenproof.desk.Job;
import ovenproof.desk.Jobs;
import ovenproof.desk.NewEntry;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.evidence.photo.PhotoMetadata;
import ovenproof.evidence.photo.PhotoSorting;
import ovenproof.evidence.photo.RunLabels;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;

/**
 * Puts files that were dropped together to their runs: by name, else a photograph by the label in
 * its frame or the time it was taken. What is not certain stays unsorted, for a person to say.
 */
final class FileSorting {
  static final String KIND = "sort";

  /** Where files lie until someone knows their run. */
  static final String UNSORTED = "unsorted/";

  private final Desk desk;

  FileSorting(Desk desk) {
    this.desk = desk;
  }

  /** A file with what speaks for a run. */
  private record Dropped(
      Attachment file, RunNames.Named named, PhotoSorting.@Nullable Sorted seen) {
    /** The run, if nothing contradicts. */
    Optional<String> run() {
      String byName = named.run();
      String bySight = seen == null ? null : seen.run();
      boolean labelled =
          seen != null && seen.certainty() == PhotoSorting.Certainty.LABEL && bySight != null;
      if (byName != null && labelled && !byName.equals(bySight)) {
        return Optional.empty();
      }
      return Optional.ofNullable(byName != null ? byName : bySight);
    }
  }

  /** The job's input: names of files, one a line. Begun twice it changes nothing more. */
  String run(Job job, Jobs.Running running) {
    String cid = java.util.Objects.requireNonNull(job.campaign());
    Campaign campaign = desk.load(cid);
    RunNames names = new RunNames(campaign);
    List<PhotoSorting.RunTime> times = times(campaign);
    List<String> paths = job.input().lines().toList();
    int sorted = 0;
    for (int i = 0; i < paths.size(); i++) {
      String path = paths.get(i);
      running.at(i, paths.size(), path.substring(UNSORTED.length()));
      Optional<Attachment> file = desk.attachment(cid, path);
      if (file.isPresent()
          && !known(campaign, file.get())
          && put(cid, campaign, dropped(campaign, names, times, file.get()), job, i)) {
        sorted++;
      }
    }
    running.at(paths.size(), paths.size(), sorted + " of " + paths.size() + " put to their runs");
    return "/c/" + cid + "/sort";
  }

  private static boolean known(Campaign c, Attachment file) {
    return c.photos().stream().anyMatch(p -> p.file().equals(file.path()));
  }

  private Dropped dropped(
      Campaign c, RunNames names, List<PhotoSorting.RunTime> times, Attachment file) {
    String name = file.path().substring(file.path().lastIndexOf('/') + 1);
    RunNames.Named named = names.read(name);
    return new Dropped(file, named, Bench.isPicture(name) ? seen(c, times, file, name) : null);
  }

  private PhotoSorting.@Nullable Sorted seen(
      Campaign c, List<PhotoSorting.RunTime> times, Attachment file, String name) {
    try (InputStream in = desk.evidence().open(file.sha256())) {
      PhotoFile photo = PhotoFile.open(in.readNBytes((int) PhotoFile.LARGEST_BYTES + 1), name);
      Instant taken = taken(photo.metadata(), c.info().zone());
      var shot =
          new PhotoSorting.Shot(file.path(), file.sha256(), taken, RunLabels.read(photo.picture()));
      return PhotoSorting.sort(List.of(shot), times).get(0);
    } catch (InputException notReadable) {
      return null;
    } catch (IOException failure) {
      throw new OutsideException("cannot read " + file.path(), failure);
    }
  }

  static @Nullable Instant taken(PhotoMetadata metadata, ZoneId zone) {
    if (metadata.takenAt() == null) {
      return null;
    }
    return metadata.offset() == null
        ? metadata.takenAt().atZone(zone).toInstant()
        : metadata.takenAt().toInstant(metadata.offset());
  }

  /** Runs that have a start on the clock and an end. */
  static List<PhotoSorting.RunTime> times(Campaign c) {
    Map<String, Double> stops = new HashMap<>();
    for (Event e : Entry.effective(c.events())) {
      if (e.type() == Event.Type.STOP || e.type() == Event.Type.REMOVE) {
        stops.merge(e.run(), e.elapsedSeconds(), Math::max);
      }
    }
    List<PhotoSorting.RunTime> times = new ArrayList<>();
    for (Run r : c.runs()) {
      Double end = stops.get(r.id());
      if (r.started() != null && end != null) {
        times.add(
            new PhotoSorting.RunTime(
                r.id(), r.started(), r.started().plusMillis(Math.round(end * 1000))));
      }
    }
    return times;
  }

  private boolean put(String cid, Campaign c, Dropped dropped, Job job, int number) {
    Optional<Run> run = dropped.run().flatMap(c::run);
    if (run.isEmpty()) {
      return false;
    }
    Attachment file = dropped.file();
    if (!Bench.isPicture(file.path())) {
      String name = file.path().substring(UNSORTED.length());
      EvidenceStore.Stored stored = new EvidenceStore.Stored(file.sha256(), file.bytes());
      desk.attach(cid, "runs/" + run.get().id() + "/" + name, stored, job.who());
      return true;
    }
    Photo photo = photo(c, run.get(), file.path(), dropped.named().face(), dropped.named().batch());
    NewEntry.Stamp stamp = NewEntry.Stamp.of(job.who(), job.createdAt());
    desk.append(
        cid, List.of(new NewEntry(job.id() + "-" + number, EntryKind.PHOTO, photo, stamp, null)));
    return true;
  }

  static Photo photo(
      Campaign c, Run run, String path, @Nullable String face, @Nullable Integer batch) {
    List<String> faces =
        c.method()
            .test(run.test())
            .map(t -> t.photos() == null ? List.<String>of() : t.photos().faces())
            .orElse(List.of());
    String only = faces.size() == 1 ? faces.get(0) : null;
    return new Photo(
        path,
        run.id(),
        batch == null ? 1 : batch,
        face == null ? only : face,
        null,
        null,
        List.of(),
        null);
  }
}
