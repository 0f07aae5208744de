package ovenproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.verdict.CampaignViews;
import ovenproof.verdict.VerdictJson;
import ovenproof.verdict.VerdictService;
import ovenproof.verdict.VerdictService.Scored;
import ovenproof.verdict.VerdictText;
import ovenproof.verdict.question.QuestionAnswer;
import ovenproof.verdict.question.ReferenceChart;
import ovenproof.verdict.question.VerdictQuestions;
import ovenproof.verdict.question.YearsQuestions;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof verdict DIR}. */
@Command(
    name = "verdict",
    footer = {"", "For example: ovenproof verdict examples/phone-and-thermometer"},
    mixinStandardHelpOptions = true,
    description = "Scores, intervals, ranks and tiers of a campaign, and the questions about them.")
final class VerdictCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "The campaign folder.")
  private Path folder = Path.of(".");

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Option(
      names = "--profile",
      paramLabel = "ID",
      description = "Weigh the tests as another reader of the method does.")
  private @Nullable String profile;

  @ArgGroup(exclusive = false, heading = "%nQuestions%n")
  private Questions asked = new Questions();

  @Spec private @Nullable CommandSpec spec;

  /** What may be asked. */
  static final class Questions {
    @Option(
        names = "--why",
        arity = "2",
        paramLabel = "PRODUCT",
        description = "Why the first stands above or below the second.")
    private List<String> why = List.of();

    @Option(
        names = "--unseat",
        description = "The smallest change of weights that unseats the winner.")
    private boolean unseat;

    @Option(names = "--profiles", description = "Totals for every reader that the method names.")
    private boolean profiles;

    @Option(
        names = "--own-scatter",
        description = "Intervals and tiers if each product had its own scatter between runs.")
    private boolean ownScatter;

    @Option(
        names = "--acceptability",
        arity = "0..1",
        fallbackValue = "30",
        paramLabel = "CONCENTRATION",
        description = "Places under uncertain weights (Dirichlet; 30 unless said).")
    private @Nullable Double acceptability;

    @Option(
        names = "--drop",
        paramLabel = "test|run|assessor",
        description = "The verdict without each of them.")
    private @Nullable Drop drop;

    @Option(names = "--worth", description = "Which test earns its cost, which repeats another.")
    private boolean worth;

    @Option(
        names = "--more-runs",
        arity = "2",
        paramLabel = "PRODUCT",
        description = "How many more runs would split two products.")
    private List<String> moreRuns = List.of();

    @Option(names = "--value", description = "Value for money at the latest prices.")
    private boolean value;

    @Option(
        names = "--prices",
        paramLabel = "DATE",
        description = "What prices alone moved since that day (2026-03-02); no score does.")
    private @Nullable LocalDate prices;

    @Option(
        names = "--withdrawn",
        paramLabel = "PRODUCT",
        description = "Tiers and ranks without a product that was withdrawn.")
    private @Nullable String withdrawn;

    @Option(
        names = "--since",
        paramLabel = "DATE",
        description = "Why totals moved since the end of that day (2026-03-02).")
    private @Nullable LocalDate since;

    @Option(
        names = "--moved-from",
        paramLabel = "DIR",
        description = "Why totals differ from those of an earlier copy of the campaign.")
    private @Nullable Path movedFrom;

    @Option(
        names = "--suited",
        split = ",",
        paramLabel = "RULE",
        description = "Who fits: toast:first-tier, cakes>=7, no-gate; several with commas.")
    private List<String> suited = List.of();

    @Option(
        names = "--earlier",
        split = ",",
        paramLabel = "DIR",
        description = "Earlier campaigns, oldest first, for --reference and --under.")
    private List<Path> earlier = List.of();

    @Option(
        names = "--reference",
        paramLabel = "PRODUCT",
        description = "Control charts of the reference appliance over the sessions.")
    private @Nullable String reference;

    @Option(
        names = "--bridge",
        paramLabel = "DIR",
        description =
            "Products of an earlier campaign on today's scale, by what was tested in both.")
    private @Nullable Path bridge;

    @Option(
        names = "--later",
        description = "Products tested after publication, unranked where no bridge holds.")
    private boolean later;

    @Option(
        names = "--under",
        paramLabel = "METHOD",
        description = "What another method version would move; nothing is saved.")
    private @Nullable Path under;
  }

  /** What may be left out. */
  enum Drop {
    TEST,
    RUN,
    ASSESSOR
  }

  @Override
  public Integer call() {
    if (spec == null) {
      return ExitCode.OUTSIDE;
    }
    PrintWriter err = spec.commandLine().getErr();
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder);
    loaded.problems().forEach(p -> err.println(Ovenproof.line(p)));
    MeasureService measuring = Review.measuring();
    Function<Campaign, Measured> measure = c -> measuring.measure(c, loaded.evidence());
    int threads = Runtime.getRuntime().availableProcessors();
    VerdictService service = new VerdictService(threads);
    Measured measured = measure.apply(loaded.campaign());
    Scored scored =
        profile == null
            ? service.score(loaded.campaign(), measured)
            : service.score(loaded.campaign(), measured, profile);
    VerdictQuestions questions = new VerdictQuestions(loaded.campaign(), scored, threads);
    List<QuestionAnswer> answers =
        new ArrayList<>(answers(loaded.campaign(), questions, measure, service));
    answers.addAll(overTheYears(loaded.campaign(), measured, scored, measure, service));
    print(loaded.campaign(), scored, answers, spec.commandLine().getOut());
    return ExitCode.FINE;
  }

  private List<QuestionAnswer> answers(
      Campaign campaign,
      VerdictQuestions questions,
      Function<Campaign, Measured> measure,
      VerdictService service) {
    List<QuestionAnswer> answers = new ArrayList<>();
    if (asked.why.size() == 2) {
      answers.add(questions.why(asked.why.get(0), asked.why.get(1)));
    }
    if (asked.unseat) {
      answers.add(questions.unseat());
    }
    if (asked.profiles) {
      answers.add(questions.profiles());
    }
    if (asked.ownScatter) {
      answers.add(questions.spread());
    }
    if (asked.acceptability != null) {
      answers.add(questions.acceptability(asked.acceptability));
    }
    if (asked.drop != null) {
      answers.add(
          switch (asked.drop) {
            case TEST -> questions.dropTests();
            case RUN -> questions.dropRuns();
            case ASSESSOR -> questions.dropAssessors(measure);
          });
    }
    if (asked.worth) {
      answers.add(questions.worth());
    }
    if (asked.moreRuns.size() == 2) {
      answers.add(questions.moreRuns(asked.moreRuns.get(0), asked.moreRuns.get(1)));
    }
    if (asked.value) {
      answers.add(questions.value());
    }
    if (asked.prices != null) {
      answers.add(questions.prices(asked.prices));
    }
    if (asked.withdrawn != null) {
      answers.add(questions.withdrawn(asked.withdrawn));
    }
    if (asked.since != null) {
      answers.add(
          questions.moved(
              VerdictQuestions.asOf(campaign, asked.since, measure), asked.since.toString()));
    }
    if (asked.movedFrom != null) {
      LoadedCampaign earlier = CampaignFolder.withAllMeasures().load(asked.movedFrom);
      Measured then = Review.measuring().measure(earlier.campaign(), earlier.evidence());
      answers.add(
          questions.moved(
              service.score(earlier.campaign(), then).scoringCase(), asked.movedFrom.toString()));
    }
    if (!asked.suited.isEmpty()) {
      answers.add(questions.suited(asked.suited));
    }
    return answers;
  }

  private List<QuestionAnswer> overTheYears(
      Campaign campaign,
      Measured measured,
      Scored scored,
      Function<Campaign, Measured> measure,
      VerdictService service) {
    List<QuestionAnswer> answers = new ArrayList<>();
    String reference = asked.reference;
    if (reference != null) {
      List<ReferenceChart.Season> seasons = new ArrayList<>();
      for (Path earlier : asked.earlier) {
        LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(earlier);
        seasons.add(
            new ReferenceChart.Season(
                loaded.campaign(),
                Review.measuring().measure(loaded.campaign(), loaded.evidence())));
      }
      seasons.add(new ReferenceChart.Season(campaign, measured));
      answers.add(YearsQuestions.reference(seasons, reference));
    }
    if (asked.bridge != null) {
      LoadedCampaign earlier = CampaignFolder.withAllMeasures().load(asked.bridge);
      Measured then = Review.measuring().measure(earlier.campaign(), earlier.evidence());
      answers.add(
          YearsQuestions.bridge(
              service.score(earlier.campaign(), then), scored, earlier.campaign().info().title()));
    }
    if (asked.later) {
      answers.add(later(campaign, measure, service));
    }
    if (asked.under != null) {
      List<Path> folders = new ArrayList<>(asked.earlier);
      folders.add(folder);
      for (Path each : folders) {
        answers.add(under(each, asked.under, service));
      }
    }
    return answers;
  }

  private static QuestionAnswer later(
      Campaign campaign, Function<Campaign, Measured> measure, VerdictService service) {
    Instant publication =
        YearsQuestions.publication(campaign)
            .orElseThrow(
                () ->
                    new InputException(
                        Problem.error(
                            Place.of("campaign.yaml"),
                            "no day of publication",
                            "published: 2026-03-20",
                            "only what came after it is tested later")));
    Campaign then = CampaignViews.asOf(campaign, publication);
    Campaign after = CampaignViews.startedAfter(campaign, publication);
    return YearsQuestions.later(
        service.score(then, measure.apply(then)), service.score(after, measure.apply(after)));
  }

  private static QuestionAnswer under(Path folder, Path method, VerdictService service) {
    LoadedCampaign own = CampaignFolder.withAllMeasures().load(folder);
    LoadedCampaign other = CampaignFolder.withAllMeasures().loadUnder(folder, method);
    MeasureService measuring = Review.measuring();
    Scored then = service.score(own.campaign(), measuring.measure(own.campaign(), own.evidence()));
    Scored now =
        service.score(other.campaign(), measuring.measure(other.campaign(), other.evidence()));
    return YearsQuestions.rescored(
        own.campaign(), then, other.campaign(), now, Runtime.getRuntime().availableProcessors());
  }

  private void print(
      Campaign campaign, Scored scored, List<QuestionAnswer> answers, PrintWriter out) {
    if (json) {
      ObjectNode document = VerdictJson.of(scored.verdict());
      if (!answers.isEmpty()) {
        ArrayNode list = document.putArray("answers");
        answers.forEach(answer -> list.add(answer.json()));
      }
      Json.print(out, document);
      return;
    }
    boolean invented = campaign.info().provenance() == Campaign.Provenance.INVENTED;
    String title = campaign.info().title() + (invented ? " (invented)" : "");
    VerdictText.lines(scored.verdict(), title).forEach(out::println);
    answers.forEach(answer -> answer.lines().forEach(out::println));
    out.flush();
  }
}
