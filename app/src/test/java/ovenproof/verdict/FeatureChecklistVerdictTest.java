package ovenproof.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.method.MethodReader;
import ovenproof.method.MethodWriter;
import ovenproof.verdict.Verdict.Score.Known;

/** A checklist as a source of scores; the expected values are sums of parts done by hand. */
class FeatureChecklistVerdictTest {
  private static final String METHOD =
      """
      format: 1
      method: listed
      title: A checklist
      version: "1"
      population: Invented ovens
      rated:
        - {id: controls, name: Controls, steps: [manual, hard, fair, easy, clear]}
      features:
        - {id: light, name: Door light, parts: 2}
        - {id: timer, name: Timer, parts: 3, group: safety}
        - {id: fan-off, name: Fan can be switched off}
        - {id: bell, name: Bell, parts: 0}
      tests:
        - id: use
          name: Use
          parts: 1
          replicates: 0
          measures:
            - {id: equipment, take: features}
            - {id: safe, take: features, of: safety}
            - {id: light, take: feature}
            - {id: fan, take: feature, of: fan-off}
            - {id: controls, take: rated}
          criteria:
            - {id: equipment, name: Equipment, parts: 2, measure: equipment, curve: {checklist: {absent: 0, present: 10}}}
            - {id: safe, name: Safety, parts: 1, measure: safe, curve: {points: [[0 %, 5], [100 %, 10]]}}
            - {id: light, name: Light, parts: 1, measure: light, curve: {checklist: {absent: 4, present: 9}}}
            - {id: fan, name: Fan, parts: 1, measure: fan, curve: {checklist: {absent: 0, present: 10}}, not_asked: reweight}
            - {id: controls, name: Controls, parts: 1, measure: controls, curve: {rated: 4}}
      """;

  @TempDir Path folder;

  @BeforeEach
  void write() throws IOException {
    write(
        "campaign.yaml",
        "format: 1\ncampaign: listed\ntitle: Listed\nkitchen: Invented\ncurrency: EUR\nzone: Europe/Dublin\n");
    write("method.yaml", METHOD);
    write(
        "products.csv",
        "product,name\nall,All of it\nhalf,Half of it\nopen,Not looked at\nfanless,Without fan\n");
    write(
        "features.csv",
        """
        product,feature,state,on,note
        all,Door light,yes,2026-03-02,
        all,timer,yes,2026-03-02,
        all,FAN CAN BE SWITCHED OFF,yes,2026-03-02,
        half,light,yes,2026-03-02,
        half,timer,no,2026-03-02,
        half,fan-off,no,2026-03-02,
        open,timer,yes,2026-03-02,
        open,fan-off,no,2026-03-02,
        fanless,light,no,2026-03-02,
        fanless,timer,yes,2026-03-02,
        fanless,fan-off,not-applicable,2026-03-02,it has none
        """);
    write(
        "rated.csv",
        """
        product,fact,rater,step
        all,controls,one,4
        all,controls,two,4
        half,controls,one,1
        half,controls,two,3
        """);
  }

  private void write(String file, String text) throws IOException {
    Files.writeString(folder.resolve(file), text);
  }

  private LoadedCampaign loaded() {
    return CampaignFolder.withAllMeasures().load(folder);
  }

  private Measured measured() {
    return MeasureService.withDefaults().measure(loaded().campaign(), loaded().evidence());
  }

  private Measurement value(String use, String product) {
    return measured().counted("use", use, product).get(0).value();
  }

  private Verdict.Score score(String product, String criterion) {
    return new VerdictService(1)
            .score(loaded().campaign(), measured())
            .verdict()
            .product(product)
            .flatMap(p -> p.test("use"))
            .orElseThrow()
            .children()
            .stream()
            .filter(n -> n.id().equals(criterion))
            .findFirst()
            .orElseThrow()
            .score();
  }

  @Test
  void aShareIsOfThePartsThatApply() {
    assertThat(value("equipment", "all").value()).isEqualTo(100);
    // Two of 2 + 3 + 1 parts.
    assertThat(value("equipment", "half").value()).isCloseTo(100.0 * 2 / 6, within(1e-12));
    // The fan makes no sense: three of 2 + 3.
    assertThat(value("equipment", "fanless").value()).isEqualTo(60);
    assertThat(value("equipment", "half").definition()).endsWith("2 of 6");
    assertThat(score("fanless", "equipment").value()).hasToString("6.0");
  }

