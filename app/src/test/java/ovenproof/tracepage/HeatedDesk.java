package ovenproof.tracepage;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.EvidenceStore;
import ovenproof.desk.Field;
import ovenproof.desk.NewEntry;

/**
 * A desk with one invented oven, one heat-up that is a lumped capacitance (T = 20 + 180·(1 −
 * e^(−t/600 s)), textbook form, with 0.2 K of noise), and one photograph of four slices.
 */
public final class HeatedDesk {
  public static final String CID = "warm-ovens";
  public static final String RUN = "alder-1";
  public static final String PHOTO = "runs/alder-1/slices.png";

  private static final Instant NINE = Instant.parse("2026-03-04T09:00:00Z");
  private static final String METHOD =
      """
      format: 1
      method: warm-ovens
      title: Invented warm ovens
      version: "1"
      population: Invented ovens
      tests:
        - id: heat
          name: Heat-up
          parts: 1
          replicates: 1
          setting: {rule: as-user-would, dial: 230 °C}
          stops:
            - {when: time, at: 60 min}
          photos: {faces: [top], pieces: 4, target: {L: 62, a: 10, b: 32}}
          measures:
            - {id: shade, take: lightness-mean, face: top}
            - {id: hottest, take: highest, place: centre}
          criteria:
            - {id: hottest, name: Hottest, parts: 1, measure: hottest, curve: {points: [[150 °C, 0], [250 °C, 10]]}}
      """;

  private HeatedDesk() {}

  /** Fills a fresh desk. */
  public static void fill(Desk desk) throws IOException {
    desk.create(
        Field.of(
                new Campaign.Info(
                    CID,
                    "Warm ovens",
                    "Quarry Street (invented)",
                    ZoneId.of("Europe/Dublin"),
                    "EUR",
                    Campaign.Provenance.INVENTED,
                    null,
                    null,
                    null))
            .withProducts(List.of(new Campaign.Product("alder", "Alder", null, null, null))),
        METHOD,
        "lead");
    NewEntry.Stamp stamp = NewEntry.Stamp.of("operator", NINE);
    Run run =
        new Run(
            RUN,
            "alder",
            null,
            "heat",
            "scored",
            1,
            Run.Kind.COUNTED,
            null,
            null,
            NINE,
            null,
            null,
            null,
            "operator",
            null);
    String variant = desk.load(CID).method().test("heat").orElseThrow().scoredVariant().id();
    Run fitting =
        new Run(
            run.id(),
            run.product(),
            null,
            run.test(),
            variant,
            1,
            run.kind(),
            null,
            null,
            NINE,
            null,
            null,
            null,
            "operator",
            null);
    List<NewEntry> entries = new ArrayList<>();
    entries.add(new NewEntry("entry-run-1", EntryKind.RUN, fitting, stamp, null));
    entries.add(event("entry-start", Event.Type.START, 0, null, stamp));
    entries.add(event("entry-stop", Event.Type.STOP, 3600, "time", stamp));
    String log = attach(desk, "runs/alder-1/log.csv", log("time (s),Centre (°C)", 5, true));
    entries.add(
        new NewEntry(
            "entry-trace",
            EntryKind.TRACE,
            new TraceBinding(log, "Centre", "centre", null, RUN, null, null, null, null, 0, null),
            stamp,
            null));
    String photo = attach(desk, PHOTO, slices());
    entries.add(
        new NewEntry(
            "entry-photo",
            EntryKind.PHOTO,
            new Photo(photo, RUN, 1, "top", null, null, List.of(), null),
            stamp,
            null));
    desk.append(CID, entries);
  }

  private static NewEntry event(
      String key, Event.Type type, double at, @Nullable String value, NewEntry.Stamp stamp) {
    return new NewEntry(
        key,
        EntryKind.EVENT,
        new Event(
            RUN,
            type,
            at,
            null,
            null,
            value,
            null,
            new Entry.Provenance(key, "operator", NINE, null)),
        stamp,
        null);
  }

  private static String attach(Desk desk, String path, byte[] bytes) {
    EvidenceStore.Stored stored =
        desk.evidence().put(path, new ByteArrayInputStream(bytes), 10_000_000);
    return desk.attach(CID, path, stored, "operator");
  }

  /** A log of an hour. */
  public static byte[] log(String header, int stepSeconds, boolean times) {
    Random noise = new Random(4);
    StringBuilder text = new StringBuilder(header).append('\n');
    for (int t = 0; t <= 3600; t += stepSeconds) {
      double celsius = 20 + 180 * (1 - Math.exp(-t / 600.0)) + 0.2 * noise.nextGaussian();
      text.append(
          times
              ? String.format(Locale.ROOT, "%d,%.1f\n", t, celsius)
              : String.format(Locale.ROOT, "%.1f\n", celsius));
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Four brown slices on a blue-grey table, 640 by 480, no chart. */
  public static byte[] slices() throws IOException {
    BufferedImage image = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(new Color(0x5f7680));
    g.fillRect(0, 0, 640, 480);
    int[][] at = {{90, 60}, {370, 60}, {90, 270}, {370, 270}};
    for (int i = 0; i < at.length; i++) {
      g.setColor(new Color(0xb1 - 14 * i, 0x86 - 12 * i, 0x51 - 8 * i));
      g.fillRoundRect(at[i][0], at[i][1], 170, 140, 50, 50);
    }
    g.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }
}
