package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.CookieManager;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.campaign.FeatureState;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;

/**
 * Sent twice, sent again after going back, from two tabs, too large, cut off, wrongly written:
 * forms keep what was typed, say what is wrong beside the field, and lose nothing.
 */
class FormBadInputTest {
  @TempDir Path folder;

  private HttpClient client = HttpClient.newHttpClient();
  private int port;

  private HttpResponse<String> get(String path) throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create("http://localhost:" + port + path)).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private HttpResponse<String> post(String path, String... pairs) throws Exception {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("_csrf", RoutesTest.value(get("/start").body(), "_csrf"));
    for (int i = 0; i < pairs.length; i += 2) {
      form.put(pairs[i], pairs[i + 1]);
    }
    String body =
        form.entrySet().stream()
            .map(
                e ->
                    URLEncoder.encode(e.getKey(), StandardCharsets.UTF_8)
                        + "="
                        + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
    return client.send(
        HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void nothingIsLostAndNothingIsDoneTwice(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder);
        WebServer server = WebServer.start(desk, 0)) {
      port = server.port();
      client =
          HttpClient.newBuilder()
              .cookieHandler(new CookieManager())
              .followRedirects(HttpClient.Redirect.NORMAL)
              .build();
      String run =
          post(
                  "/start",
                  "key",
                  "start-key-1",
                  "oven",
                  "Öfchen",
                  "test",
                  "toasters/medium",
                  "dial",
                  "shade 4")
              .uri()
              .getPath();
      String home = run.replaceAll("/runs/.*", "");
      String cid = home.substring(3);
      piecesAreWeighedBeforeAndAfter(desk, run, cid);
      aFormFilledAnewAfterGoingBackIsAnotherOne(desk, run, cid);
      aWrongQuantityIsSaidBesideItsField(desk, run, cid);
      ofTwoTabsTheSecondSeesBoth(desk, home, cid);
      aSettingCardIsKeptOnce(desk, home, cid);
      aFeatureIsSaidForAllProductsAndCorrected(desk, home, cid);
      aFactSaidAgainReplacesWhatWasSaid(desk, home, cid);
      whatIsNotRunNeedsItsReason(desk, home, cid);
      twoGigabytesAreRefusedBeforeTheyAreSent(desk, run, cid);
      aBrowserClosedInTheMiddleLeavesNothing(desk, run, cid);
    }
  }

  private void piecesAreWeighedBeforeAndAfter(Desk desk, String run, String cid) throws Exception {
    post(run + "/pieces", "key", "piece-key-1", "piece", "s1", "before", "38.2 g");
    post(run + "/pieces", "key", "piece-key-2", "piece", "s1", "after", "33,1 g");
    assertThat(desk.load(cid).pieces()).hasSize(1);
    var piece = desk.load(cid).pieces().get(0);
    assertThat(String.valueOf(piece.before())).isEqualTo("38.2 g");
    assertThat(String.valueOf(piece.after())).isEqualTo("33.1 g");
  }

  private void aFormFilledAnewAfterGoingBackIsAnotherOne(Desk desk, String run, String cid)
      throws Exception {
    int before = desk.load(cid).events().size();
    for (int i = 0; i < 2; i++) {
      post(run + "/events", "key", "event-key-1", "type", "turn", "at", "2 min");
    }
    assertThat(desk.load(cid).events()).as("sent twice").hasSize(before + 1);
    post(run + "/events", "key", "event-key-1", "type", "shake", "at", "3 min");
    assertThat(desk.load(cid).events()).as("after going back").hasSize(before + 2);
  }

  private void aWrongQuantityIsSaidBesideItsField(Desk desk, String run, String cid)
      throws Exception {
    int before = desk.entries(cid).size();
    var answer = post(run + "/pieces", "key", "piece-key-3", "piece", "שלום", "before", "2o0 °C");
    assertThat(answer.body()).contains("before-error").contains("2o0 °C").contains("שלום");
    assertThat(desk.entries(cid)).hasSize(before);
  }

  private void ofTwoTabsTheSecondSeesBoth(Desk desk, String home, String cid) throws Exception {
    String product = home + "/products/" + desk.field(cid).products().get(0).id();
    long revision = desk.document(cid, Document.FIELD).revision();
    String filled = String.valueOf(revision);
    post(product, "revision", filled, "name", "Öfchen", "maker", "Theirs (invented)");
    var mine = post(product, "revision", filled, "name", "Öfchen", "maker", "Mine (invented)");
    assertThat(mine.body())
        .contains("Saved meanwhile by the lead")
        .contains("Theirs (invented)")
        .contains("Mine (invented)");
    assertThat(desk.field(cid).products().get(0).maker()).isEqualTo("Theirs (invented)");
    String newest = RoutesTest.value(mine.body(), "revision");
    post(product, "revision", newest, "name", "Öfchen", "maker", "Mine (invented)");
    assertThat(desk.field(cid).products().get(0).maker()).isEqualTo("Mine (invented)");
    post(home + "/products", "revision", filled, "name", "Another");
    assertThat(desk.field(cid).products()).as("adding cannot undo what others did").hasSize(2);
    assertThat(post(home + "/products", "revision", filled, "name", "x".repeat(301)).body())
        .contains("301 characters");
  }

  private void aSettingCardIsKeptOnce(Desk desk, String home, String cid) throws Exception {
    String product = desk.field(cid).products().get(1).id();
    String card = home + "/settings/" + product + "/medium";
    String revision = RoutesTest.value(get(card).body(), "revision");
    String variant = RoutesTest.value(get(card).body(), "variant");
    assertThat(post(card, "revision", revision, "variant", variant, "dial", "230").body())
        .contains("230 what?");
    for (int i = 0; i < 2; i++) {
      post(card, "revision", revision, "variant", variant, "dial", "230 °C", "rack", "middle");
    }
    assertThat(desk.field(cid).settingCards().stream().filter(s -> s.product().equals(product)))
        .hasSize(1);
  }

  private void aFeatureIsSaidForAllProductsAndCorrected(Desk desk, String home, String cid)
      throws Exception {
    String page = home + "/features";
    String first = desk.field(cid).products().get(0).id();
    String second = desk.field(cid).products().get(1).id();
    assertThat(get(page).body()).contains("7 features on the checklist");
    assertThat(post(page, "feature", "Warm light").body()).contains("Nothing is chosen yet");
    assertThat(post(page, "feature", "Warm light", "state-" + first, "PERHAPS").body())
        .contains("Choose yes, no or not applicable")
        .contains("Warm light");
    assertThat(post(page, "feature", "", "state-" + first, "YES", "note-" + first, "נורה").body())
        .contains("feature-error")
        .contains("נורה");
    assertThat(desk.load(cid).features()).isEmpty();
    for (int i = 0; i < 2; i++) {
      post(page, "feature", "Warm light", "state-" + first, "YES", "state-" + second, "NO");
    }
    assertThat(desk.load(cid).features()).as("sent twice").hasSize(2);
    var late = post(page, "feature", "warm LIGHT", "state-" + first, "NO");
    assertThat(late.body()).as("said by another tab meanwhile").contains("Said already: yes");
    String was = RoutesTest.value(late.body(), "was-" + first);
    post(page, "feature", "warm LIGHT", "state-" + first, "NO", "was-" + first, was);
    assertThat(desk.load(cid).features()).hasSize(3);
    FeatureChecklist checklist = FeatureChecklist.of(desk.load(cid));
    assertThat(checklist.features()).hasSize(8).endsWith("Warm light");
    assertThat(checklist.state(first, "Warm light").orElseThrow().state())
        .isEqualTo(FeatureState.State.NO);
    assertThat(get(page + "?feature=Warm%20light").body())
        .contains("aria-label=\"State, ")
        .contains("8 features on the checklist");
    assertThat(get(home + "/products").body()).contains("1 of 8 features looked at");
  }

  private void aFactSaidAgainReplacesWhatWasSaid(Desk desk, String home, String cid)
      throws Exception {
    String page = home + "/products/" + desk.field(cid).products().get(0).id() + "/facts";
    String[] said = {"key", "fact-key-1", "fact", "slot-length", "nameplate", "130 mm"};
    String[] measured = {"key", "fact-key-2", "fact", "slot-length", "measured", "126 mm"};
    for (int i = 0; i < 2; i++) {
      post(page, said);
    }
    for (int i = 0; i < 2; i++) {
      post(page, measured);
    }
    assertThat(desk.load(cid).facts()).as("each sent twice").hasSize(2);
    var held = Entry.effective(desk.load(cid).facts());
    assertThat(held).as("the second corrects the first").hasSize(1);
    assertThat(String.valueOf(held.get(0).nameplate())).isEqualTo("130 mm");
    assertThat(String.valueOf(held.get(0).measured())).isEqualTo("126 mm");
  }

  private void whatIsNotRunNeedsItsReason(Desk desk, String home, String cid) throws Exception {
    String product = desk.field(cid).products().get(1).id();
    String variant = desk.load(cid).method().test("frozen").orElseThrow().scoredVariant().id();
    var silent =
        post(home + "/not-run", "of", product, "which", "frozen/" + variant, "state", "CANNOT_DO");
    assertThat(silent.body()).contains("reason-error");
    post(
        home + "/not-run",
        "of",
        product,
        "which",
        "frozen/" + variant,
        "state",
        "CANNOT_DO",
        "reason",
        "no such mode");
    assertThat(desk.field(cid).notRun()).hasSize(1);
    post(home + "/plan/all");
    assertThat(desk.field(cid).plan())
        .isNotEmpty()
        .noneMatch(p -> p.product().equals(product) && p.test().equals("frozen"));
  }

  private void twoGigabytesAreRefusedBeforeTheyAreSent(Desk desk, String run, String cid)
      throws Exception {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      socket
          .getOutputStream()
          .write(
              ("POST "
                      + run
                      + "/files HTTP/1.1\r\nHost: localhost\r\nContent-Type: multipart/form-data;"
                      + " boundary=x\r\nContent-Length: 2147483648\r\nConnection: close\r\n\r\n")
                  .getBytes(StandardCharsets.US_ASCII));
      socket.shutdownOutput();
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(answer).startsWith("HTTP/1.1 413").contains("More than 500 MB were sent at once");
    }
    assertThat(desk.attachments(cid)).isEmpty();
  }

  private void aBrowserClosedInTheMiddleLeavesNothing(Desk desk, String run, String cid)
      throws Exception {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      socket
          .getOutputStream()
          .write(
              ("POST "
                      + run
                      + "/files HTTP/1.1\r\nHost: localhost\r\nContent-Type: multipart/form-data;"
                      + " boundary=x\r\nContent-Length: 100000\r\n\r\n--x\r\nContent-Disposition:"
                      + " form-data; name=\"files\"; filename=\"half.jpg\"\r\n\r\nhalf")
                  .getBytes(StandardCharsets.US_ASCII));
    }
    assertThat(get(run).statusCode()).isEqualTo(200);
    assertThat(desk.attachments(cid)).isEmpty();
  }
}
