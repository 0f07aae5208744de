package ovenproof.core.panel.table;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Words that people write above columns, in the languages our desks and their guests write: the
 * trade's words in English, German, French, Spanish, Italian, Dutch and Portuguese.
 */
final class Vocabulary {

  private static final Map<Role, Set<String>> ROLES = new EnumMap<>(Role.class);

  static {
    words(
        Role.ASSESSOR,
        "assessor assessors judge judges panelist panellist panelists taster tasters rater raters"
            + " consumer consumers subject worker participant respondent evaluator person people"
            + " tester expert juror observer user member student player who panel customer"
            + " individual volunteer reviewer grader scorer prufer pruefer verkoster tester bewerter"
            + " teilnehmer teilnehmerin juge paneliste degustateur sujet consommateur juez catador"
            + " panelista evaluador consumidor giudice assaggiatore valutatore beoordelaar proever"
            + " provador avaliador pan panl jdg jud assr subj cons resp respondents");
    words(
        Role.PRODUCT,
        "product products sample samples oven ovens appliance device model machine item brand"
            + " treatment variety recipe formulation formula wine cheese target stimulus object food"
            + " toaster fryer spray group tvset tv make specimen prototype blend beer coffee juice"
            + " bread chocolate candidate produkt produkte probe muster ofen gerat geraet produit"
            + " produits echantillon four appareil producto muestra horno prodotto campione forno"
            + " monster produto amostra prod samp smp trt treat");
    words(
        Role.SESSION,
        "session sessions sitting day date round week evening sitzung tag runde seance jour sesion sess"
            + " dia sessione giorno zitting dag sessao visit occasion durchgang durchlauf period periode");
    words(
        Role.BATCH,
        "batch batches lot load bake baking loaf bottle cooking charge ofenladung partie fournee"
            + " hornada infornata lote batchno run");
    words(
        Role.REPLICATE,
        "rep reps replicate replicates replication repetition repeat wiederholung repetizione"
            + " repeticion duplicate dup herhaling replica");
    words(
        Role.ORDER,
        "order position pos rank serving sequence presentation reihenfolge ordre rang orden"
            + " posizione volgorde ordem place");
    words(
        Role.ATTRIBUTE,
        "attribute attributes criterion descriptor property characteristic question variable trait"
            + " eigenschaft merkmal descripteur attribut atributo attributo aspect kenmerk parameter"
            + " dimension");
    words(
        Role.MARK,
        "score scores rating ratings mark marks value values grade points wert punkte bewertung"
            + " valeur puntuacion valor punteggio voto response liking preference opinion acceptance"
            + " hedonic intensity note cijfer nota evaluation");
    words(
        Role.IGNORED,
        "id ids age gender sex comment comments remark remarks notes email mail timestamp time"
            + " duration start end total sum mean average avg sd stdev std median row no nr number"
            + " index income education household homesize smoker weight height birth year phone"
            + " country city occupation work frequency form seat booth minutes temperature consent"
            + " alter geschlecht kommentar bemerkung commentaire sexe edad sexo comentario eta"
            + " sesso commento price prices cost preis prix prezzo precio prijs watt watts wattage"
            + " capacity leeftijd geslacht opmerking summe mittelwert moyenne somme promedio"
            + " media totale gesamt durchschnitt nummer numero minimum maximum min max count n ip"
            + " browser language locale initials");
  }

  private static final Set<String> PERSONAL =
      set("age gender sex alter geschlecht sexe edad sexo leeftijd geslacht income education");

  /** What people do and like at home: asked on many forms, and never a key of a tasting. */
  private static final Set<String> HABITS =
      set(
          "favorite favourite frequency freq often usually drinking eating cooking since home habit"
              + " habits purchase buying consumption experience familiarity familiar how");

  private static final Set<String> COMPUTED =
      set("diff difference delta change calculated calc computed d");

  private static final Set<String> NEUTRAL = set("id ids no nr number num name code label n index");

