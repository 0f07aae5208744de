package ovenproof.record;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.Photo;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.evidence.EvidenceSource;
import ovenproof.files.CampaignFolder;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.input.Problems;
import ovenproof.measure.Measured;
import ovenproof.publish.edition.Edition;
import ovenproof.verdict.Verdict;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * What a maker or a reader may have in answer to an inquiry: one product's runs, readings, files
 * and scores as a bag, without any other product and without the name of anyone who tasted or
 * worked.
 *
 * <p>Photographs come without what was written beside their pixels, logs without names; a log that
 * another product shares stays out, and of a frame that shows other products' food only the own
 * pieces are handed out, cut out. {@code evidence.csv} lists each file with the fingerprint of the
 * original, so that either side can show later that it is the same.
 */
public final class EvidencePack {
  /** Lists the files of a pack; no other bag has it. */
  static final String LIST = "evidence.csv";

  private static final long LARGEST = 500L << 20;
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private final Edition edition;
  private final String product;
  private final Map<String, byte[]> contents = new LinkedHashMap<>();
  private final Map<String, String> renamed = new TreeMap<>();
  private final List<String[]> listed = new ArrayList<>();

  /**
   * @param product its key
   * @throws InputException if the campaign has no such product
   */
  public EvidencePack(Edition edition, String product) {
    this.edition = edition;
    this.product = product;
    if (edition.campaign().product(product).isEmpty()) {
      List<String> known =
          edition.campaign().products().stream().map(Campaign.Product::id).toList();
      throw new InputException(
          Problem.error(
              Place.of(product),
              "no such product",
              "a product of the campaign",
              ovenproof.input.NearestWord.remedy(product, known)));
    }
  }

  /**
   * Writes the pack; it appears whole or not at all.
   *
   * @param target a new folder, or a new file whose name ends in {@code .zip}
   * @throws InputException if something stands there, or a key holds a person's name
   */
  public Path write(Path target, LocalDate day) {
    Path place = target.toAbsolutePath().normalize();
    BagPlace.write(
        place,
        "the evidence pack",
        bag -> {
          Files.createDirectories(bag);
          fill(bag, day);
          return bag;
        });
    return place;
  }

  private void fill(Path bag, LocalDate day) throws IOException {
    Campaign whole = edition.campaign();
    Campaign own = own(whole);
    Anonymous names = names(whole, Map.of());
    collect(own, names);
    Map<String, byte[]> cuttings = cuttings(whole, own.runs(), names);
    names = names(whole, renamed);
    Campaign clean = clean(own, names);
    Path data = bag.resolve("data");
    CampaignFolder.withAllMeasures().save(clean, new Contents(contents), data);
    Path method = data.resolve("method.yaml");
    Files.writeString(method, names.text(Files.readString(method)));
    Files.createDirectories(data.resolve("published"));
    json(data.resolve("published/verdict.json"), Published.verdict(verdict()), names);
    json(data.resolve("published/measurements.json"), Published.measurements(measured()), names);
    Files.createDirectories(data.resolve(SharedFrames.FOLDER));
    for (Map.Entry<String, byte[]> cutting : cuttings.entrySet()) {
      Files.write(data.resolve(cutting.getKey()), cutting.getValue());
    }
    Files.writeString(data.resolve(LIST), evidenceList());
    refuseNames(data, names);
    Map<String, String> info = new LinkedHashMap<>();
    info.put("Source-Organization", whole.info().kitchen());
    info.put(
        "External-Description",
        "Evidence pack of one product, "
            + edition.name(product)
            + (edition.isInvented() ? " (invented)" : ""));
    info.put("Internal-Sender-Identifier", "verdict " + edition.verdict().version());
    info.put("Bagging-Date", day.toString());
    BagSeal.close(bag, info, Map.of());
  }

  private Anonymous names(Campaign whole, Map<String, String> files) {
    return new Anonymous(whole, List.of(product, edition.name(product)), files);
  }

  private static void json(Path file, tools.jackson.databind.JsonNode node, Anonymous names)
      throws IOException {
    Files.writeString(file, names.text(MAPPER.writeValueAsString(node)) + "\n");
  }

  // ---------- one product ----------

