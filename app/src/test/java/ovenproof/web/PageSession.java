package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A browser without a screen: follows redirects, keeps cookies, sends forms with their token. */
public final class PageSession {
  private static final String BOUNDARY = "----between-two-fields";
  private final HttpClient client =
      HttpClient.newBuilder()
          .cookieHandler(new CookieManager())
          .followRedirects(HttpClient.Redirect.NORMAL)
          .build();
  private final int port;

  public PageSession(int port) {
    this.port = port;
  }

  public HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(URI.create("http://localhost:" + port + path)).build(),
        HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
  }

  public HttpResponse<byte[]> bytes(String path) throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(URI.create("http://localhost:" + port + path)).build(),
        HttpResponse.BodyHandlers.ofByteArray());
  }

  /** Sends fields and files by name; the token is fetched first. */
  public HttpResponse<String> post(String path, Map<String, String> form, Map<String, byte[]> files)
      throws IOException, InterruptedException {
    Map<String, String> fields = new LinkedHashMap<>(form);
    fields.put("_csrf", value(get("/start").body(), "_csrf"));
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    for (var field : fields.entrySet()) {
      part(
          body,
          "name=\"" + field.getKey() + "\"",
          field.getValue().getBytes(StandardCharsets.UTF_8));
    }
    for (var file : files.entrySet()) {
      part(body, "name=\"files\"; filename=\"" + file.getKey() + "\"", file.getValue());
    }
    body.write(("--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.UTF_8));
    return client.send(
        HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
            .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray()))
            .build(),
        HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
  }

  private static void part(ByteArrayOutputStream body, String what, byte[] bytes)
      throws IOException {
    body.write(
        ("--" + BOUNDARY + "\r\nContent-Disposition: form-data; " + what + "\r\n\r\n")
            .getBytes(StandardCharsets.UTF_8));
    body.write(bytes);
    body.write("\r\n".getBytes(StandardCharsets.UTF_8));
  }

  /** The value of a form's field on a page. */
  public static String value(String html, String name) {
    Matcher matcher = Pattern.compile("name=\"" + name + "\"[^>]*value=\"([^\"]*)\"").matcher(html);
    assertThat(matcher.find()).as("a field " + name).isTrue();
    return matcher.group(1);
  }
}
