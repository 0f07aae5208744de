package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.config.BeanDefinition;
import org.springframework.context.annotation.ClassPathScanningCandidateComponentProvider;
import org.springframework.core.type.filter.AnnotationTypeFilter;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;

/** The web application over HTTP, without a browser, on both databases. */
class RoutesTest {
  @TempDir Path folder;

  private record Session(HttpClient client, int port) {
    HttpResponse<String> get(String path) throws Exception {
      return client.send(
          HttpRequest.newBuilder(URI.create("http://localhost:" + port + path)).build(),
          HttpResponse.BodyHandlers.ofString());
    }

    HttpResponse<String> post(String path, Map<String, String> form) throws Exception {
      String body =
          form.entrySet().stream()
              .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
              .collect(Collectors.joining("&"));
      return client.send(
          HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
              .header("Content-Type", "application/x-www-form-urlencoded")
              .POST(HttpRequest.BodyPublishers.ofString(body))
              .build(),
          HttpResponse.BodyHandlers.ofString());
    }

    String token() throws Exception {
      return value(get("/start").body(), "_csrf");
    }
  }

  private static Session session(WebServer server) {
    return new Session(
        HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build(),
        server.port());
  }

  static String value(String html, String name) {
    Matcher matcher = Pattern.compile("name=\"" + name + "\"[^>]*value=\"([^\"]*)\"").matcher(html);
    assertThat(matcher.find()).as("a field " + name).isTrue();
    return matcher.group(1);
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void theFrontDoorIsShutToWhoDoesNotBelong(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder);
        WebServer server = WebServer.start(desk, 0)) {
      Session session = session(server);
      everyRouteSaysWhomItServes(server);
      foreignNamesAreRefused(server);
      aFormWithoutItsTokenChangesNothing(session, desk);
      scriptsComeFromHereOnly(session);
      aBackLinkNeverLeadsAway(session);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void anEmptyCampaignIsMadeOnceHoweverOftenItIsSent(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder);
        WebServer server = WebServer.start(desk, 0)) {
      Session session = session(server);
      Map<String, String> form =
          Map.of(
              "_csrf", session.token(),
              "key", "new-campaign-key",
              "title", "פרזנטור אפייה, אביב",
              "starter", "toasters",
              "zone", "Europe/Dublin");
      Map<String, String> wrong = new java.util.HashMap<>(form);
      wrong.putAll(Map.of("zone", "Dublin", "starter", "none", "currency", "euro"));
      assertThat(session.post("/new", wrong).body())
          .contains("zone-error", "currency-error", "Choose one of the methods", "פרזנטור");
      assertThat(desk.campaigns()).isEmpty();
      assertThat(session.post("/new", form).statusCode()).isEqualTo(200);
      assertThat(session.post("/new", form).statusCode()).isEqualTo(200);
      assertThat(desk.campaigns()).hasSize(1);
      var made = desk.load(desk.campaigns().get(0).id());
      assertThat(made.info().zone().getId()).isEqualTo("Europe/Dublin");
      assertThat(made.method().tests()).isNotEmpty();
      assertThat(made.products()).isEmpty();
      for (String page :
          List.of(
              "",
              "/products",
              "/settings",
              "/plan",
              "/bench",
              "/sort",
              "/traces",
              "/photos",
              "/panel",
              "/verdict",
              "/verdict/questions",
              "/record")) {
        assertThat(session.get("/c/" + desk.campaigns().get(0).id() + page).statusCode())
            .as(page)
            .isEqualTo(200);
      }
    }
  }

  private static void everyRouteSaysWhomItServes(WebServer server) {
    var routes =
        server
            .context()
            .getBean("requestMappingHandlerMapping", RequestMappingHandlerMapping.class)
            .getHandlerMethods();
    List<String> silent =
        routes.entrySet().stream()
            .filter(r -> r.getValue().getBeanType().getName().startsWith("ovenproof."))
            .filter(r -> !r.getValue().hasMethodAnnotation(MayUse.class))
            .map(r -> r.getKey().toString())
            .toList();
    assertThat(routes).hasSizeGreaterThan(25);
    assertThat(silent).as("routes that do not say who may use them").isEmpty();
    var scan = new ClassPathScanningCandidateComponentProvider(false);
    scan.addIncludeFilter(new AnnotationTypeFilter(Controller.class));
    scan.addIncludeFilter(new AnnotationTypeFilter(ControllerAdvice.class));
    assertThat(Controllers.all().stream().map(Class::getName))
        .as("controllers.txt names every controller there is")
        .containsExactlyInAnyOrderElementsOf(
            scan.findCandidateComponents("ovenproof").stream()
                .map(BeanDefinition::getBeanClassName)
                .toList());
  }

  private static void foreignNamesAreRefused(WebServer server) throws Exception {
    try (var socket = new java.net.Socket("127.0.0.1", server.port())) {
      socket
          .getOutputStream()
          .write("GET / HTTP/1.1\r\nHost: kitchen.example\r\nConnection: close\r\n\r\n".getBytes());
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(answer).startsWith("HTTP/1.1 421");
    }
  }

  private static void aFormWithoutItsTokenChangesNothing(Session session, Desk desk)
      throws Exception {
    var answer = session.post("/start", Map.of("oven", "Alder", "key", "no-token-key"));
    assertThat(answer.statusCode()).isEqualTo(403);
    assertThat(answer.body()).contains("Nothing was changed").contains("Reload the page");
    assertThat(desk.campaigns()).isEmpty();
  }

  private static void scriptsComeFromHereOnly(Session session) throws Exception {
    var answer = session.get("/");
    assertThat(answer.headers().firstValue("Content-Security-Policy").orElse(""))
        .contains("default-src 'self'")
        .contains("frame-ancestors 'none'")
        .doesNotContain("unsafe");
    assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
    assertThat(answer.body()).doesNotContain(" style=").doesNotContain(" onclick=");
  }

  private static void aBackLinkNeverLeadsAway(Session session) throws Exception {
    var answer =
        session.post(
            "/who",
            Map.of("_csrf", session.token(), "who", "COOK", "back", "//elsewhere.example/"));
    assertThat(answer.uri().getHost()).isEqualTo("localhost");
    assertThat(session.get("/").body()).contains("selected=\"selected\">cook");
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void wrongFormsComeBackWithEverythingThatWasTyped(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder);
        WebServer server = WebServer.start(desk, 0)) {
      Session session = session(server);
      String name = "Öfchen שלום <b>&" + "x".repeat(300);
      String form = session.get("/start").body();
      String key = value(form, "key");
      String test = first(form, "option value=\"(toasters/[^\"]*)\"");
      var bare =
          session.post(
              "/start",
              Map.of(
                  "_csrf",
                  value(form, "_csrf"),
                  "key",
                  key,
                  "oven",
                  name,
                  "test",
                  test,
                  "dial",
                  "230"));
      assertThat(bare.body())
          .contains("230 what?")
          .contains("x".repeat(300))
          .doesNotContain("<b>&x");
      assertThat(value(bare.body(), "key")).isEqualTo(key);
      assertThat(desk.campaigns()).isEmpty();

      Map<String, String> right =
          Map.of(
              "_csrf",
              value(form, "_csrf"),
              "key",
              key,
              "oven",
              name,
              "test",
              test,
              "dial",
              "shade 4");
      var once = session.post("/start", right);
      assertThat(once.statusCode()).isEqualTo(200);
      var twice = session.post("/start", right);
      assertThat(twice.uri()).as("the same form sent twice").isEqualTo(once.uri());
      assertThat(desk.campaigns()).hasSize(1);
      String cid = desk.campaigns().get(0).id();
      assertThat(desk.load(cid).runs()).hasSize(1);
      wrongTimeIsSaidBesideItsField(session, desk, once.uri().getPath(), cid);
      aBrokenMethodIsShownAtItsLine(session, desk, cid);
      ofTwoTabsTheSecondSeesBoth(session, desk, cid);
      aThousandProductsStayReadable(session, desk, cid);
    }
  }

  private static String first(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    assertThat(matcher.find()).as(pattern).isTrue();
    return matcher.group(1);
  }

  private static void wrongTimeIsSaidBesideItsField(
      Session session, Desk desk, String run, String cid) throws Exception {
    int before = desk.entries(cid).size();
    var answer =
        session.post(
            run + "/events",
            Map.of(
                "_csrf",
                session.token(),
                "key",
                "an-event-key",
                "type",
                "stop",
                "ended",
                "time",
                "at",
                "2o0 °C"));
    assertThat(answer.body())
        .contains("aria-invalid=\"true\"")
        .contains("2o0 °C")
        .contains("at-error");
    assertThat(desk.entries(cid)).hasSize(before);
    var right =
        session.post(
            run + "/events",
            Map.of(
                "_csrf",
                session.token(),
                "key",
                "an-event-key",
                "type",
                "stop",
                "ended",
                "ends-by-itself",
                "at",
                "4 min 30 s"));
    assertThat(right.body()).contains("4:30");
    assertThat(desk.entries(cid)).hasSize(before + 1);
  }

  private static void aBrokenMethodIsShownAtItsLine(Session session, Desk desk, String cid)
      throws Exception {
    String page = session.get("/c/" + cid + "/method").body();
    String text = desk.document(cid, "method").body();
    String broken = text.replaceFirst("parts: \\d+", "parts: many");
    int line = broken.substring(0, broken.indexOf("parts: many")).split("\n", -1).length;
    var answer =
        session.post(
            "/c/" + cid + "/method",
            Map.of("_csrf", value(page, "_csrf"), "revision", "1", "text", broken, "do", "keep"));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("Line " + line).contains("parts: many");
    assertThat(desk.document(cid, "method").revision()).isEqualTo(1);
  }

  private static void ofTwoTabsTheSecondSeesBoth(Session session, Desk desk, String cid)
      throws Exception {
    String text = desk.document(cid, "method").body();
    String version = first(text, "version: *\"?([^\"\n]*)");
    String theirs = text.replaceFirst("(version: *\"?)" + Pattern.quote(version), "$1" + "77");
    desk.saveMethod(cid, 1, theirs, "cook", "meanwhile");
    String mine = text.replaceFirst("(version: *\"?)" + Pattern.quote(version), "$1" + "88");
    var answer =
        session.post(
            "/c/" + cid + "/method",
            Map.of(
                "_csrf",
                session.token(),
                "revision",
                "1",
                "text",
                mine,
                "why",
                "mine",
                "do",
                "keep"));
    assertThat(answer.statusCode()).isEqualTo(409);
    assertThat(answer.body()).contains("Saved meanwhile by the cook").contains("77").contains("88");
    assertThat(desk.document(cid, "method").body()).isEqualTo(theirs);
  }

  private static void aThousandProductsStayReadable(Session session, Desk desk, String cid)
      throws Exception {
    var field = desk.field(cid);
    var many = new java.util.ArrayList<>(field.products());
    for (int i = 0; i < 1000; i++) {
      many.add(new ovenproof.campaign.Campaign.Product("p" + i, "Product " + i, null, null, null));
    }
    desk.saveField(
        cid, desk.document(cid, "field").revision(), field.withProducts(many), "lead", "many");
    String home = "/c/" + cid;
    assertThat(session.get(home + "/products?from=1000").body()).contains("Product 999");
    for (String page :
        List.of("", "/products", "/features", "/settings", "/plan", "/bench", "/labels")) {
      assertThat(session.get(home + page).body().length())
          .as("bytes of " + page + " (the limit is the one said for pages before pictures)")
          .isLessThan(200_000);
    }
    String found = session.get(home + "/settings?find=product%20777").body();
    assertThat(found).contains("Product 777").doesNotContain("Product 778");
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void errorPagesSayTheNextStep(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder);
        WebServer server = WebServer.start(desk, 0)) {
      Session session = session(server);
      for (String path : List.of("/nothing", "/c/none", "/c/none/verdict", "/jobs/none")) {
        var answer = session.get(path);
        assertThat(answer.statusCode()).as(path).isEqualTo(404);
        assertThat(answer.body()).contains("Home").doesNotContain("Exception");
      }
    }
  }
}
