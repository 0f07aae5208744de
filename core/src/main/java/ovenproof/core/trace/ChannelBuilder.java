package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Channel.Role;
import ovenproof.core.trace.Channel.State;
import ovenproof.core.trace.TableLayout.ColumnKind;

/** Decides what every column that is not time holds: role, quantity, unit, and whether it works. */
final class ChannelBuilder {

  private static final Set<String> ON =
      Set.of(
          "on", "true", "1", "yes", "heat", "heating", "open", "high", "closed", "active", "ein",
          "an", "enabled", "running", "auf", "offen", "ouvert", "ouverte", "abierto", "abierta",
          "aperto", "aperta", "marche", "ja", "oui", "sí", "si");
  private static final Set<String> OFF =
      Set.of(
          "off",
          "false",
          "0",
          "no",
          "idle",
          "closed",
          "low",
          "open",
          "inactive",
          "aus",
          "disabled",
          "stopped",
          "cooling",
          "standby",
          "zu",
          "geschlossen",
          "fermé",
          "fermée",
          "cerrado",
          "cerrada",
          "chiuso",
          "chiusa",
          "arrêt",
          "nein",
          "non");

  private final RawTable table;
  private final Set<Integer> timeColumns;
  private final int[] rows;
  private final double[] seconds;
  private final Metadata metadata;
  private final ReadOptions options;
  private final List<Question> questions = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();
  private final boolean inFileOrder;
  private int gapsInTime = -1;
  private double certainty = 1;

  /** Written in a column of its own for all of them. */
  private @Nullable UnitText temperatureColumn;

  ChannelBuilder(
      RawTable table,
      Set<Integer> timeColumns,
      int[] rows,
      double[] seconds,
      Metadata metadata,
      ReadOptions options) {
    this.table = table;
    this.timeColumns = timeColumns;
    this.rows = rows;
    this.seconds = seconds;
    this.metadata = metadata;
    this.options = options;
    this.inFileOrder = inFileOrder(rows, table.rows());
  }

  private static boolean inFileOrder(int[] rows, int all) {
    boolean same = rows.length == all;
    for (int i = 0; i < rows.length && same; i++) {
      same = rows[i] == i;
    }
    return same;
  }

  List<Question> questions() {
    return questions;
  }

  List<String> warnings() {
    return warnings;
  }

  double certainty() {
    return certainty;
  }

  /** A column on its way to becoming a channel. */
  private static final class Draft {
    final int column;
    final HeaderText header;
    double[] values;
    @Nullable UnitText unit;
    String unitFrom = "";
    Role role = Role.MEASURED;
    @Nullable Dimension dimension;
    List<String> labels = List.of();
    State state = State.GOOD;
    String why = "";
    String name = "";
    double scale = 1;

    /** Whether only its neighbours can tell the unit. */
    boolean openUnit;

    Draft(int column, HeaderText header, double[] values) {
      this.column = column;
      this.header = header;
      this.values = values;
    }

    private double @Nullable [] counted;
    private @Nullable Stats stats;

    /** Computed again only when the values were replaced. */
    Stats stats() {
      Stats known = stats;
      if (known == null || counted != values) {
        known = Stats.of(values);
        stats = known;
        counted = values;
      }
      return known;
    }

    void note(String text) {
      why = why.isEmpty() ? text : why + "; " + text;
    }
  }

  List<Channel> build() {
    List<Draft> drafts = drafts();
    each(drafts, this::type);
    drafts.removeIf(this::isEmptyRemark);
    each(drafts, this::takeOutSentinels);
    temperatureUnits(drafts);
    meterUnits(drafts);
    each(drafts, this::convert);
    hotRooms(drafts);
    judge(drafts);
    names(drafts);
    return drafts.stream().map(this::channel).toList();
  }

  /** Columns do not depend on each other here; many numbers are shared among the processors. */
  private void each(List<Draft> drafts, java.util.function.Consumer<Draft> work) {
    boolean many = (long) drafts.size() * rows.length > 500_000;
    (many ? drafts.parallelStream() : drafts.stream()).forEach(work);
  }

  /** A column of remarks that nobody made; one full of OPEN is an input. */
  private boolean isEmptyRemark(Draft d) {
    boolean remark = table.missingWords()[d.column] < 0.5 * d.values.length;
    if (d.dimension == null && d.header.saysIndex() && isKey(d)) {
      return true;
    }
    return d.dimension == null && d.stats().n == 0 && (remark || d.header.says(HeaderText.STATUS));
  }

  /** The number of a station in every row, or a name of its own for every row. */
  private static boolean isKey(Draft d) {
    boolean ownName = d.labels.size() > 20 && d.labels.size() >= 0.9 * d.values.length;
    return ownName || d.labels.isEmpty() && d.stats().distinct == 1 && d.values.length > 3;
  }

