package ovenproof.files;

import static ovenproof.files.Column.Kind.BOXES;
import static ovenproof.files.Column.Kind.DATE;
import static ovenproof.files.Column.Kind.KEY;
import static ovenproof.files.Column.Kind.NUMBER;
import static ovenproof.files.Column.Kind.PATH;
import static ovenproof.files.Column.Kind.QUANTITY;
import static ovenproof.files.Column.Kind.TEXT;
import static ovenproof.files.Column.Kind.TIME;
import static ovenproof.files.Column.Kind.TIME_OR_ELAPSED;
import static ovenproof.files.Column.Kind.WHOLE_NUMBER;
import static ovenproof.files.Column.of;
import static ovenproof.files.Column.ref;
import static ovenproof.files.Column.word;

import java.util.ArrayList;
import java.util.List;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Event;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.Run;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.core.quantity.Dimension;
import ovenproof.input.Words;

/** Every table of a campaign folder, declared once. */
public final class Tables {

  private static final Column NOTE = of("note", TEXT, "Anything worth knowing.");

  public static final Table PRODUCTS =
      table(
          "products.csv",
          "The models compared",
          List.of("product"),
          of("product", KEY, "Key of the product; everything else refers to it.").required(),
          of("name", TEXT, "Name as printed.").required(),
          of("maker", TEXT, "Who makes it."),
          of("kind", TEXT, "What kind of appliance it is."),
          NOTE);

  public static final Table LEFT_OUT =
      table(
          "left-out.csv",
          "Candidates that were not compared",
          List.of(),
          of("name", TEXT, "Name of the candidate.").required(),
          of("why", TEXT, "Why it was left out.").required());

  public static final Table SPECIMENS =
      table(
          "specimens.csv",
          "Physical appliances",
          List.of("specimen"),
          of("specimen", KEY, "Key of the appliance.").required(),
          product().required(),
          of("serial", TEXT, "Serial number and date code."),
          word("acquired", Words.all(Campaign.Acquired.class), "How it came to the desk."),
          of("from", TEXT, "Where it came from."),
          of("on", DATE, "When it came."),
          word("became", Words.all(Campaign.Became.class), "What became of it."),
          of("became_on", DATE, "When that was."),
          NOTE);

  public static final Table PRICES =
      table(
          "prices.csv",
          "Prices, each with its date",
          List.of(),
          product().required(),
          of("price", NUMBER, "Amount in the currency.").required(),
          of("on", DATE, "The day it was seen.").required(),
          of("currency", TEXT, "Three letters (ISO 4217); the campaign's when left out."),
          of("where", TEXT, "Where it was seen."));

  public static final Table FACTS =
      entries(
          "facts.csv",
          "Facts of the products, nameplate beside measured",
          product().required(),
          of("fact", KEY, "Key of a fact of the method.").required(),
          of("nameplate", QUANTITY, "What the maker says."),
          of("measured", QUANTITY, "What the desk measured."),
          of("uncertainty", QUANTITY, "Standard uncertainty (k = 1) of the measured value."),
          ref("instrument", "instruments.csv", "instrument", "What it was measured with."),
          of("photo", PATH, "A picture of it."));

  public static final Table RATED =
      entries(
          "rated.csv",
          "Worded steps that two people chose independently",
          product().required(),
          of("fact", KEY, "Key of a rated fact of the method.").required(),
          of("rater", TEXT, "Who rated.").required(),
          of("step", WHOLE_NUMBER, "The step that fits, 0 to 4.").required(),
          of("reason", TEXT, "Why this step."),
          of("photo", PATH, "A picture of it."));

  public static final Table FEATURES =
      entries(
          "features.csv",
          "Feature checklist of the products",
          product().required(),
          of("feature", TEXT, "Name of the feature, written the same for all products.").required(),
          word("state", Words.all(FeatureState.State.class), "Whether the product has it.")
              .required(),
          of("on", DATE, "The day it was looked at."));

  public static final Table SETTINGS =
      table(
          "settings.csv",
          "Setting cards",
          List.of("product", "test", "variant"),
          product().required(),
          test().required(),
          variant(),
          of("mode", TEXT, "Mode of the appliance."),
          of("preset", TEXT, "Preset, when one is used."),
          of("dial", TEXT, "What the dial was set to."),
          of("rack", TEXT, "Rack position."),
          of("accessory", TEXT, "Tray, grid or stone used."),
          of("chosen_by", TEXT, "The rule by which it was chosen."),
          NOTE);

  public static final Table PLAN =
      table(
          "plan.csv",
          "Runs to be done",
          List.of("product", "test", "variant", "replicate"),
          product().required(),
          test().required(),
          replicate().required(),
          variant(),
          of("session", KEY, "Day or half day: the block in which products are compared."),
          of("bench", KEY, "Where it is to be done."),
          of("order", WHOLE_NUMBER, "Place in the order of the day."));

