package ovenproof.core.trace;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;

/**
 * One column of a log that is not its time.
 *
 * @param name without the unit, unique within the file
 * @param header as it stands in the file; empty when there is none
 * @param role what the column is, as far as its header and its numbers tell
 * @param dimension null for words and for numbers whose quantity nothing tells
 * @param unit contract unit; {@link Unit#ONE} when the quantity is not known
 * @param unitAsWritten unit in the file, empty when none was written
 * @param values in the contract unit, NaN where nothing was read; the index of the word in {@code
 *     labels} for words
 * @param labels words of a status column in order of appearance
 * @param rows how many values were read
 * @param gaps how many stretches of missing values lie between values
 * @param state whether it can be measured
 * @param why how quantity and unit were decided, and what is wrong with it
 */
public record Channel(
    String name,
    String header,
    Role role,
    @Nullable Dimension dimension,
    Unit unit,
    String unitAsWritten,
    double[] values,
    List<String> labels,
    int rows,
    int gaps,
    State state,
    String why) {

  public Channel {
    labels = List.copyOf(labels);
  }

  /** What a column is for. */
  public enum Role {
    /** A measured quantity without a known place. */
    MEASURED,
    /** The cavity's centre, by its name. */
    CENTRE,
    /** Inside the food, by its name. */
    CORE,
    /** The room, by its name. */
    AMBIENT,
    /** The logger's own temperature. */
    COLD_JUNCTION,
    SET_POINT,
    /** Share of full power, in %. */
    DUTY,
    /** On and off as 100 and 0 %. */
    SWITCH,
    /** Words or small whole numbers: stage, mode, state. */
    STATUS,
    /** Change per time. */
    RATE,
    /** One channel minus another. */
    DIFFERENCE,
    /** A running number. */
    COUNTER;

    /** The word in JSON. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /** Whether a channel can be measured. */
  public enum State {
    GOOD,
    /** Read, but something about it is odd; {@code why} says what. */
    SUSPECT,
    /** Nothing is connected to it. */
    UNUSED
  }

  public boolean isTemperature() {
    return dimension == Dimension.TEMPERATURE;
  }

  /** A temperature somewhere in or at the appliance, as against set-points and logger innards. */
  public boolean isMeasuredTemperature() {
    return isTemperature()
        && state != State.UNUSED
        && (role == Role.MEASURED
            || role == Role.CENTRE
            || role == Role.CORE
            || role == Role.AMBIENT);
  }

  public Channel withRole(Role newRole) {
    return new Channel(
        name,
        header,
        newRole,
        dimension,
        unit,
        unitAsWritten,
        values,
        labels,
        rows,
        gaps,
        state,
        why);
  }

  Channel with(double[] newValues, int newRows, int newGaps, State newState, String newWhy) {
    return new Channel(
        name,
        header,
        role,
        dimension,
        unit,
        unitAsWritten,
        newValues,
        labels,
        newRows,
        newGaps,
        newState,
        newWhy);
  }

  /** The word in JSON: temperature, power, …, status, unknown. */
  public String quantityWord() {
    if (dimension != null) {
      return dimension.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
    return role == Role.STATUS ? "status" : "unknown";
  }
}