  private Campaign own(Campaign c) {
    Set<String> runs =
        c.runs().stream()
            .filter(r -> r.product().equals(product))
            .map(Run::id)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    List<TraceBinding> traces =
        c.traces().stream().filter(t -> isOwn(t, runs)).filter(t -> !isShared(c, t, runs)).toList();
    return new Campaign(
        c.info(),
        c.method(),
        c.products().stream().filter(p -> p.id().equals(product)).toList(),
        List.of(),
        c.specimens().stream().filter(s -> s.product().equals(product)).toList(),
        c.prices().stream().filter(p -> p.product().equals(product)).toList(),
        c.facts().stream().filter(f -> f.product().equals(product)).toList(),
        c.ratedSteps().stream().filter(r -> r.product().equals(product)).toList(),
        c.features().stream().filter(f -> f.product().equals(product)).toList(),
        c.settingCards().stream().filter(s -> s.product().equals(product)).toList(),
        c.plan().stream().filter(p -> p.product().equals(product)).toList(),
        c.runs().stream().filter(r -> runs.contains(r.id())).toList(),
        c.notRun().stream().filter(n -> n.product().equals(product)).toList(),
        c.events().stream().filter(e -> runs.contains(e.run())).toList(),
        c.deviations().stream().filter(d -> runs.contains(d.run())).toList(),
        c.readings().stream().filter(r -> runs.contains(r.run())).toList(),
        c.lots(),
        c.pieces().stream().filter(p -> runs.contains(p.run())).toList(),
        c.ratings().stream().filter(r -> runs.contains(r.run())).toList(),
        c.instruments(),
        c.calibrations(),
        traces,
        c.photos().stream()
            .filter(p -> runs.contains(p.run()))
            .filter(p -> !SharedFrames.isShared(c, p.file(), runs))
            .toList(),
        List.of());
  }

  /**
   * What is handed out of frames that show other products' food too: the product's own pieces, cut
   * out. The frame itself stays here; its fingerprint goes along.
   */
  private Map<String, byte[]> cuttings(Campaign whole, List<Run> own, Anonymous names) {
    Set<String> runs = own.stream().map(Run::id).collect(Collectors.toSet());
    SharedFrames frames = new SharedFrames(whole, edition.evidence(), runs);
    Map<String, byte[]> all = new LinkedHashMap<>();
    for (String file : frames.files()) {
      String shown = spaced(file, names) ? "frame-" + (listed.size() + 1) + ending(file) : file;
      String original = edition.evidence().fingerprint(file).orElse("");
      Map<String, byte[]> pieces = frames.pieces(file);
      if (pieces.isEmpty()) {
        listed.add(
            new String[] {shown, original, "", "left out: other products' food is in the frame"});
      }
      pieces.forEach(
          (name, png) -> {
            all.put(name, png);
            listed.add(
                new String[] {
                  name,
                  original,
                  sha256(png),
                  "a piece cut out: other products' food is in the frame"
                });
          });
    }
    return all;
  }

  private boolean isOwn(TraceBinding trace, Set<String> runs) {
    return trace.run() != null ? runs.contains(trace.run()) : product.equals(trace.product());
  }

  /** Whether another product, or nobody in particular, has a channel or a stretch of the file. */
  private boolean isShared(Campaign c, TraceBinding trace, Set<String> runs) {
    boolean shared =
        c.traces().stream().anyMatch(t -> t.file().equals(trace.file()) && !isOwn(t, runs));
    if (shared) {
      boolean telling = spaced(trace.file(), names(c, Map.of()));
      listed.add(
          new String[] {
            telling ? "a log" + ending(trace.file()) : trace.file(),
            edition.evidence().fingerprint(trace.file()).orElse(""),
            "",
            "left out: other products share it"
          });
    }
    return shared;
  }

  private Measured measured() {
    return new Measured(
        edition.measured().values().stream().filter(v -> v.product().equals(product)).toList(),
        List.of());
  }

  private Verdict verdict() {
    Verdict v = edition.verdict();
    return new Verdict(
        v.method(),
        v.version(),
        v.seed(),
        v.draws(),
        v.margin(),
        v.products().stream().filter(p -> p.id().equals(product)).toList(),
        List.of(),
        List.of());
  }

  // ---------- without names ----------

  /** Takes in every file that the product's records name, cleaned and, if need be, renamed. */
  private void collect(Campaign own, Anonymous names) throws IOException {
    Set<String> files =
        Stream.of(
                own.traces().stream().map(TraceBinding::file),
                own.photos().stream().map(Photo::file),
                own.facts().stream().map(FactValue::photo),
                own.ratedSteps().stream().map(RatedStep::photo))
            .flatMap(s -> s)
            .filter(Objects::nonNull)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    Set<String> seen = new HashSet<>();
    for (String file : files) {
      if (edition.evidence().size(file).isEmpty() || !seen.add(file)) {
        continue;
      }
      byte[] original = edition.evidence().bytes(file, LARGEST);
      refuseContainers(file, original);
      byte[] clean = clean(original, names);
      String name =
          spaced(file, names) ? "files/file-" + (renamed.size() + 1) + ending(file) : file;
      if (!name.equals(file)) {
        renamed.put(file, name);
      }
      contents.put(name, clean);
      String how =
          java.util.Arrays.equals(original, clean)
              ? "as it came in"
              : PictureMetadata.isPicture(original) ? "pixels only" : "names taken out";
      listed.add(
          new String[] {name, edition.evidence().fingerprint(file).orElse(""), sha256(clean), how});
    }
  }