  private static final Set<String> ATTRIBUTES =
      set(
          "crisp crispness crispy crispiness crunch crunchy crunchiness taste tasting flavour flavor"
              + " aroma odor odour smell colour color texture appearance overall liking juicy"
              + " juiciness salty salt saltiness sweet sweetness bitter bitterness sour sourness"
              + " acid acidity hardness hard soft softness browning brown brownness darkness doneness"
              + " evenness moist moisture moistness tender tenderness aftertaste crust crumb"
              + " chewy chewiness greasy greasiness oily dry dryness fresh freshness burnt toasty"
              + " sticky granular melting astringent vanilla milk milky caramel cocoa cocoaa noise"
              + " sharpness contrast depth look looks mouthfeel preference acceptance intensity"
              + " thickness smooth smoothness umami spicy spiciness fruity fruitiness floral"
              + " geschmack aussehen geruch farbe textur knusprigkeit gesamteindruck gout odeur"
              + " couleur croustillant apparence sabor olor aspecto textura jar");

  private static final Set<String> QUANTITIES =
      set(
          "temp temperature time minutes min hours seconds dose weight mass length width height size"
              + " volume power watt watts speed rpm ph concentration level setting temperatur zeit"
              + " gewicht stufe dauer dial");

  private static final Set<String> NAMES =
      set(
          "anna anne ana ann amy alice andrea alex alan adam ada ben bob bea beth bert carl carla"
              + " chris clara cora dan dana dave david diana dora ed eddie ella emma eva eve erik"
              + " eric finn frank fred gina george grace greta hans hanna hannah harry helen henry"
              + " ida ian ines iris jack jane jan jean jim joe john jonas julia kate karl kim lara"
              + " laura lea lena leo lisa liz louis lucy luca maria marie mark martin max maya mia"
              + " mike mira nina nora noah olga oliver omar oscar pat paul paula pete peter pia quinn"
              + " rosa rob ruth sam sara sarah sofia sophie sue susan tara tim tom tomas tina ursula"
              + " uma vera victor will yara zoe zoey ola ole per lars ingrid pablo diego carmen"
              + " giulia marco francois pierre claire camille wei ming yuki hiro priya raj omar");

  private static final Pattern PERSON_NUMBER =
      Pattern.compile(
          "(judge|taster|assessor|panell?ist|rater|consumer|subject|person|tester|expert|participant"
              + "|juror|panel|respondent|evaluator|juge|juez|prufer|p|j|t|c|pan|con|cons|subj|r)"
              + "[ _.#-]?0*\\d+[a-z]?");

  private static final Pattern PRODUCT_NUMBER =
      Pattern.compile(
          "(product|sample|oven|appliance|model|item|prod|brand|wine|choc|probe|produit|muestra"
              + "|target|machine|toaster|fryer|recipe)[ _.#-]?0*[\\da-z]{1,3}");

  private static final Pattern SESSION_NUMBER =
      Pattern.compile("(session|day|round|week|sitting|sitzung|tag|seance|sess|s)[ _.#-]?0*\\d+");

  private static final Pattern REPLICATE_NUMBER =
      Pattern.compile(
          "((rep|replicate|repeat|replication|r|dup|trial|test|wdh)[ _.#-]?)?0*\\d{1,2}");

  private static final Set<String> DAYS =
      set(
          "mon tue tues wed thu thur thurs fri sat sun monday tuesday wednesday thursday friday"
              + " saturday sunday montag dienstag mittwoch donnerstag freitag samstag sonntag mo di mi"
              + " fr sa so morning afternoon evening am pm");

  private static final Set<String> SUMMARY =
      set(
          "total totals sum mean means average averages avg sd stdev std median min max minimum"
              + " maximum count summe mittelwert mittel moyenne somme promedio media totale gesamt"
              + " durchschnitt gesamtsumme subtotal se sem var variance range");

  private Vocabulary() {}

  private static void words(Role role, String words) {
    ROLES.put(role, set(words));
  }

  private static Set<String> set(String words) {
    return new HashSet<>(Arrays.asList(words.split(" ")));
  }

