package ovenproof.publish;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import ovenproof.campaign.Campaign;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.publish.edition.Edition;
import ovenproof.verdict.VerdictService;

/**
 * A small invented campaign as a folder: four ovens, toast with photographs and marks, a poultry
 * test with a safety limit and a cap, and facts. Everything is made up; the taster is called "Ana
 * Quill".
 */
public final class SmallCampaign {
  static final String TASTER = "Ana Quill";
  private static final List<String> OVENS = List.of("alder", "siskin", "rowan", "dunnock");

  private final Path folder;
  private final List<String> names;
  private final Random random = new Random(20260304);

  private SmallCampaign(Path folder, List<String> names) {
    this.folder = folder;
    this.names = names;
  }

  public static Path write(Path folder) {
    return write(folder, List.of("Alder", "Siskin", "Rowan", "Dunnock"));
  }

  /** With four names of your own, in place of the plain ones. */
  public static Path write(Path folder, List<String> names) {
    try {
      new SmallCampaign(folder, names).write();
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The folder, measured and scored. */
  public static Edition edition(Path folder) {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder);
    Campaign campaign = loaded.campaign();
    Measured measured = MeasureService.withDefaults().measure(campaign, loaded.evidence());
    return new Edition(
        campaign,
        loaded.evidence(),
        measured,
        new VerdictService(1).verdict(campaign, measured),
        java.time.LocalDate.of(2026, 3, 20));
  }

  private void write() throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    put("campaign.yaml", CAMPAIGN);
    put("method.yaml", METHOD);
    StringBuilder products = new StringBuilder("product,name,kind\n");
    StringBuilder specimens =
        new StringBuilder("specimen,product,acquired,from,on,became,became_on\n");
    StringBuilder prices = new StringBuilder("product,price,on,currency,where\n");
    StringBuilder facts = new StringBuilder("product,fact,nameplate,measured,entry,by\n");
    StringBuilder rated = new StringBuilder("product,fact,rater,step,reason\n");
    for (int i = 0; i < OVENS.size(); i++) {
      String oven = OVENS.get(i);
      products.append(oven).append(',').append(quoted(names.get(i))).append(",countertop oven\n");
      specimens
          .append(oven)
          .append("-1,")
          .append(oven)
          .append(i == 3 ? ",lent,its maker" : ",bought,a shop")
          .append(",2026-02-10,returned,2026-03-18\n");
      prices.append(oven).append(',').append(289 - 60 * i).append(",2026-03-14,EUR,a shop\n");
      facts.append(oven).append(",usable-volume,").append(24 - 2 * i).append(" L,");
      facts.append(i == 1 ? "18.2 L" : 23.1 - 2 * i + " L").append(",f").append(i).append(',');
      facts.append(quoted(TASTER)).append('\n');
      rated.append(oven).append(",controls,").append(quoted(TASTER)).append(',').append(4 - i);
      rated.append(",clear\n").append(oven).append(",controls,lead,").append(Math.max(0, 3 - i));
      rated.append(",some words\n");
    }
    put("products.csv", products);
    put("specimens.csv", specimens);
    put("prices.csv", prices);
    put("facts.csv", facts);
    put("rated.csv", rated);
    put(
        "features.csv",
        "product,feature,state,on,note,entry,by,corrects\n"
            + "alder,Door light,no,2026-03-14,,x1,"
            + quoted(TASTER)
            + ",\nalder,Door light,yes,2026-03-15,seen by "
            + TASTER
            + ",x2,,x1\nsiskin,Door light,no,2026-03-14,,x3,,\n"
            + "rowan,Door light,not-applicable,,no door,x4,,\n");
    put("left-out.csv", "name,why\nBramble,no longer sold\n");
    put(
        "instruments.csv",
        "instrument,name,kind,quantity,uncertainty\nP3,Probe 3,thermocouple,temperature,0.8 K\n");
    put(
        "calibrations.csv",
        "instrument,on,correction,uncertainty,reference\nP3,2026-03-01,0.3 K,0.5 K,melting ice\n");
    runs();
  }

