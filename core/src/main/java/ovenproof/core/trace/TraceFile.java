package ovenproof.core.trace;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A log as it was read.
 *
 * @param layout how it was read
 * @param time of every row
 * @param channels in the order of the file
 * @param segments more than one when the logger restarted inside the file
 * @param questions what the file leaves open
 * @param warnings what a person should know before trusting it
 * @param problems why nothing could be read; empty when something was
 */
public record TraceFile(
    Layout layout,
    TimeAxis time,
    List<Channel> channels,
    List<Segment> segments,
    List<Question> questions,
    List<String> warnings,
    List<String> problems) {

  public TraceFile {
    channels = List.copyOf(channels);
    segments = List.copyOf(segments);
    questions = List.copyOf(questions);
    warnings = List.copyOf(warnings);
    problems = List.copyOf(problems);
  }

  public boolean isReadable() {
    return problems.isEmpty();
  }

  public int rows() {
    return time.seconds().length;
  }

  /** By name as in the file, then ignoring case and blanks. */
  public Optional<Channel> channel(String name) {
    return channels.stream()
        .filter(c -> c.name().equals(name))
        .findFirst()
        .or(() -> channels.stream().filter(c -> folded(c.name()).equals(folded(name))).findFirst())
        .or(
            () ->
                channels.stream().filter(c -> folded(c.header()).equals(folded(name))).findFirst());
  }

  private static String folded(String name) {
    return name.replaceAll("\\s+", "").toLowerCase(Locale.ROOT);
  }

  /** The segment with the most rows; the whole file when the logger never restarted. */
  public Segment longestSegment() {
    return segments.stream()
        .max(Comparator.comparingInt(Segment::rows))
        .orElse(new Segment(0, rows()));
  }

  /** A channel over the whole file, times from its first row. */
  public Trace trace(Channel channel) {
    return new Trace(channel.name(), time.seconds(), channel.values(), channel.unit());
  }

  /** A channel within a segment, times from the segment's first row. */
  public Trace trace(Channel channel, Segment segment) {
    if (segment.fromRow() == 0 && segment.toRow() == rows()) {
      return trace(channel);
    }
    double[] seconds =
        java.util.Arrays.copyOfRange(time.seconds(), segment.fromRow(), segment.toRow());
    double start = seconds.length == 0 ? 0 : seconds[0];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] -= start;
    }
    return new Trace(
        channel.name(),
        seconds,
        java.util.Arrays.copyOfRange(channel.values(), segment.fromRow(), segment.toRow()),
        channel.unit());
  }

  /** Of several, one that nothing is wrong with; else the first in the file. */
  private static final Comparator<Channel> SOUND_FIRST =
      Comparator.comparing(c -> c.state() != Channel.State.GOOD);

  /** The channel that measures are taken from when nobody says which. */
  public Optional<Channel> centre() {
    Optional<Channel> byName =
        channels.stream()
            .filter(c -> c.role() == Channel.Role.CENTRE && c.isMeasuredTemperature())
            .min(SOUND_FIRST);
    return byName
        .or(
            () ->
                channels.stream()
                    .filter(c -> c.isMeasuredTemperature() && c.role() == Channel.Role.MEASURED)
                    .min(SOUND_FIRST))
        .or(() -> channels.stream().filter(Channel::isMeasuredTemperature).findFirst());
  }

  public Optional<Channel> first(Channel.Role role) {
    return channels.stream().filter(c -> c.role() == role).findFirst();
  }
}