  private static boolean spaced(String file, Anonymous names) {
    return names.mentions(file) || names.mentions(file.replaceAll("[-_.]+", " "));
  }

  private static String ending(String file) {
    int dot = file.lastIndexOf('.');
    return dot > file.lastIndexOf('/') ? file.substring(dot) : "";
  }

  /** HEIC, AVIF and films hold place and owner in boxes that are not taken apart here. */
  private static void refuseContainers(String file, byte[] bytes) {
    if (PictureMetadata.isContainer(bytes)) {
      throw new InputException(
          Problem.error(
              Place.of(file),
              "a HEIC picture or a film, out of which place and names cannot be taken",
              "JPEG, PNG or WebP in what is handed out",
              "export it as JPEG and name that in the table"));
    }
  }

  private static byte[] clean(byte[] bytes, Anonymous names) {
    if (PictureMetadata.isPicture(bytes)) {
      return PictureMetadata.without(bytes);
    }
    // Byte for character, so that nothing but the names is different afterwards.
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    String utf8 = utf8(bytes);
    if (utf8 != null) {
      return names.mentions(utf8) ? names.text(utf8).getBytes(StandardCharsets.UTF_8) : bytes;
    }
    return names.mentions(text) ? names.text(text).getBytes(StandardCharsets.ISO_8859_1) : bytes;
  }

  private static @Nullable String utf8(byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(java.nio.ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return null;
    }
  }

  private static String sha256(byte[] bytes) {
    return Fingerprints.of(bytes);
  }

  private Campaign clean(Campaign own, Anonymous names) {
    List<Campaign.Evidence> evidence =
        contents.entrySet().stream()
            .map(f -> new Campaign.Evidence(f.getKey(), sha256(f.getValue()), f.getValue().length))
            .toList();
    return new Campaign(
        names.one(own.info()),
        own.method(),
        names.all(own.products()),
        own.leftOut(),
        names.all(own.specimens()),
        names.all(own.prices()),
        names.all(own.facts()),
        names.all(own.ratedSteps()),
        names.all(own.features()),
        names.all(own.settingCards()),
        own.plan(),
        names.all(own.runs()),
        names.all(own.notRun()),
        names.all(own.events()),
        names.all(own.deviations()),
        names.all(own.readings()),
        names.all(own.lots()),
        own.pieces(),
        names.all(own.ratings()),
        names.all(own.instruments()),
        names.all(own.calibrations()),
        names.all(own.traces()),
        names.all(own.photos()),
        evidence);
  }

  private String evidenceList() {
    StringBuilder text = new StringBuilder("file,sha256_original,sha256_here,how\n");
    listed.stream()
        .map(row -> String.join(",", Stream.of(row).map(EvidencePack::cell).toList()))
        .distinct()
        .forEach(row -> text.append(row).append('\n'));
    return text.toString();
  }

  private static String cell(String text) {
    return text.matches("[^,\"\r\n]*") ? text : '"' + text.replace("\"", "\"\"") + '"';
  }

  /** Keys are people's own words: one that holds a name cannot be handed out. */
  private void refuseNames(Path data, Anonymous names) throws IOException {
    Problems problems = new Problems();
    try (Stream<Path> walk = Files.walk(data)) {
      for (Path file : walk.filter(Files::isRegularFile).sorted().toList()) {
        String name = data.relativize(file).toString().replace('\\', '/');
        String text = utf8(Files.readAllBytes(file));
        if (names.mentions(name) || text != null && names.mentions(text)) {
          problems.error(
              Place.of(name),
              "the name of a person or of another product, as part of a key",
              "keys without such names",
              "nothing was written; rename that key in the campaign first");
        }
      }
    }
    problems.throwIfErrors();
  }

  /** Cleaned files in memory. */
  private record Contents(Map<String, byte[]> files) implements EvidenceSource {
    private byte[] get(String path) {
      byte[] bytes = files.get(path);
      if (bytes == null) {
        throw new InputException(Problem.error(Place.of(path), "nothing", "a file", ""));
      }
      return bytes;
    }

    @Override
    public InputStream open(String path) {
      return new ByteArrayInputStream(get(path));
    }

    @Override
    public Optional<String> fingerprint(String path) {
      return Optional.ofNullable(files.get(path)).map(EvidencePack::sha256);
    }

    @Override
    public Optional<Long> size(String path) {
      return Optional.ofNullable(files.get(path)).map(b -> (long) b.length);
    }

    @Override
    public byte[] bytes(String path, long limit) {
      return get(path);
    }
  }
}
