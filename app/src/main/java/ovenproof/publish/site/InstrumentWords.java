package ovenproof.publish.site;

import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import ovenproof.campaign.Campaign.Calibration;
import ovenproof.campaign.Campaign.Instrument;
import ovenproof.core.quantity.Rounding;

/** An instrument with its last check. */
final class InstrumentWords {

  private InstrumentWords() {}

  static DomContent row(View view, Instrument instrument) {
    Optional<Calibration> last =
        view.edition().campaign().calibrations().stream()
            .filter(c -> c.instrument().equals(instrument.id()))
            .max(Comparator.comparing(Calibration::on));
    return tr(
        th(instrument.name()).attr("scope", "row"),
        td(Objects.requireNonNullElse(instrument.kind(), "")),
        td(last.map(c -> Frame.day(c.on())).orElse("none on record")),
        td(last.map(InstrumentWords::correction).orElse("")));
  }

  private static String correction(Calibration calibration) {
    String reference =
        calibration.reference() == null ? "" : ", against " + calibration.reference();
    return Rounding.HALF_UP.text(calibration.correction(), 2)
        + " ± "
        + Rounding.HALF_UP.text(calibration.uncertainty(), 2)
        + reference;
  }
}