  public static final Table RUNS =
      table(
          "runs.csv",
          "Attempts",
          List.of("run"),
          of("run", KEY, "Key of the run.").required(),
          product().required(),
          test().required(),
          replicate().required(),
          variant(),
          ref("specimen", "specimens.csv", "specimen", "The appliance used."),
          word("kind", Words.all(Run.Kind.class), "Trial if declared so beforehand."),
          of("session", KEY, "Day or half day: the block in which products are compared."),
          of("bench", KEY, "Where it was done."),
          of("started", TIME, "When it was started."),
          ref("redo_of", "runs.csv", "run", "The run that this one repeats."),
          of("cause", TEXT, "Why it was repeated, written before results were seen."),
          of("cause_at", TIME, "When the cause was written."),
          of("by", TEXT, "Who did it."),
          NOTE);

  public static final Table NOT_RUN =
      table(
          "not-run.csv",
          "Tests that a product has no run of",
          List.of("product", "test", "variant"),
          product().required(),
          test().required(),
          word(
                  "state",
                  Words.all(Campaign.NotRun.State.class),
                  "Cannot do it, was not asked to, or it is missing for a cause outside it.")
              .required(),
          of("reason", TEXT, "The cause in words.").required(),
          variant());

  public static final Table EVENTS =
      entries(
          "events.csv",
          "What happened in a run, with its time",
          run().required(),
          word("event", Words.all(Event.Type.class), "What happened.").required(),
          of("time", TIME_OR_ELAPSED, "When it happened.").required(),
          batch(),
          of("value", TEXT, "For stop: what ended it; for signal: the temperature shown."));

  public static final Table DEVIATIONS =
      entries(
          "deviations.csv",
          "Departures from the method",
          run().required(),
          of("class", WHOLE_NUMBER, "1 note, 2 analyse with and without, 3 void.").required(),
          of("what", TEXT, "What departed from the method.").required());

  public static final Table READINGS =
      entries(
          "readings.csv",
          "Values that a person read and typed",
          run().required(),
          of("reading", KEY, "Key of a reading of the run's test.").required(),
          of("value", QUANTITY, "The value with its unit.").required(),
          batch(),
          of("piece", KEY, "Piece of the batch."),
          of("face", KEY, "Face of the piece."),
          of("uncertainty", QUANTITY, "Standard uncertainty (k = 1); else the instrument's."),
          ref("instrument", "instruments.csv", "instrument", "What it was read from."),
          of("time", TIME_OR_ELAPSED, "When it was read."));

  public static final Table LOTS =
      table(
          "lots.csv",
          "Deliveries of ingredients",
          List.of("lot"),
          of("lot", KEY, "Key of the lot.").required(),
          of("food", TEXT, "What it is.").required(),
          of("bought", DATE, "When it was bought."),
          NOTE);

  public static final Table PIECES =
      table(
          "pieces.csv",
          "Pieces and their weights",
          List.of("run", "batch", "piece"),
          run().required(),
          batch().required(),
          of("piece", KEY, "Key in the batch, or all for a batch weighed as one.").required(),
          of("position", KEY, "Place in the appliance."),
          ref("lot", "lots.csv", "lot", "Lot it came from."),
          of("before", QUANTITY, "Mass before."),
          of("after", QUANTITY, "Mass after."),
          ref("instrument", "instruments.csv", "instrument", "The scale, before and after."),
          NOTE);

  public static final Table RATINGS =
      entries(
          "ratings.csv",
          "Marks that tasters gave",
          of("session", KEY, "Tasting session.").required(),
          of("assessor", TEXT, "Who tasted; never published.").required(),
          run().required(),
          of("mark", KEY, "Key of a mark of the run's test.").required(),
          of("value", NUMBER, "The mark, on its scale.").required(),
          batch(),
          of("order", WHOLE_NUMBER, "Serving position in the session, from 1."),
          of("code", TEXT, "Blind code on the sample."),
          of("minutes", NUMBER, "Minutes since the food left the appliance."));

  public static final Table INSTRUMENTS =
      table(
          "instruments.csv",
          "Measuring instruments",
          List.of("instrument"),
          of("instrument", KEY, "Key of the instrument or of one probe.").required(),
          of("name", TEXT, "Name for people.").required(),
          of("kind", TEXT, "What it is: probe, scale, power meter."),
          word("quantity", quantities(), "What it measures; it fixes the units of the rest."),
          of("resolution", QUANTITY, "Smallest step it shows."),
          of("uncertainty", QUANTITY, "Standard uncertainty (k = 1) of a reading."),
          of("response_time", QUANTITY, "Time constant of a probe."),
          NOTE);

