package ovenproof.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Problem;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** The program: {@code ovenproof VERB …}. */
@Command(
    name = "ovenproof",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "From the empty bench to the published verdict, for people who test countertop cooking"
          + " appliances side by side."
    },
    footer = {
      "",
      "Begin with: ovenproof demo --once. A verb's own help: ovenproof help verdict.",
      "Exit: 0 fine, 1 the input has problems, 2 wrong usage, 3 something outside failed."
    })
public final class Ovenproof implements Runnable {

  /** In the order of the help. */
  private static final List<Class<?>> VERBS =
      List.of(
          BackupCommand.class,
          CheckCommand.class,
          DemoCommand.class,
          ExportCommand.class,
          ImportCommand.class,
          NewCommand.class,
          PanelCommand.class,
          PhotoCommand.class,
          ProofreadCommand.class,
          PublishCommand.class,
          RestoreCommand.class,
          ServeCommand.class,
          TraceCommand.class,
          VerdictCommand.class,
          VerifyCommand.class,
          CommandLine.HelpCommand.class);

  @CommandLine.Spec private CommandLine.Model.@org.jspecify.annotations.Nullable CommandSpec spec;

  public static void main(String[] args) {
    // Else the options' library looks for a class of another language, which opens the jar to the
    // end.
    System.setProperty("picocli.disable.closures", "true");
    System.exit(run(new PrintWriter(System.out, true, StandardCharsets.UTF_8), args));
  }

  /** Runs one verb and returns its exit code; problems go to stderr. */
  static int run(PrintWriter out, String... args) {
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    return commandLine(asked(args), out, err).execute(args);
  }

  static CommandLine commandLine(PrintWriter out, PrintWriter err) {
    return commandLine(VERBS, out, err);
  }

  /** What reading these words takes: describing every verb is a third of a short answer's time. */
  private static List<Class<?>> asked(String... args) {
    String first = args.length == 0 ? "" : args[0];
    if (args.length == 1 && first.equals("--version")) {
      return List.of();
    }
    for (Class<?> verb : VERBS) {
      boolean named = verb.getSimpleName().equalsIgnoreCase(first + "Command");
      if (named && !first.equals("help")) {
        return List.of(verb); // by its class: reading annotations of every verb takes too long
      }
    }
    return VERBS;
  }

  private static CommandLine commandLine(List<Class<?>> verbs, PrintWriter out, PrintWriter err) {
    CommandLine line = new CommandLine(new Ovenproof());
    for (Class<?> verb : verbs) {
      line.addSubcommand(verb);
    }
    Answers answers = new Answers();
    return line.setOut(out)
        .setErr(err)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExecutionExceptionHandler(answers)
        .setParameterExceptionHandler(answers);
  }

  /**
   * A class with a name, where two method references would do: those would keep picocli's central
   * class out of the launcher's archive of classes.
   */
  private static final class Answers
      implements CommandLine.IExecutionExceptionHandler, CommandLine.IParameterExceptionHandler {
    @Override
    public int handleExecutionException(
        Exception failure, CommandLine command, CommandLine.ParseResult parsed) {
      return explain(failure, command, parsed);
    }

    @Override
    public int handleParseException(ParameterException failure, String[] args) {
      return explainUsage(failure, args);
    }
  }

  @Override
  public void run() {
    if (spec != null) {
      spec.commandLine().usage(spec.commandLine().getOut());
    }
  }

  /** The one place where a failure becomes a sentence and an exit code. */
  private static int explain(
      Exception failure, CommandLine command, CommandLine.ParseResult parsed) {
    PrintWriter err = command.getErr();
    if (failure instanceof InputException input) {
      input.problems().forEach(problem -> err.println(line(problem)));
      return ExitCode.INPUT;
    }
    if (failure instanceof OutsideException) {
      err.println("ovenproof: " + failure.getMessage());
      return ExitCode.OUTSIDE;
    }
    err.println(
        "ovenproof: a fault in the program itself ("
            + failure
            + "). Nothing was written. Set OVENPROOF_TRACE=1 to see where.");
    if (System.getenv("OVENPROOF_TRACE") != null) {
      failure.printStackTrace(err);
    }
    return ExitCode.OUTSIDE;
  }

  static String line(Problem problem) {
    return (problem.severity() == Problem.Severity.ERROR ? "" : "warning: ") + problem;
  }

  private static int explainUsage(ParameterException failure, String[] args) {
    new UsageAnswer(failure, VERBS, args)
        .lines()
        .forEach(failure.getCommandLine().getErr()::println);
    return ExitCode.USAGE;
  }
}
