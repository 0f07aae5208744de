package ovenproof.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringReader;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

class ChartTest {

  @ParameterizedTest
  @EnumSource(Tray.Kind.class)
  void everyKindOfKnowledgeHasADrawingOfItsOwn(Tray.Kind kind) throws Exception {
    Tray tray = new Tray(kind, 6.0, 5.0, 7.0);
    String lane = ScoreChart.lane("Alder", tray, null);
    parsed(lane);
    parsed(ScoreChart.mini(tray));
    List<String> others =
        IntStream.range(0, Tray.Kind.values().length)
            .mapToObj(i -> Tray.Kind.values()[i])
            .filter(k -> k != kind)
            .map(k -> ScoreChart.lane("Alder", new Tray(k, 6.0, 5.0, 7.0), null))
            .toList();
    assertThat(others).doesNotContain(lane);
  }

  @Test
  void aScoreLiesAtItsTenthOfTheWidth() throws Exception {
    String lane = ScoreChart.lane("Alder", Tray.interval(8.1, 7.8, 8.5), null);
    assertThat(lane).contains("cx=\"81%\"", "x1=\"78%\" x2=\"85%\"");
  }

  @Test
  void aTierIsDrawnFromItsLowestToItsBest() throws Exception {
    var tier = new ScoreChart.Tier(8.1, 7.23, ScoreChart.Place.LAST);
    String lane = ScoreChart.lane("Rowan", Tray.interval(7.6, 7.3, 8.0), tier);
    assertThat(lane).contains("class=\"band\" x=\"72.3%\" width=\"8.7%\"").contains("y1=\"100%\"");
    parsed(lane);
  }

  @Test
  void whatPeopleTypeIsEscaped() throws Exception {
    String name = "<script>alert('1')</script> & \"quoted\" \u0000\u05d0";
    String lane = ScoreChart.lane(name, Tray.valueOnly(5), null);
    assertThat(lane).doesNotContain("<script").doesNotContain("\u0000");
    assertThat(parsed(lane).getDocumentElement().getAttribute("aria-label"))
        .isEqualTo(name.replace("\u0000", ""));
  }

  @Test
  void nothingCarriesAStyleAttribute() {
    String all =
        ScoreChart.axis()
            + line(2000).svg()
            + DotPlot.lane(
                "x", Scale.POINTS, List.of(new DotPlot.Dot(1, DotPlot.Kind.ABOVE)), 2., 1., 3.);
    assertThat(all).doesNotContain("style=");
  }

  @Test
  void aLongLineKeepsItsHighestPeakAndStaysShort() throws Exception {
    String svg = line(100_000).svg();
    parsed(svg);
    assertThat(svg.length()).isLessThan(20_000);
    // the one sample at 200 lies at the top of a scale from 0 to 200: y = 20
    assertThat(svg).contains(" 20.0");
  }

  @Test
  void aGapBreaksTheLine() throws Exception {
    double[] xs = {0, 1, 2, 3};
    double[] ys = {1, Double.NaN, 2, 3};
    String svg =
        new LineChart(
                "gap",
                200,
                new LineChart.Axis(new Scale(0, 3, 1), "min"),
                new LineChart.Axis(new Scale(0, 3, 1), "°C"),
                List.of(new LineChart.Series("", LineChart.Style.HEAT, xs, ys)),
                List.of(),
                List.of())
            .svg();
    String path = svg.replaceAll("(?s).*<path class=\"curve\" d=\"([^\"]*)\".*", "$1");
    assertThat(path.chars().filter(c -> c == 'M').count()).isEqualTo(2);
  }

  @Test
  void ticksAreRoundAndHoldTheValues() {
    Scale scale = Scale.around(new double[] {3.2, 17.9}, 5);
    assertThat(scale.low()).isLessThanOrEqualTo(3.2);
    assertThat(scale.high()).isGreaterThanOrEqualTo(17.9);
    assertThat(scale.ticks()).contains(5.0, 10.0, 15.0);
    assertThat(Scale.around(new double[] {}, 5)).isEqualTo(new Scale(0, 1, 0.2));
    assertThat(Scale.around(new double[] {4}, 5).percent(4)).isBetween(20.0, 80.0);
    assertThat(new Scale(-1, 1, 0.5).label(-0.5)).isEqualTo("−0.5");
  }

  @Test
  void aTrayWithoutWhatItNeedsIsRefused() {
    assertThatThrownBy(() -> new Tray(Tray.Kind.INTERVAL, 5.0, null, 6.0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("INTERVAL");
  }

  @Test
  void theCurveMarksWhatWasNotObserved() throws Exception {
    var corners = List.of(new CurveChart.Corner(25, 10), new CurveChart.Corner(60, 0));
    var marks =
        List.of(new CurveChart.Mark("run 1", 43.3, 3.2), new CurveChart.Mark("run 2", 45, null));
    String svg = new CurveChart("x", new Scale(20, 60, 10), "min", corners, marks, 45.0).svg();
    parsed(svg);
    assertThat(svg).contains("not observed").contains("class=\"bead\"").contains("class=\"ring\"");
  }

  @ParameterizedTest
  @EnumSource(Sign.class)
  void signsAreHiddenFromScreenReaders(Sign sign) throws Exception {
    assertThat(parsed(sign.svg()).getDocumentElement().getAttribute("aria-hidden"))
        .isEqualTo("true");
  }

  private static LineChart line(int n) {
    double[] xs = IntStream.range(0, n).asDoubleStream().toArray();
    double[] ys = IntStream.range(0, n).mapToDouble(i -> i == n / 3 ? 200 : i % 7).toArray();
    return new LineChart(
        "line",
        300,
        new LineChart.Axis(Scale.around(xs, 5), "s"),
        new LineChart.Axis(new Scale(0, 200, 50), "°C"),
        List.of(new LineChart.Series("centre", LineChart.Style.HEAT, xs, ys)),
        List.of(new LineChart.Level("dial 180 °C", 180, LineChart.LevelStyle.DIAL)),
        List.of(new LineChart.Span("door", 10, 20)));
  }

  private static Document parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)));
  }
}