  private List<Draft> drafts() {
    List<Draft> drafts = new ArrayList<>();
    for (int c = 0; c < table.columns(); c++) {
      boolean unused =
          timeColumns.contains(c)
              || table.kinds().get(c) == ColumnKind.SKIPPED
              || table.kinds().get(c) == ColumnKind.TIME;
      if (unused) {
        continue;
      }
      UnitText unitOfLeft = wordUnit(c);
      if (unitOfLeft != null && unitOfLeft.isTemperature() && saysOfAll(c)) {
        temperatureColumn = unitOfLeft;
        continue;
      }
      if (unitOfLeft != null
          && !drafts.isEmpty()
          && drafts.get(drafts.size() - 1).column == c - 1) {
        Draft left = drafts.get(drafts.size() - 1);
        left.unit = unitOfLeft;
        left.unitFrom = "the column beside it";
        continue;
      }
      drafts.add(draft(c));
    }
    return drafts;
  }

  /** "TempUnit" behind a column of anything else says the unit of all temperatures. */
  private boolean saysOfAll(int c) {
    HeaderText left = table.headers().get(c - 1);
    return left.unit() != null
        || left.says(HeaderText.POWER)
        || left.says(HeaderText.CURRENT)
        || left.says(HeaderText.VOLTAGE)
        || left.says(HeaderText.ENERGY)
        || left.says(HeaderText.HUMIDITY);
  }

  private Draft draft(int c) {
    Draft draft = new Draft(c, table.headers().get(c), inOrder(table.values()[c]));
    draft.labels = table.kinds().get(c) == ColumnKind.WORDS ? table.labels().get(c) : List.of();
    draft.unit = draft.header.unit();
    draft.unitFrom = draft.unit == null ? "" : "its header";
    if (draft.unit == null && table.suffixes()[c] != null) {
      draft.unit = table.suffixes()[c];
      draft.unitFrom = "the unit behind its values";
    }
    if (draft.unit == null && draft.header.written().isBlank() && metadata.readingUnit() != null) {
      draft.unit = metadata.readingUnit();
      draft.unitFrom = "the lines before the table";
    }
    return draft;
  }

  /** A column of nothing but "C" says the unit of the column to its left. */
  private @Nullable UnitText wordUnit(int c) {
    if (table.kinds().get(c) != ColumnKind.WORDS || table.labels().get(c).size() != 1 || c == 0) {
      return null;
    }
    return table.kinds().get(c - 1) == ColumnKind.NUMBER
        ? UnitText.wordOrLetter(table.labels().get(c).get(0))
        : null;
  }