  @Test
  void aGroupIsAListOfItsOwn() {
    assertThat(value("safe", "half").value()).isZero();
    assertThat(score("half", "safe").value()).hasToString("5.0");
    assertThat(value("safe", "open").value()).isEqualTo(100);
  }

  @Test
  void whatNobodyLookedAtIsARangeAndNotANo() {
    Measurement open = value("equipment", "open");
    assertThat(open.censored()).isEqualTo(Censoring.BETWEEN);
    // Three parts are there; the two of the light may be.
    assertThat(open.low()).isEqualTo(50);
    assertThat(open.high()).isCloseTo(100.0 * 5 / 6, within(1e-12));
    assertThat(open.note()).contains("not looked at: Door light", "absent: Fan");
    assertThat(value("light", "open").note()).isEqualTo("nobody looked at it");
    assertThat(score("open", "equipment").known()).isEqualTo(Known.BOUNDS);
    assertThat(score("open", "light").known()).isEqualTo(Known.BOUNDS);
    assertThat(score("half", "light").value()).hasToString("9.0");
    assertThat(score("fanless", "light").value()).hasToString("4.0");
  }

  @Test
  void whatMakesNoSenseIsNotAsked() {
    assertThat(score("fanless", "fan").known()).isEqualTo(Known.NOT_ASKED);
    assertThat(score("half", "fan").value()).hasToString("0.0");
  }

  @Test
  void raterWhoDisagreeAreShown() {
    assertThat(value("controls", "half").note()).isEqualTo("the raters disagree: steps 1 and 3");
    assertThat(value("controls", "all").note()).isNull();
  }

  @Test
  void everyValueNamesItsRows() {
    assertThat(value("light", "all").evidence()).containsExactly("features.csv#all/Door light");
    assertThat(value("equipment", "open").evidence())
        .containsExactly("features.csv#open/timer", "features.csv#open/fan-off");
    assertThat(value("controls", "all").evidence()).containsExactly("rated.csv#all/controls");
  }

  @Test
  void checkSaysWhatIsNotLookedAtNotAskedAndWrittenTwice() throws IOException {
    assertThat(lines())
        .anyMatch(
            l ->
                l.contains("1 of 3 features not looked at on open")
                    && l.contains("look at: Door light;"))
        .noneMatch(l -> l.contains("Bell") || l.contains("not looked at on half"));
    write(
        "features.csv", "product,feature,state\nall,Door ligth,yes\nall,timer,yes\nall,Timer,no\n");
    assertThat(lines())
        .anyMatch(
            l ->
                l.startsWith("warning: features.csv:2:5: found \"Door ligth\"")
                    && l.contains("did you mean \"Door light\"?"))
        .anyMatch(l -> l.startsWith("features.csv:4:5: found \"Timer\" for the second time"));
  }

  @Test
  void aMethodThatAsksForNothingListedIsRefused() throws IOException {
    write("method.yaml", METHOD.replace("take: feature, of: fan-off", "take: feature, of: fan"));
    assertThat(lines())
        .anyMatch(l -> l.contains("found \"fan\", expected a feature of this method"));
    write("method.yaml", METHOD.replace("of: safety", "of: saftey"));
    assertThat(lines()).anyMatch(l -> l.contains("did you mean \"safety\"?"));
    write(
        "method.yaml",
        METHOD.replace(
            "measure: controls, curve: {rated: 4}",
            "measure: controls, curve: {checklist: {absent: 0, present: 10}}"));
    assertThat(lines()).anyMatch(l -> l.contains("\"checklist\" for the measure controls"));
    write("method.yaml", METHOD.replace("name: Timer,", "name: door LIGHT,"));
    assertThat(lines()).anyMatch(l -> l.contains("a name of its own"));
  }

  @Test
  void theMethodIsWrittenAsItWasRead() {
    var method = loaded().campaign().method();
    var again =
        new MethodReader(ovenproof.measure.MeasureRegistry.all().measures())
            .read("method.yaml", MethodWriter.write(method), new ovenproof.input.Problems())
            .orElseThrow();
    assertThat(again).isEqualTo(method);
  }

  private List<String> lines() {
    return CampaignFolder.withAllMeasures().check(folder).stream()
        .map(p -> (p.severity() == Problem.Severity.WARNING ? "warning: " : "") + p)
        .toList();
  }
}