  /** Lower case, no accents, no punctuation at the ends. */
  static String fold(String text) {
    if (isPlain(text)) {
      return text.toLowerCase(Locale.ROOT);
    }
    String plain = Normalizer.normalize(text, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
    return plain.toLowerCase(Locale.ROOT).replaceAll("[\\s\\u00A0]+", " ").strip();
  }

  /** ASCII without stray spaces: nothing to fold but capitals. */
  private static boolean isPlain(String text) {
    boolean space = true;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c > '~' || c == ' ' && space) {
        return false;
      }
      space = c == ' ';
    }
    return !space || text.isEmpty();
  }

  /** Folded and without anything but letters and digits. */
  static String key(String text) {
    return fold(text).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  /** Words of a header: split at punctuation, at capitals and before digits. */
  static List<String> tokens(String header) {
    String apart =
        header.replaceAll("(\\p{Ll})(\\p{Lu})", "$1 $2").replaceAll("(\\p{L})(\\d)", "$1 $2");
    List<String> tokens = new ArrayList<>();
    for (String token : fold(apart).split("[^\\p{L}\\p{N}]+")) {
      if (!token.isEmpty()) {
        tokens.add(token);
      }
    }
    return tokens;
  }

  /**
   * The role that a header's words name; null when none does. The last word weighs most, but "id"
   * or "name" beside a key is that key, and a fact about people is never a key.
   */
  static @Nullable Role role(String header) {
    List<String> tokens = tokens(header);
    if (tokens.stream().anyMatch(PERSONAL::contains) || isHabit(tokens)) {
      return Role.IGNORED;
    }
    Role named = roleOf(String.join("", tokens));
    for (int i = tokens.size() - 1; named == null && i >= 0; i--) {
      named = NEUTRAL.contains(tokens.get(i)) ? null : roleOf(tokens.get(i));
    }
    boolean numbering = tokens.stream().anyMatch(t -> roleOf(t) == Role.IGNORED);
    return named == null && numbering ? Role.IGNORED : named;
  }

  /** "favorite_beer", "hours since last eat": not "How crisp is sample 471?". */
  private static boolean isHabit(List<String> tokens) {
    return tokens.size() > 1
        && tokens.stream().anyMatch(HABITS::contains)
        && tokens.stream().noneMatch(ATTRIBUTES::contains)
        && tokens.stream().noneMatch(t -> roleOf(t) == Role.MARK);
  }

  /** A header's part that says the numbers below were calculated from others. */
  static boolean isComputed(String part) {
    return isSummary(part) || tokens(part).stream().anyMatch(COMPUTED::contains);
  }

  /** A bare "name": of a person where nothing else tells who rated. */
  static boolean isName(String header) {
    return Set.of("name", "names", "nom", "nombre", "naam", "nome", "vorname", "firstname")
        .contains(key(header));
  }

  private static @Nullable Role roleOf(String token) {
    Role role = listed(token);
    return role == null && token.length() > 4 && token.endsWith("id")
        ? listed(token.substring(0, token.length() - 2))
        : role;
  }

  private static @Nullable Role listed(String token) {
    for (Map.Entry<Role, Set<String>> entry : ROLES.entrySet()) {
      if (entry.getValue().contains(token)) {
        return entry.getKey();
      }
    }
    return null;
  }

  static boolean isSummary(String label) {
    List<String> tokens = tokens(label);
    return !tokens.isEmpty() && tokens.size() <= 3 && SUMMARY.contains(tokens.get(0))
        || tokens.size() == 2 && SUMMARY.contains(tokens.get(1));
  }

  /** Words of a summary that are also names of people. */
  static boolean isExtreme(String label) {
    return Set.of("max", "min", "maximum", "minimum").contains(fold(label));
  }

  static boolean isAttributeWord(String label) {
    return tokens(label).stream().anyMatch(ATTRIBUTES::contains);
  }

  /** A header that names a physical quantity: its levels are settings, not people or products. */
  static boolean isQuantity(String header) {
    return tokens(header).stream().anyMatch(QUANTITIES::contains);
  }

  static boolean isPerson(String label) {
    String folded = fold(label);
    List<String> tokens = tokens(label);
    return PERSON_NUMBER.matcher(folded).matches()
        || !tokens.isEmpty() && NAMES.contains(tokens.get(0)) && tokens.size() <= 2;
  }

  static boolean isProduct(String label) {
    return PRODUCT_NUMBER.matcher(fold(label)).matches();
  }

  static boolean isSession(String label) {
    return SESSION_NUMBER.matcher(fold(label)).matches() || isDay(label);
  }

  /** A weekday or a date. */
  static boolean isDay(String label) {
    String folded = fold(label);
    return DAYS.contains(folded)
        || folded.matches("\\d{4}-\\d{2}-\\d{2}|\\d{1,2}[./]\\d{1,2}[./](\\d{2}|\\d{4})?");
  }

  static boolean isReplicate(String label) {
    return REPLICATE_NUMBER.matcher(fold(label)).matches();
  }
}