  private double[] inOrder(double[] raw) {
    if (inFileOrder) {
      return raw;
    }
    double[] result = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      result[i] = raw[rows[i]];
    }
    return result;
  }

  // What a column is

  private void type(Draft d) {
    if (!d.labels.isEmpty() || table.kinds().get(d.column) == ColumnKind.WORDS) {
      typeWords(d);
      return;
    }
    Stats stats = d.stats();
    if (d.header.says(HeaderText.SCATTER)) {
      d.unit = null;
      d.note("how far readings scatter, by its name");
      return;
    }
    if (isDifference(d)) {
      as(d, Role.DIFFERENCE, Dimension.TEMPERATURE_DIFFERENCE, Unit.KELVIN);
      d.unitFrom = "";
      d.scale = fahrenheitBeside(d) ? 5.0 / 9 : 1;
      d.note("one channel minus another");
      return;
    }
    if (d.unit != null && d.unit.unit().dimension() != Dimension.TIME) {
      typeByUnit(d, stats);
    } else {
      d.unit = null;
      typeByName(d, stats);
    }
    if (d.dimension == Dimension.TEMPERATURE && d.role == Role.MEASURED) {
      d.role = place(d.header);
    }
  }

  private static boolean isDifference(Draft d) {
    return (d.unit == null || d.unit.isTemperature())
        && d.header
            .name()
            .matches(
                "(?i)(t|tc|ch|k|channel|probe) ?\\d+ ?[-−–] ?(t|tc|ch|k|channel|probe)? ?\\d+");
  }

  private static boolean fahrenheitBeside(Draft d) {
    return d.unit != null && d.unit.unit() == Unit.FAHRENHEIT;
  }

  private void typeWords(Draft d) {
    boolean switched =
        !d.labels.isEmpty()
            && d.labels.size() <= 2
            && d.labels.stream()
                .map(w -> w.toLowerCase(Locale.ROOT))
                .allMatch(w -> ON.contains(w) || OFF.contains(w))
            && (d.labels.size() == 1 || isOn(d, 0) != isOn(d, 1));
    boolean alarm = d.header.says(HeaderText.STATUS) && !d.header.says(HeaderText.SWITCH);
    if (!switched || alarm) {
      d.role = Role.STATUS;
      d.note("words");
      return;
    }
    double[] shares = new double[d.values.length];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = Double.isNaN(d.values[i]) ? Double.NaN : isOn(d, (int) d.values[i]) ? 100 : 0;
    }
    d.values = shares;
    d.labels = List.of();
    d.role = Role.SWITCH;
    d.dimension = Dimension.RATIO;
    d.unit = new UnitText(Unit.PERCENT, 1);
    d.note("on and off, kept as 100 and 0 %");
  }

  private static boolean isOn(Draft d, int label) {
    String word = d.labels.get(label).toLowerCase(Locale.ROOT);
    return ON.contains(word)
        && !(OFF.contains(word)
            && d.labels.stream()
                .anyMatch(
                    o ->
                        ON.contains(o.toLowerCase(Locale.ROOT))
                            && !OFF.contains(o.toLowerCase(Locale.ROOT))));
  }

  private void typeByUnit(Draft d, Stats stats) {
    Unit unit = java.util.Objects.requireNonNull(d.unit).unit();
    d.dimension = unit.dimension();
    d.note("unit from " + d.unitFrom);
    if (unit.dimension() == Dimension.TEMPERATURE_RATE) {
      d.role = Role.RATE;
    } else if (unit.dimension() == Dimension.TEMPERATURE) {
      if (d.header.says(HeaderText.RATE) && stats.high < 100) {
        d.role = Role.RATE;
      } else if (saysSetPoint(d.header)) {
        d.role = Role.SET_POINT;
      }
    } else if (unit == Unit.PERCENT && !d.header.says(HeaderText.HUMIDITY)) {
      boolean drive =
          d.header.says(HeaderText.DUTY)
              || d.header.says(HeaderText.POWER)
              || d.header.says(HeaderText.SWITCH);
      d.role = drive ? Role.DUTY : Role.MEASURED;
    } else if (saysSetPoint(d.header)) {
      d.role = Role.SET_POINT;
    }
  }

  private static boolean saysSetPoint(HeaderText header) {
    boolean offset = header.words().contains("offset") || header.words().contains("reset");
    return header.says(HeaderText.SET_POINT) && !offset;
  }

  private void typeByName(Draft d, Stats stats) {
    HeaderText h = d.header;
    if (h.words().size() > 1
        && h.name().matches("(?i).*[ _.](quality|qc|valid|validity|status|alarms?|flags?)")) {
      d.role = Role.STATUS;
      d.note("says of another column how good it is");
    } else if (h.says(HeaderText.RATE)) {
      d.role = Role.RATE;
    } else if (electric(d)) {
      typeElectric(d);
    } else if (h.says(HeaderText.POWER_FACTOR)) {
      as(d, Role.MEASURED, Dimension.RATIO, Unit.PERCENT);
      d.scale = stats.high <= 1.01 ? 100 : 1;
      d.note("power factor by its name, kept in %");
    } else if (h.says(HeaderText.OTHER) && !h.says(HeaderText.TEMPERATURE)) {
      d.note("its name says another quantity than this program measures with");
    } else if (saysSetPoint(h) && !h.says(HeaderText.STATUS)) {
      as(d, Role.SET_POINT, Dimension.TEMPERATURE, null);
      d.note("set-point by its name");
    } else if (h.says(HeaderText.HUMIDITY)) {
      as(d, Role.MEASURED, Dimension.RATIO, Unit.PERCENT);
    } else if (h.says(HeaderText.ENERGY) && !h.says(HeaderText.TEMPERATURE)) {
      as(
          d,
          Role.MEASURED,
          Dimension.ENERGY,
          h.words().contains("wh") ? Unit.WATT_HOUR : Unit.KILOWATT_HOUR);
      d.openUnit = !h.words().contains("wh") && !h.words().contains("kwh");
      d.note("energy by its name");
    } else if (h.says(HeaderText.POWER)) {
      typePower(d, stats);
    } else if (h.says(HeaderText.VOLTAGE)) {
      as(d, Role.MEASURED, Dimension.VOLTAGE, Unit.VOLT);
    } else if (h.says(HeaderText.CURRENT)) {
      as(d, Role.MEASURED, Dimension.CURRENT, Unit.AMPERE);
      d.unit = MeterUnit.ofCurrent(stats.high);
      if (d.unit.scale() < 1) {
        d.note("mA: in A it would be more than a socket gives");
      }
    } else if (h.says(HeaderText.FREQUENCY)) {
      as(d, Role.MEASURED, Dimension.FREQUENCY, Unit.HERTZ);
    } else if (h.says(HeaderText.MASS)) {
      as(d, Role.MEASURED, Dimension.MASS, Unit.GRAM);
    } else if (h.says(HeaderText.DUTY)
        && !h.says(HeaderText.TEMPERATURE)
        && stats.low >= -100
        && (stats.distinct > 1 || !h.words().contains("pid"))) {
      duty(d, stats);
    } else if (stats.distinct <= 2
        && stats.low >= 0
        && stats.high <= 1
        && stats.low == Math.rint(stats.low)
        && stats.high == Math.rint(stats.high)
        && (stats.distinct == 2 || h.says(HeaderText.SWITCH) || h.says(HeaderText.STATUS))
        && stats.n > 3
        && !h.says(Set.of("temp", "temperature"))) {
      if (h.says(HeaderText.STATUS) && !h.says(HeaderText.SWITCH)) {
        d.role = Role.STATUS;
        d.note("0 and 1, a flag by its name");
        return;
      }
      as(d, Role.SWITCH, Dimension.RATIO, Unit.PERCENT);
      d.scale = 100;
      d.note("0 and 1, kept as 0 and 100 %");
    } else if (h.says(HeaderText.SWITCH)
        && !h.says(HeaderText.TEMPERATURE)
        && !h.isInputName()
        && stats.low >= 0
        && (stats.high <= 100 && stats.steps > 0.3 || isDrive(stats))) {
      duty(d, stats);
    } else if (h.written().isBlank() && isDrive(stats) && stats.low == 0) {
      duty(d, stats);
      d.note("never but within 0 to its full, and often at an end");
    } else if (h.written().isBlank() && isSetting(d, stats)) {
      as(d, Role.SET_POINT, Dimension.TEMPERATURE, null);
      d.note("stays where another column arrives: taken as the setting");
    } else if (h.says(HeaderText.STATUS) && !h.says(HeaderText.TEMPERATURE) && !reads(d, stats)) {
      d.role = Role.STATUS;
      d.note("state by its name");
    } else {
      typeTemperature(d, stats);
    }
  }

  /** Whole numbers up to a converter's full, which they reach. */
  private static boolean isDrive(Stats stats) {
    boolean full =
        stats.high == 100 || stats.high == 255 || stats.high == 1023 || stats.high == 4095;
    return full && stats.atEnds > 0.3 && stats.distinct > 1;
  }

  /** Few whole numbers in long steps, between where another unnamed column begins and ends. */
  private boolean isSetting(Draft d, Stats stats) {
    boolean steps = stats.n > 20 && stats.distinct <= 4 && stats.high >= 40 && stats.high <= 500;
    if (!steps || stats.high != Math.rint(stats.high)) {
      return false;
    }
    for (int c = 0; c < table.columns(); c++) {
      boolean other = c != d.column && table.kinds().get(c) == ColumnKind.NUMBER;
      if (other && !timeColumns.contains(c) && table.headers().get(c).written().isBlank()) {
        Stats s = Stats.of(table.values()[c]);
        if (s.smooth
            && s.low < 0.8 * stats.high
            && s.high > 0.6 * stats.high
            && s.high < 1.5 * stats.high) {
          return true;
        }
      }
    }
    return false;
  }

  /** U, I and P of one meter: letters that mean something only together. */
  private boolean electric(Draft d) {
    return electricLetter(d.header) != 0
        && table.headers().stream().map(ChannelBuilder::electricLetter).anyMatch(c -> c == 'u')
        && table.headers().stream().map(ChannelBuilder::electricLetter).anyMatch(c -> c == 'i');
  }

  private static char electricLetter(HeaderText header) {
    String name = header.name().toLowerCase(Locale.ROOT);
    return name.matches("(u|i|p|wp)(rms)?[ _.\\-]?\\d?")
        ? name.startsWith("wp") ? 'e' : name.charAt(0)
        : 0;
  }

  private static void typeElectric(Draft d) {
    switch (electricLetter(d.header)) {
      case 'u' -> as(d, Role.MEASURED, Dimension.VOLTAGE, Unit.VOLT);
      case 'i' -> as(d, Role.MEASURED, Dimension.CURRENT, Unit.AMPERE);
      case 'p' -> as(d, Role.MEASURED, Dimension.POWER, Unit.WATT);
      default -> as(d, Role.MEASURED, Dimension.ENERGY, Unit.WATT_HOUR);
    }
    d.note("a meter's letter beside U and I");
  }

  /** "state" also names the reading of a sensor, which then moves smoothly in fractions. */
  private static boolean reads(Draft d, Stats stats) {
    return d.header.words().contains("state") && stats.distinct > 12 && stats.smooth;
  }

  private static void as(Draft d, Role role, Dimension dimension, @Nullable Unit unit) {
    d.role = role;
    d.dimension = dimension;
    d.unit = unit == null ? null : new UnitText(unit, 1);
  }

  private static void typePower(Draft d, Stats stats) {
    boolean watts = d.header.words().contains("watt") || d.header.words().contains("watts");
    if (stats.high <= 100.0001 && stats.low >= 0 && !watts) {
      as(d, Role.DUTY, Dimension.RATIO, Unit.PERCENT);
      d.openUnit = true;
    } else {
      as(d, Role.MEASURED, Dimension.POWER, Unit.WATT);
      d.note("power by its name, taken in W");
    }
  }

  private static void duty(Draft d, Stats stats) {
    as(d, Role.DUTY, Dimension.RATIO, Unit.PERCENT);
    for (double full : new double[] {1, 100, 255, 1000, 1023, 4095, 65_535}) {
      if (stats.high <= full * 1.0001) {
        d.scale = 100 / full;
        d.note("duty by its name, full is " + (long) full);
        return;
      }
    }
    d.role = Role.MEASURED;
    d.dimension = null;
    d.unit = null;
  }

  private void typeTemperature(Draft d, Stats stats) {
    boolean named =
        hasSetPoint(d.header)
            || d.header.says(HeaderText.TEMPERATURE)
            || d.header.isInputName()
            || d.header.says(HeaderText.CORE)
            || d.header.says(HeaderText.AMBIENT)
            || d.header.says(HeaderText.COLD_JUNCTION)
            || d.header.says(HeaderText.CENTRE)
            || d.header.words().stream()
                .anyMatch(w -> w.contains("temp") || w.contains("thermo") || w.contains("celsius"))
            || d.header.name().matches("[Tt]([ _]?\\d\\w{0,11}|[ _]\\w{0,12}|[A-Z]\\w{0,12}|)")
            || d.header
                .name()
                .matches("T(?!otal|ime|arget|est|rial|ype|ag|ask|rack|orque|urn|ick)[a-z]{1,9}");
    double bulk = stats.median;
    boolean plausible =
        stats.n >= 2 && bulk > -60 && bulk < 1400 && (stats.distinct > 4 || stats.n < 6);
    if (named || (plausible && (d.header.written().isBlank() || looksPlaced(d.header)))) {
      d.dimension = Dimension.TEMPERATURE;
      d.note(named ? "temperature by its name" : "temperature by its values");
    } else if (plausible
        && bulk > 5
        && !temperaturesNamed()
        && (stats.smooth || amongTemperatures(d))) {
      d.dimension = Dimension.TEMPERATURE;
      d.note("temperature by its values");
    } else {
      d.note("nothing tells its quantity");
    }
  }

  /** Every other column of numbers is a temperature by its name. */
  private boolean amongTemperatures(Draft d) {
    int others = 0;
    for (int c = 0; c < table.columns(); c++) {
      HeaderText h = table.headers().get(c);
      boolean reads = table.kinds().get(c) == ColumnKind.NUMBER && !timeColumns.contains(c);
      if (reads && c != d.column) {
        others++;
        if (!h.says(HeaderText.TEMPERATURE) && !h.says(HeaderText.CORE) && !h.isInputName()) {
          return false;
        }
      }
    }
    return others > 0 && d.stats().distinct > 12 && d.stats().high > 40;
  }

  /** "B" beside "B set-point", as controllers print them. */
  private boolean hasSetPoint(HeaderText header) {
    return !header.name().isBlank()
        && table.headers().stream().anyMatch(h -> h.name().equals(header.name() + " set-point"));
  }

  /** A file that names its temperatures means something else by its other columns. */
  private boolean temperaturesNamed() {
    return table.headers().stream()
        .anyMatch(
            h ->
                h.unit() != null && h.unit().isTemperature()
                    || h.words().stream()
                        .anyMatch(w -> w.startsWith("temp") || w.contains("thermo")));
  }

  /** Left rear, rack 2, P3: places rather than quantities. */
  private static boolean looksPlaced(HeaderText header) {
    return Side.isAnySaid(header.name())
        || header.says(
            Set.of(
                "rack", "wall", "door", "corner", "shelf", "tray", "plate", "stone", "pan",
                "surface", "value", "reading", "val", "channel", "data", "y", "porte", "tür",
                "puerta", "porta", "wand", "mur", "pared", "grille", "rost"));
  }

  private static Role place(HeaderText h) {
    if (saysSetPoint(h)) {
      return Role.SET_POINT;
    }
    boolean numbered = h.name().matches("(?i).*\\b(device|logger|board) ?\\d.*");
    if (h.says(HeaderText.COLD_JUNCTION) && !numbered) {
      return Role.COLD_JUNCTION;
    }
    if (h.says(HeaderText.AMBIENT)) {
      return Role.AMBIENT;
    }
    if (h.says(HeaderText.CORE)) {
      return Role.CORE;
    }
    boolean exact =
        h.says(Set.of("centre", "center", "mitte", "middle", "mid", "centro", "central"));
    boolean aside =
        Side.isAnySaid(h.name())
            || h.says(Set.of("wall", "door", "corner", "surface", "exhaust", "wand", "tür"));
    return exact || (h.says(HeaderText.CENTRE) && !aside) ? Role.CENTRE : Role.MEASURED;
  }

  // Values

  private void takeOutSentinels(Draft d) {
    boolean reading =
        d.dimension == Dimension.TEMPERATURE && d.role != Role.SET_POINT
            || d.dimension == null && d.role == Role.MEASURED && !d.header.says(HeaderText.OTHER);
    if (!reading || d.dimension == null && d.stats().distinct <= 2) {
      unread(d);
      return;
    }
    if (d.unit != null && d.unit.isTemperature() && d.unit.scale() != 1) {
      toWholeUnits(d, d.unit);
    }
    Sentinels.Found found =
        d.stats().mayHoldSentinels() ? Sentinels.find(d.values) : Sentinels.none(d.values);
    d.values = found.values();
    int words = table.missingWords()[d.column];
    if (found.whole() || (d.stats().n == 0 && (words > 0 || d.values.length > 0))) {
      d.state = State.UNUSED;
      d.note(
          found.whole()
              ? "nothing but " + found.words() + ": not connected"
              : "no reading in any row: not connected");
    } else if (!found.counts().isEmpty()) {
      d.note(found.words() + " stand for no reading and were taken out");
    }
    if (words > 0 && d.state == State.GOOD) {
      d.note(words + " cell(s) hold a word instead of a reading");
    }
  }

  /** Tenths become degrees first: 2700 of them are no open input. */
  private static void toWholeUnits(Draft d, UnitText unit) {
    d.values = Arrays.stream(d.values).map(v -> Math.rint(v * unit.scale() * 1e9) / 1e9).toArray();
    d.unit = new UnitText(unit.unit(), 1);
  }

  /** A column of anything else in which nothing can be read. */
  private static void unread(Draft d) {
    if (d.stats().n == 0 && d.labels.isEmpty()) {
      d.state = State.UNUSED;
      d.note("no reading in any row: not connected");
    }
  }

  private void temperatureUnits(List<Draft> drafts) {
    List<Draft> open =
        drafts.stream()
            .filter(d -> d.dimension == Dimension.TEMPERATURE && d.unit == null)
            .toList();
    if (open.isEmpty()) {
      return;
    }
    List<Draft> written =
        drafts.stream()
            .filter(d -> d.dimension == Dimension.TEMPERATURE && d.unit != null)
            .toList();
    if (open.stream().allMatch(d -> d.stats().n == 0)) {
      settle(open, new UnitText(Unit.CELSIUS, 1), "no reading tells another");
      return;
    }
    UnitText inMetadata =
        temperatureColumn == null ? metadata.temperatureUnit() : temperatureColumn;
    Unit given = options.temperatureUnit();
    if (given != null) {
      settle(open, new UnitText(given, 1), "as given");
    } else if (inMetadata != null) {
      settle(open, inMetadata, "unit from the lines before the table");
    } else if (!written.isEmpty() && sameUnit(written)) {
      settle(
          open,
          java.util.Objects.requireNonNull(written.get(0).unit),
          "unit as in the other columns");
    } else {
      TemperatureGuess guess =
          TemperatureGuess.of(
              open.stream()
                  .filter(d -> d.role != Role.SET_POINT && d.state != State.UNUSED)
                  .map(d -> d.values)
                  .toList(),
              open.stream().filter(d -> d.role == Role.SET_POINT).map(d -> d.values).toList());
      settle(open, new UnitText(guess.unit(), guess.scale()), guess.why());
      certainty *= guess.sure() ? 0.97 : 0.7;
      if (!guess.sure()) {
        questions.add(
            new Question("temperature-unit", guess.question(), guess.readings(), guess.why()));
      }
    }
  }

  /** Powers first: what they add up to tells the unit of a counter. */
  private void meterUnits(List<Draft> drafts) {
    double[] volts = of(drafts, Dimension.VOLTAGE);
    double[] amperes = of(drafts, Dimension.CURRENT);
    for (Draft d : drafts) {
      if (d.openUnit && d.dimension == Dimension.RATIO && d.stats().n > 0) {
        MeterUnit found = MeterUnit.ofPower(d.stats().high, d.values, volts, amperes);
        if (found.unit() == Unit.PERCENT) {
          d.scale = d.stats().high <= 1.0001 ? 100 : 1;
        } else {
          as(d, Role.MEASURED, Dimension.POWER, found.unit());
        }
        settle(d, found, "power-unit");
      }
    }
    double[] watts = of(drafts, Dimension.POWER);
    for (Draft d : drafts) {
      if (d.openUnit && d.dimension == Dimension.ENERGY && d.stats().n > 1) {
        double[] power = watts == null ? product(volts, amperes) : watts;
        MeterUnit found = MeterUnit.ofEnergy(seconds, d.values, power);
        d.unit = new UnitText(found.unit(), 1);
        settle(d, found, "energy-unit");
      }
    }
  }

  private void settle(Draft d, MeterUnit found, String question) {
    d.note(found.why());
    if (!found.sure()) {
      certainty *= 0.85;
      String text = "What is the unit of “" + d.header.name() + "”?";
      questions.add(new Question(question, text, found.readings(), found.why()));
    }
  }

  /** Readings of the first such column in its contract unit; null when there is none. */
  private static double @Nullable [] of(List<Draft> drafts, Dimension dimension) {
    for (Draft d : drafts) {
      if (d.dimension == dimension && d.unit != null && d.role == Role.MEASURED) {
        double factor = d.scale * d.unit.contract(1);
        return Arrays.stream(d.values).map(v -> v * factor).toArray();
      }
    }
    return null;
  }

  private static double @Nullable [] product(double @Nullable [] a, double @Nullable [] b) {
    if (a == null || b == null) {
      return null;
    }
    double[] product = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      product[i] = a[i] * b[i];
    }
    return product;
  }

  private static boolean sameUnit(List<Draft> drafts) {
    return drafts.stream()
            .map(d -> java.util.Objects.requireNonNull(d.unit).unit())
            .distinct()
            .count()
        == 1;
  }

  private static void settle(List<Draft> drafts, UnitText unit, String why) {
    for (Draft d : drafts) {
      d.unit = unit;
      d.note(unit.unit() == Unit.KELVIN_ABSOLUTE ? "K: " + why : unit.unit().symbol() + ": " + why);
    }
  }

  private void convert(Draft d) {
    UnitText unit = d.unit;
    double offset = 0;
    double factor = d.scale;
    if (unit != null) {
      offset = unit.contract(0);
      factor = d.scale * (unit.contract(1) - offset);
    }
    if (unit != null && unit.unit() == Unit.FAHRENHEIT && factor * 9 == 5) {
      d.values = fahrenheit(d.values);
    } else if (factor != 1 || offset != 0) {
      double[] converted = new double[d.values.length];
      for (int i = 0; i < converted.length; i++) {
        converted[i] = d.values[i] * factor + offset;
      }
      d.values = converted;
    }
  }

  private static double[] fahrenheit(double[] values) {
    double[] converted = new double[values.length];
    for (int i = 0; i < converted.length; i++) {
      converted[i] = (values[i] - 32) * 5 / 9;
    }
    return converted;
  }

  /** Loggers for roasts call the appliance's air "ambient" and number the needles. */
  private void hotRooms(List<Draft> drafts) {
    boolean centre = drafts.stream().anyMatch(d -> d.role == Role.CENTRE);
    boolean hot = false;
    for (Draft d : drafts) {
      if (d.role == Role.AMBIENT && d.stats().n > 0 && d.stats().high > 60) {
        d.role = centre ? Role.MEASURED : Role.CENTRE;
        d.note("too hot for a room: the air of the appliance");
        hot = true;
      }
    }
    roomsByValue(drafts);
    for (Draft d : drafts) {
      boolean needle =
          hot
              && d.role == Role.MEASURED
              && d.dimension == Dimension.TEMPERATURE
              && d.header.says(Set.of("probe", "sonde", "needle", "fühler"))
              && d.stats().n > 0
              && d.stats().high < 110;
      if (needle) {
        d.role = Role.CORE;
        d.note("a probe beside the air: in the food");
      }
    }
  }

  /** What stays in a room's range while another place gets as hot as an oven is in the room. */
  private void roomsByValue(List<Draft> drafts) {
    List<Draft> places =
        drafts.stream()
            .filter(d -> d.dimension == Dimension.TEMPERATURE && d.stats().n > 20)
            .filter(d -> d.role == Role.MEASURED || d.role == Role.CENTRE)
            .toList();
    boolean hot = places.stream().anyMatch(d -> d.stats().high > 120 && d.stats().low < 60);
    boolean roomKnown = drafts.stream().anyMatch(d -> d.role == Role.AMBIENT);
    for (Draft d : places) {
      Stats s = d.stats();
      boolean cool = s.low > 10 && s.high < 40 && s.high - s.low < 8 && s.distinct > 2;
      boolean free = !isPlace(d.header) && !hasSetPoint(d.header);
      if (hot && cool && d.role == Role.MEASURED && free) {
        d.role = roomKnown ? Role.COLD_JUNCTION : Role.AMBIENT;
        d.note("never leaves the room's range while another rises: taken as the room");
      }
    }
  }

  /** A name that says a place of the appliance keeps it, though it stays cold. */
  private static boolean isPlace(HeaderText header) {
    return looksPlaced(header)
        && !header.says(Set.of("value", "reading", "val", "channel", "data", "y"));
  }

  // What is wrong with it

  private void judge(List<Draft> drafts) {
    Draft main = null;
    double widest = 0;
    for (Draft d : drafts) {
      if (d.dimension == Dimension.TEMPERATURE
          && d.role != Role.SET_POINT
          && d.state == State.GOOD) {
        Stats s = d.stats();
        if (s.high - s.low > widest) {
          widest = s.high - s.low;
          main = d;
        }
      }
    }
    for (Draft d : drafts) {
      if (d.dimension == Dimension.TEMPERATURE
          && d.role != Role.SET_POINT
          && d.state == State.GOOD) {
        judgeOne(d, main, widest);
      }
    }
  }

  /** An oven that cycles between two rows of a slow logger jumps too. */
  private double wildestNoise(Stats s) {
    double step = rows.length < 2 ? 1 : (seconds[rows.length - 1] - seconds[0]) / (rows.length - 1);
    return step < 10 ? 8 : Math.max(8, 0.15 * (s.high - s.low));
  }

  private void judgeOne(Draft d, @Nullable Draft main, double widest) {
    Stats s = d.stats();
    int present = s.n;
    if (present < 0.5 * d.values.length && s.dropouts > 3 && !s.evenlySparse) {
      suspect(d, "reads only " + present + " of " + d.values.length + " rows");
    }
    if (main != null && d != main && widest > 40) {
      boolean steadyByNature = d.role == Role.AMBIENT || d.role == Role.COLD_JUNCTION;
      if (present > 20 && s.high == s.low && !steadyByNature) {
        suspect(
            d,
            "never moves from "
                + TraceMeasures.digits(s.low, 1)
                + " °C while another channel rises by "
                + TraceMeasures.digits(widest, 0)
                + " K");
      } else if (s.low < -5 && s.high - s.low > 20 && correlation(d.values, main.values) < -0.9) {
        suspect(
            d,
            "falls while the others rise: the thermocouple is probably connected the wrong way round");
      }
    }
    if (s.noise > wildestNoise(s)) {
      suspect(
          d,
          "jumps by about "
              + TraceMeasures.digits(s.noise, 0)
              + " K from row to row: a loose or open input");
    }
  }

  private static void suspect(Draft d, String why) {
    d.state = State.SUSPECT;
    d.note(why);
  }

  private static double correlation(double[] x, double[] y) {
    double n = 0;
    double sx = 0;
    double sy = 0;
    double sxx = 0;
    double syy = 0;
    double sxy = 0;
    for (int i = 0; i < x.length; i++) {
      if (Double.isFinite(x[i]) && Double.isFinite(y[i])) {
        n++;
        sx += x[i];
        sy += y[i];
        sxx += x[i] * x[i];
        syy += y[i] * y[i];
        sxy += x[i] * y[i];
      }
    }
    double vx = sxx - sx * sx / n;
    double vy = syy - sy * sy / n;
    return vx > 0 && vy > 0 ? (sxy - sx * sy / n) / Math.sqrt(vx * vy) : 0;
  }

  private void names(List<Draft> drafts) {
    Map<String, Integer> seen = new HashMap<>();
    for (Draft d : drafts) {
      String name = d.header.name().isBlank() ? "column " + (d.column + 1) : d.header.name();
      int times = seen.merge(name, 1, Integer::sum);
      d.name = times == 1 ? name : name + " " + times;
    }
  }

  private Channel channel(Draft d) {
    Unit unit = d.unit == null ? Unit.ONE : d.unit.unit().contractUnit();
    if (d.dimension == Dimension.TEMPERATURE) {
      unit = Unit.CELSIUS;
    }
    String written = d.unit == null || d.unitFrom.isEmpty() ? "" : d.unit.unit().symbol();
    Stats s = d.stats();
    return new Channel(
        d.name,
        d.header.written(),
        d.role,
        d.dimension,
        unit,
        written,
        d.values,
        d.labels,
        s.n,
        s.n == d.values.length ? gapsInTime() : gaps(d.values, s.n),
        d.state,
        d.why);
  }

  /** Stretches of more than 30 s without a row. */
  private int gapsInTime() {
    if (gapsInTime < 0) {
      Trace trace = new Trace("", seconds, seconds, Unit.SECOND);
      gapsInTime = Gap.in(seconds, trace.medianStepSeconds()).size();
    }
    return gapsInTime;
  }

  /** Stretches of more than 30 s without a reading. */
  private int gaps(double[] values, int n) {
    if (n < 2) {
      return 0;
    }
    double[] present = new double[n];
    int next = 0;
    for (int i = 0; i < values.length; i++) {
      if (Double.isFinite(values[i])) {
        present[next++] = seconds[i];
      }
    }
    Trace trace = new Trace("", present, present, Unit.SECOND);
    return Gap.in(present, trace.medianStepSeconds()).size();
  }

  /** A few numbers about a column. */
  private record Stats(
      int n,
      double low,
      double high,
      double median,
      int distinct,
      double steps,
      boolean smooth,
      double noise,
      int dropouts,
      boolean evenlySparse,
      double widestStep,
      boolean infinite,
      double atEnds) {

    /** Without a jump, a reading beyond all probes, or one value alone there can be none. */
    boolean mayHoldSentinels() {
      return infinite || low == high || Sentinels.possible(low, high, widestStep);
    }

    static Stats of(double[] values) {
      int n = 0;
      int dropouts = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      double widestStep = 0;
      boolean whole = true;
      boolean infinite = false;
      double last = Double.NaN;
      boolean inGap = false;
      for (double v : values) {
        if (!Double.isFinite(v)) {
          infinite |= !Double.isNaN(v);
          dropouts += !inGap && n > 0 ? 1 : 0;
          inGap = true;
          continue;
        }
        inGap = false;
        n++;
        low = v < low ? v : low;
        high = v > high ? v : high;
        double step = Math.abs(v - last);
        widestStep = step > widestStep ? step : widestStep;
        whole = whole && v == Math.rint(v);
        last = v;
      }
      double[] sample = sample(values, n);
      double[] sorted = sample.clone();
      Arrays.sort(sorted);
      int distinct = 0;
      for (int i = 0; i < sorted.length; i++) {
        distinct += i == 0 || sorted[i] != sorted[i - 1] ? 1 : 0;
      }
      double noise = Medians.noise(sample);
      boolean smooth = n > 5 && distinct > 5 && noise < 0.05 * (high - low);
      double share =
          values.length == 0 ? 0 : (double) distinct / Math.max(1, Math.min(sorted.length, 50));
      boolean even = dropouts > 0.8 * n;
      double median = sorted.length == 0 ? Double.NaN : Medians.ofSorted(sorted, 0, sorted.length);
      return new Stats(
          n,
          low,
          high,
          median,
          distinct,
          share,
          smooth,
          noise,
          dropouts,
          even && !Double.isNaN(last) || whole && even,
          widestStep,
          infinite,
          atEnds(sorted));
    }

    /** Share of readings that are the lowest or the highest. */
    private static double atEnds(double[] sorted) {
      int n = sorted.length;
      int low = 0;
      int high = 0;
      while (low < n && sorted[low] == sorted[0]) {
        low++;
      }
      while (high < n && sorted[n - 1 - high] == sorted[n - 1]) {
        high++;
      }
      return n == 0 ? 0 : (double) Math.min(n, low + high) / n;
    }

    /** Up to 4,000 neighbouring readings from the whole, NaN left out. */
    private static double[] sample(double[] values, int n) {
      double[] sample = new double[Math.min(n, 4000)];
      int next = 0;
      for (int i = 0; i < values.length && next < sample.length; i++) {
        if (Double.isFinite(values[i])) {
          sample[next++] = values[i];
        }
      }
      return sample;
    }
  }
}
