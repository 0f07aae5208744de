package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Reading;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.core.safety.HandThermometer;
import ovenproof.core.safety.HandThermometer.Place;
import ovenproof.core.safety.SafetyMeasures;
import ovenproof.measure.ReadingMeasures.InstrumentError;
import ovenproof.method.MeasureUse;

/**
 * A core by hand thermometer: readings under the id of the use, each at a named place (its piece or
 * face), and the rest that was timed under that id with {@value #REST} behind it.
 */
public final class HandCore {

  /** Behind the id of a core's readings: how long the food rested. */
  public static final String REST = "-rest";

  private HandCore() {}

  /** The reading that holds the timed rest of a use. */
  public static String restOf(MeasureUse use) {
    return use.ofOrId() + REST;
  }

  /** Whether a use of a measure may be read by hand. */
  public static boolean isRead(MeasureUse use) {
    return use.take().equals(SafetyMeasures.HELD.id());
  }

  /** What was read in a run; empty when nothing was. */
  static Optional<HandThermometer> of(RunEvidence run, MeasureUse use) {
    List<Place> places = new ArrayList<>();
    double expanded = 0;
    boolean known = true;
    double rest = Double.NaN;
    for (Reading reading : Entry.effective(run.campaign().readings())) {
      if (!reading.run().equals(run.run().id())) {
        continue;
      }
      if (reading.measure().equals(restOf(use))) {
        rest = reading.value().contract();
      } else if (reading.measure().equals(use.ofOrId())) {
        InstrumentError error =
            InstrumentError.of(run.campaign(), reading.instrument(), run.run().started());
        double u = u(error, reading.uncertainty());
        known &= u > 0;
        expanded = Math.max(expanded, 2 * u);
        places.add(new Place(name(reading), reading.value().contract() + error.correction()));
      }
    }
    return places.isEmpty()
        ? Optional.empty()
        : Optional.of(new HandThermometer(places, known ? expanded : 0, rest));
  }

  private static double u(InstrumentError error, @Nullable Quantity own) {
    double squares = 0;
    for (Component component : error.components()) {
      squares += component.u() * component.u();
    }
    double stated = own == null ? 0 : own.contract();
    // A display's last digit alone says nothing of what the thermometer errs by.
    boolean calibrated = error.components().stream().anyMatch(Component::isShared);
    return calibrated || stated > 0 ? Math.sqrt(squares + stated * stated) : 0;
  }

  private static String name(Reading reading) {
    return Stream.of(reading.batch(), reading.piece(), reading.face())
        .filter(part -> part != null && (reading.piece() != null || reading.face() != null))
        .map(String::valueOf)
        .collect(Collectors.joining(", "));
  }

  /** The lowest place, less its uncertainty and as read. */
  static Measurement measurement(RunEvidence run, MeasureUse use, HandThermometer read) {
    double asked = restSeconds(use);
    Optional<String> nothing = read.whyNothing(asked);
    String definition =
        "lowest of " + read.places().size() + " places by hand thermometer; no lethality";
    List<String> evidence = List.of("reading " + use.ofOrId() + " of " + run.run().id());
    Measurement measurement;
    if (nothing.isPresent() || asked > 0 && read.restSeconds() < asked) {
      String why = nothing.orElse("it rested for less than the method asks");
      measurement =
          Measurement.below(SafetyMeasures.HELD, run.subject(), read.lowest()).withNote(why);
    } else {
      measurement =
          Measurement.between(
              SafetyMeasures.HELD,
              run.subject(),
              read.lowest() - read.expandedKelvin(),
              read.lowest());
    }
    return measurement.withDefinition(definition).withEvidence(evidence);
  }

  static double restSeconds(MeasureUse use) {
    String written = use.parameters().get("rest");
    return written == null ? 0 : QuantityParser.parse(written, Dimension.TIME).contract();
  }
}