  private void runs() throws IOException {
    StringBuilder runs =
        new StringBuilder("run,product,test,replicate,specimen,session,started,redo_of,cause,by\n");
    StringBuilder events = new StringBuilder("run,event,time,batch,value,note,by\n");
    StringBuilder readings = new StringBuilder("run,reading,value,instrument,by\n");
    StringBuilder pieces = new StringBuilder("run,batch,piece,before,after\n");
    StringBuilder ratings = new StringBuilder("session,assessor,run,mark,value,batch\n");
    StringBuilder photos = new StringBuilder("file,run,batch,face,boxes\n");
    for (int i = 0; i < OVENS.size(); i++) {
      String oven = OVENS.get(i);
      for (int r = 1; r <= 3; r++) {
        String toast = oven + "-toast-" + r;
        runs.append(toast).append(',').append(oven).append(",toast,").append(r).append(',');
        runs.append(oven).append("-1,day").append(r).append(",2026-03-0").append(r + 1);
        runs.append("T10:1").append(i);
        runs.append(toast.equals("rowan-toast-1") ? ",rowan-toast-9,power cut," : ",,,")
            .append(quoted(TASTER))
            .append('\n');
        int seconds = 190 + 60 * i + random.nextInt(12);
        events.append(toast).append(",start,+0:00,,,,\n");
        events.append(toast).append(",load,+0:05,1,,,\n");
        events
            .append(toast)
            .append(",stop,")
            .append(clock(seconds + 5))
            .append(",1,ends-by-itself,");
        events
            .append(quoted(TASTER + " opened the door"))
            .append(',')
            .append(quoted(TASTER))
            .append('\n');
        events.append(toast).append(",remove,").append(clock(seconds + 9)).append(",1,,,\n");
        pieces.append(toast).append(",1,all,152 g,").append(134 - i).append(" g\n");
        for (String assessor : List.of(TASTER, "T2", "T3")) {
          ratings
              .append("day")
              .append(r)
              .append(',')
              .append(quoted(assessor))
              .append(',')
              .append(toast);
          ratings
              .append(",crispness,")
              .append(7.5 - i * 0.9 + random.nextInt(9) / 10.0)
              .append(",1\n");
        }
        String photo = "photos/" + toast + ".jpg";
        picture(photo, new Color(200 - 25 * i + r, 150 - 25 * i, 90 - 15 * i));
        photos.append(photo).append(',').append(toast).append(",1,top,\"1:40,40,200,200\"\n");
        poultry(runs, events, readings, oven, i, r);
      }
    }
    runs.append("rowan-toast-9,rowan,toast,1,rowan-1,day1,2026-03-02T09:00,,,\n");
    events.append("rowan-toast-9,start,+0:00,,,,\nrowan-toast-9,stop,+2:00,,abort,,\n");
    put(
        "deviations.csv",
        "run,class,what,note\nrowan-toast-9,3,power cut,\nalder-toast-2,2,low mains,212 V\nsiskin-toast-1,1,"
            + quoted(TASTER + " turned the tray late")
            + ",20 s\n");
    put("runs.csv", runs);
    put("events.csv", events);
    put("readings.csv", readings);
    put("pieces.csv", pieces);
    put("ratings.csv", ratings);
    put("photos.csv", photos);
  }

  private void poultry(
      StringBuilder runs, StringBuilder events, StringBuilder readings, String oven, int i, int r) {
    String run = oven + "-poultry-" + r;
    runs.append(run).append(',').append(oven).append(",poultry,").append(r).append(',');
    runs.append(oven).append("-1,day").append(r).append(",2026-03-0").append(r + 1);
    runs.append("T13:1").append(i).append(",,,\n");
    boolean capped = i == 3 && r > 1;
    int seconds = capped ? 5400 : 3000 + 420 * i + random.nextInt(150);
    events.append(run).append(",start,+0:00,,,,\n");
    events.append(run).append(",load,+0:10,1,,,\n");
    events.append(run).append(",stop,").append(clock(seconds + 10)).append(",1,");
    events.append(capped ? "cap" : "core").append(",,\n");
    readings.append(run).append(",core,").append(capped ? 70.5 : 76.4 + random.nextInt(5) / 10.0);
    readings.append(" °C,P3,").append(quoted(TASTER)).append('\n');
  }

