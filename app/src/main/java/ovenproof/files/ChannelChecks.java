package ovenproof.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;

/** One channel shows one appliance at a time. */
final class ChannelChecks {
  /** Places that may belong to the room instead of an appliance. */
  private static final Set<String> OF_THE_ROOM = Set.of("ambient", "mains");

  private final Sections sections;
  private final RunTimes times;
  private final Map<String, Run> runs = new HashMap<>();

  ChannelChecks(Sections sections) {
    this.sections = sections;
    this.times = new RunTimes(sections.runs(), KeyChecks.effectiveOf(sections.events()));
    sections.runs().forEach(r -> runs.putIfAbsent(r.value().id(), r.value()));
  }

  void run() {
    sections.traces().forEach(this::owner);
    Map<String, List<Rowed<TraceBinding>>> byChannel = new LinkedHashMap<>();
    for (Rowed<TraceBinding> binding : sections.traces()) {
      String channel = binding.value().file() + "\n" + binding.value().channel();
      byChannel.computeIfAbsent(channel, c -> new ArrayList<>()).add(binding);
    }
    byChannel.values().forEach(this::claims);
    places();
  }

  private void owner(Rowed<TraceBinding> rowed) {
    TraceBinding binding = rowed.value();
    if (binding.product() == null && binding.run() == null) {
      if (!OF_THE_ROOM.contains(binding.place())) {
        rowed
            .row()
            .error(
                "place",
                binding.place() + " of no appliance",
                "\"product\" or \"run\"",
                "only ambient and mains may belong to the room");
      }
      return;
    }
    Run run = binding.run() == null ? null : runs.get(binding.run());
    if (run != null && binding.product() != null && !run.product().equals(binding.product())) {
      rowed
          .row()
          .error(
              "product",
              binding.product() + " beside " + run.id() + ", a run of " + run.product(),
              run.product(),
              "leave \"product\" out where \"run\" is given");
    }
  }

  private void claims(List<Rowed<TraceBinding>> bindings) {
    for (int i = 1; i < bindings.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (contradict(bindings.get(j).value(), bindings.get(i).value())) {
          claim(bindings.get(j), bindings.get(i));
          return;
        }
      }
    }
  }

  private boolean contradict(TraceBinding first, TraceBinding second) {
    boolean same =
        Objects.equals(appliance(first), appliance(second))
            && first.place().equals(second.place())
            && !Objects.equals(first.run(), second.run());
    return !same && window(first).overlaps(window(second));
  }

  private static void claim(Rowed<TraceBinding> first, Rowed<TraceBinding> second) {
    second
        .row()
        .error(
            "channel",
            "the channel \""
                + second.value().channel()
                + "\" of "
                + second.value().file()
                + " claimed for "
                + name(second.value())
                + " and, in line "
                + first.row().place().line()
                + ", for "
                + name(first.value()),
            "one place in one appliance at a time",
            "give both rows \"from\" and \"to\", or correct one of them");
  }

  private static String name(TraceBinding binding) {
    String owner = binding.run() == null ? binding.product() : binding.run();
    return binding.place() + (owner == null ? "" : " of " + owner);
  }

  private @Nullable String appliance(TraceBinding binding) {
    Run run = binding.run() == null ? null : runs.get(binding.run());
    return run == null ? binding.product() : run.product();
  }

  private RunTimes.Span window(TraceBinding binding) {
    Optional<RunTimes.Span> run = Optional.ofNullable(binding.run()).flatMap(times::of);
    return run.orElse(RunTimes.Span.ALWAYS).within(binding.from(), binding.to());
  }

  /** Two channels that both claim to be the centre of one appliance at the same time. */
  private void places() {
    Map<String, List<Rowed<TraceBinding>>> byPlace = new LinkedHashMap<>();
    for (Rowed<TraceBinding> binding : sections.traces()) {
      String place = appliance(binding.value()) + "\n" + binding.value().place();
      byPlace.computeIfAbsent(place, p -> new ArrayList<>()).add(binding);
    }
    byPlace.values().forEach(this::place);
  }

  private void place(List<Rowed<TraceBinding>> bindings) {
    for (int i = 1; i < bindings.size(); i++) {
      for (int j = 0; j < i; j++) {
        TraceBinding first = bindings.get(j).value();
        TraceBinding second = bindings.get(i).value();
        boolean sameFile = first.file().equals(second.file());
        boolean otherChannel = !first.channel().equals(second.channel());
        if (sameFile && otherChannel && window(first).overlaps(window(second))) {
          bindings
              .get(i)
              .row()
              .error(
                  "place",
                  name(second)
                      + " by two channels, \""
                      + first.channel()
                      + "\" and \""
                      + second.channel()
                      + "\"",
                  "one channel for each place",
                  "name the places apart, or limit them with \"from\" and \"to\"");
          return;
        }
      }
    }
  }
}
