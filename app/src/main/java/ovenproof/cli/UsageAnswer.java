package ovenproof.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ovenproof.input.NearestWord;
import picocli.CommandLine.Command;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a typed command, what was probably meant, and what to type next. */
final class UsageAnswer {
  private final ParameterException failure;
  private final List<String> verbs;
  private final List<String> typed;
  private final CommandSpec command;

  UsageAnswer(ParameterException failure, List<Class<?>> verbs, String... typed) {
    this.failure = failure;
    this.typed = List.of(typed);
    this.verbs =
        verbs.stream()
            .map(v -> v.getAnnotation(Command.class))
            .flatMap(c -> c == null ? Stream.empty() : Stream.of(c.name()))
            .toList();
    this.command = failure.getCommandLine().getCommandSpec();
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add("ovenproof: " + sentence());
    if (ofVerb()) {
      Arrays.stream(command.usageMessage().footer()).filter(l -> !l.isBlank()).forEach(lines::add);
    }
    lines.add("Try: ovenproof help" + (ofVerb() ? " " + command.name() : ""));
    return lines;
  }

  private boolean ofVerb() {
    return command.parent() != null && !command.name().equals("help");
  }

  private String sentence() {
    if (failure instanceof MissingParameterException missing) {
      return missing(missing.getMissing());
    }
    if (failure instanceof UnmatchedArgumentException unmatched) {
      return unmatched(unmatched.getUnmatched());
    }
    if (command.name().equals("help") || typed.get(0).equals("help")) {
      return noVerb(typed.get(typed.size() - 1));
    }
    return String.valueOf(failure.getMessage());
  }

  private String missing(List<ArgSpec> missing) {
    List<String> needs = missing.stream().map(UsageAnswer::need).toList();
    return command.name() + " needs " + String.join(", and ", needs);
  }

  private static String need(ArgSpec missing) {
    String named =
        missing.isOption()
            ? String.join(" or ", List.of(firstName(missing))) + " " + missing.paramLabel()
            : missing.paramLabel();
    String[] description = missing.description();
    return description.length == 0
        ? named
        : named + " (" + lowered(description[0].replaceAll("[.;].*", "")) + ")";
  }

  private static String firstName(ArgSpec option) {
    return ((picocli.CommandLine.Model.OptionSpec) option).longestName();
  }

  private static String lowered(String words) {
    boolean shout = words.length() > 1 && Character.isUpperCase(words.charAt(1));
    return words.isEmpty() || shout
        ? words
        : Character.toLowerCase(words.charAt(0)) + words.substring(1);
  }

  private String unmatched(List<String> words) {
    String first = words.get(0);
    if (first.startsWith("-")) {
      return option(first);
    }
    return ofVerb()
        ? "\"" + first + "\" is one word too many for " + command.name()
        : noVerb(first);
  }

  private String option(String written) {
    List<String> known = command.options().stream().flatMap(o -> Arrays.stream(o.names())).toList();
    String bare = written.replaceAll("=.*", "");
    return bare + " is no option of " + command.name() + meant(NearestWord.to(bare, known));
  }

  private String noVerb(String word) {
    return "\"" + word + "\" is no verb" + meant(NearestWord.to(word, verbs));
  }

  private static String meant(Optional<String> nearest) {
    return nearest.map(w -> "; did you mean " + w + "?").orElse("");
  }
}