  public static final Table CALIBRATIONS =
      table(
          "calibrations.csv",
          "Checks of instruments against something known",
          List.of("instrument", "on"),
          ref("instrument", "instruments.csv", "instrument", "The instrument checked.").required(),
          of("on", DATE, "The day of the check.").required(),
          of("correction", QUANTITY, "To be added to readings.").required(),
          of("uncertainty", QUANTITY, "Standard uncertainty (k = 1) of it.").required(),
          of("reference", TEXT, "What it was checked against."),
          NOTE);

  public static final Table TRACES =
      table(
          "traces.csv",
          "Whose heat a channel of a logger file shows",
          List.of(),
          of("file", PATH, "The logger's file.").required(),
          of("channel", TEXT, "Name of the channel in the file.").required(),
          of("place", KEY, "Where the probe sat: centre, core-1, ambient, power …").required(),
          product(),
          run(),
          ref("instrument", "instruments.csv", "instrument", "The probe or meter."),
          of("from", TIME, "From when the channel is this one's."),
          of("to", TIME, "Until when."),
          of("starts", TIME, "Clock time of the file's zero, for a file without clock."),
          of("clock_offset", QUANTITY, "To be added to the file's clock."),
          of("interval", QUANTITY, "Distance of rows, for a file without times."),
          of("temperatures", TEXT, "Unit of temperatures, where the file does not say: C, F or K."),
          of(
              "counts",
              TEXT,
              "What a time column counts, where the file does not say: s, min, h or ms."),
          word(
              "dates",
              ovenproof.input.Words.all(ovenproof.core.trace.DateOrder.class),
              "How 01/02/2026 is to be read, where the file does not say."),
          NOTE);

  public static final Table PHOTOS =
      table(
          "photos.csv",
          "Pictures of batches",
          List.of("file", "run"),
          of("file", PATH, "The picture.").required(),
          run().required(),
          batch(),
          of(
              "face",
              KEY,
              "Which face it shows; before: not baked yet; shade-card: the shade wanted."),
          of("taken", TIME, "When it was taken."),
          of("camera", KEY, "Camera session whose calibration it shares."),
          of("boxes", BOXES, "piece:x,y,w,h in pixels of the upright picture, where pieces lie."),
          of("outlines", TEXT, "piece:x,y,x,y,x,y … likewise: edges that a person drew or mended."),
          of(
              "chart_pitch",
              QUANTITY,
              "From the middle of a patch of the chart to the next, when it is not the method's."),
          of(
              "chart_corners",
              TEXT,
              "x,y four times: corners of the grid of patches where the chart is not found."),
          word(
              "front",
              Words.all(ShadeSettings.Front.class),
              "Side of the picture where the front of the appliance was; bottom if not said."),
          NOTE);

  /** In the order of the documentation. */
  public static final List<Table> ALL =
      List.of(
          PRODUCTS,
          LEFT_OUT,
          SPECIMENS,
          PRICES,
          FACTS,
          RATED,
          FEATURES,
          SETTINGS,
          PLAN,
          RUNS,
          NOT_RUN,
          EVENTS,
          DEVIATIONS,
          READINGS,
          LOTS,
          PIECES,
          RATINGS,
          INSTRUMENTS,
          CALIBRATIONS,
          TRACES,
          PHOTOS);

  private Tables() {}

  private static Table table(String file, String title, List<String> key, Column... columns) {
    return new Table(file, title, List.of(columns), key);
  }

  /** A table in which people enter things: rows are never edited, later rows correct them. */
  private static Table entries(String file, String title, Column... own) {
    List<Column> columns = new ArrayList<>(List.of(own));
    columns.add(NOTE);
    columns.add(of("entry", KEY, "Key of this entry, so that a later one can correct it."));
    columns.add(of("by", TEXT, "Who entered it."));
    columns.add(of("at", TIME, "When it was entered."));
    columns.add(of("corrects", KEY, "Key of the entry of this table that this row replaces."));
    return new Table(file, title, columns, List.of());
  }

  private static Column product() {
    return ref("product", "products.csv", "product", "Key of the product.");
  }

  private static Column run() {
    return ref("run", "runs.csv", "run", "Key of the run.");
  }

  private static Column test() {
    return of("test", KEY, "Key of a test of the method.");
  }

  private static Column variant() {
    return of("variant", KEY, "Variant of the test; the scored one when left out.");
  }

  private static Column replicate() {
    return of("replicate", WHOLE_NUMBER, "Number of the repetition, from 1.");
  }

  private static Column batch() {
    return of("batch", WHOLE_NUMBER, "Load of the run, from 1.");
  }

  /** What an instrument can measure, as words: {@code temperature}, {@code mass} … */
  static List<String> quantities() {
    return Words.all(Dimension.class);
  }
}