  private static String clock(int seconds) {
    return "+" + seconds / 60 + ":" + (seconds % 60 < 10 ? "0" : "") + seconds % 60;
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  private void put(String file, CharSequence text) throws IOException {
    Files.writeString(folder.resolve(file), text);
  }

  /** A photograph with a note in its EXIF block that must not be published. */
  private void picture(String file, Color crust) throws IOException {
    BufferedImage image = new BufferedImage(1600, 1200, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setColor(new Color(95, 118, 128));
    graphics.fillRect(0, 0, 1600, 1200);
    graphics.setColor(crust);
    graphics.fillRoundRect(300, 200, 1000, 800, 120, 120);
    graphics.dispose();
    ByteArrayOutputStream plain = new ByteArrayOutputStream();
    ImageIO.write(image, "jpeg", plain);
    Files.write(folder.resolve(file), withNote(plain.toByteArray(), TASTER + " 53.34N 6.26W"));
  }

  /** Inserts an APP1 segment with an ImageDescription after the start of image. */
  static byte[] withNote(byte[] jpeg, String note) throws IOException {
    byte[] text = (note + "\0").getBytes(StandardCharsets.US_ASCII);
    ByteArrayOutputStream tiff = new ByteArrayOutputStream();
    tiff.writeBytes("Exif\0\0MM\0*".getBytes(StandardCharsets.ISO_8859_1));
    tiff.writeBytes(new byte[] {0, 0, 0, 8, 0, 1, 0x01, 0x0e, 0, 2});
    tiff.writeBytes(new byte[] {0, 0, 0, (byte) text.length, 0, 0, 0, 26, 0, 0, 0, 0});
    tiff.writeBytes(text);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.writeBytes(new byte[] {(byte) 0xff, (byte) 0xe1, 0, (byte) (tiff.size() + 2)});
    out.writeBytes(tiff.toByteArray());
    out.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  private static final String CAMPAIGN =
      """
      format: 1
      campaign: small-ovens
      title: Four countertop ovens
      kitchen: Quarry Street test kitchen
      zone: Europe/Dublin
      currency: EUR
      invented: yes
      disclosure: Three were bought at retail; Dunnock was lent by its maker, which saw nothing before publication.
      """;

  private static final String METHOD =
      """
      format: 1
      method: small-ovens
      title: Small ovens
      version: "1.1"
      population: Countertop ovens up to 1800 W
      why: Two foods that go wrong in different ways.
      facts:
        - {id: usable-volume, name: Usable volume, unit: L, how: rack plane area × clear height}
      rated:
        - id: controls
          name: Controls
          raters: 2
          steps: [Needs the manual for all, Needs it often, Needs it once, Clear after a minute, Clear at once]
      scoring: {combine: arithmetic, seed: 20260304, draws: 2000, decimals: 1}
      tests:
        - id: toast
          name: Toast
          why: The daily job.
          parts: 4
          sample: {food: White sandwich bread, pieces: 4, mass: 38 g ± 2 g, start: 21 °C ± 2 K}
          setting: {rule: as-user-would, mode: toast, dial: 230 °C}
          start: cold
          rack: middle
          batches: 1
          replicates: 3
          stops:
            - {when: ends-by-itself}
            - {when: cap, at: 12 min}
          photos: {faces: [top], pieces: 1}
          marks:
            - {id: crispness, name: Crispness, scale: 0 to 10, kind: intensity, anchors: {0: fresh bread, 10: plain cracker}}
          measures:
            - {id: time, take: time-to-stop}
            - {id: crispness, take: mark}
            - {id: loss, take: mass-loss}
          criteria:
            - {id: time, name: Time, parts: 1, measure: time, curve: {points: [[2 min, 10], [5 min, 6], [12 min, 0]]}}
            - {id: crispness, name: Crispness, parts: 2, measure: crispness, curve: {points: [[2 points, 0], [9 points, 10]]}}
        - id: poultry
          name: Turkey breast
          parts: 4
          sample: {food: Turkey breast joint, pieces: 1, mass: 900 g ± 40 g, start: 5 °C ± 1 K}
          setting: {rule: as-user-would, mode: roast, dial: 350 °F}
          start: preheated
          preheat: ten minutes at the dial setting
          batches: 1
          replicates: 3
          stops:
            - {when: core, at: 165 °F}
            - {when: cap, at: 90 min}
          measures:
            - {id: time, take: time-to-stop}
            - {id: core, take: reading, unit: °C}
          criteria:
            - {id: time, name: Time, parts: 1, measure: time, curve: {points: [[40 min, 10], [60 min, 6], [90 min, 0]]}}
          gates:
            - {id: core, name: Core, kind: flag, reason: safety, measure: core, at_least: 165 °F, scope: test}
          cautions: [Raw poultry; wash hands and boards]
        - id: use
          name: Use
          parts: 2
          replicates: 0
          measures:
            - {id: controls, take: rated}
            - {id: volume, take: fact, of: usable-volume}
          criteria:
            - {id: controls, name: Controls, parts: 1, measure: controls, curve: {rated: 4}}
            - {id: volume, name: Room, parts: 1, measure: volume, curve: {points: [[10 L, 0], [25 L, 10]]}}
      profiles:
        - {id: baker, name: Who bakes, parts: {toast: 2}}
      """;
}
