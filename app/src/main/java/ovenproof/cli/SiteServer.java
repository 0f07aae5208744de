package ovenproof.cli;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.input.OutsideException;

/**
 * Shows a published site on this machine only, until the program is stopped. Reads, never writes.
 */
final class SiteServer {
  private static final Map<String, String> TYPES =
      Map.of(
          "html", "text/html; charset=utf-8",
          "css", "text/css; charset=utf-8",
          "svg", "image/svg+xml",
          "png", "image/png",
          "jpg", "image/jpeg",
          "csv", "text/csv; charset=utf-8",
          "json", "application/json",
          "vtt", "text/vtt; charset=utf-8",
          "woff2", "font/woff2",
          "txt", "text/plain; charset=utf-8");

  private final Path site;

  private SiteServer(Path site) {
    this.site = site.toAbsolutePath().normalize();
  }

  /**
   * The port that is asked for, or the usual one, or any when another program holds the usual one.
   *
   * @throws OutsideException if the one that is asked for is held
   */
  static int port(@Nullable Integer asked, int usual, String option) {
    int wanted = asked == null ? usual : asked;
    try (ServerSocket free = new ServerSocket(wanted, 1, InetAddress.getLoopbackAddress())) {
      return wanted;
    } catch (IOException held) {
      if (asked == null) {
        return 0;
      }
      throw new OutsideException(
          "port " + asked + " is taken; choose another with " + option + ", or 0 for a free one",
          held);
    }
  }

  /** Serves on the loopback address; port 0 takes any free one. */
  static HttpServer start(Path site, int port) {
    try {
      HttpServer server =
          HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 0);
      server.createContext("/", new SiteServer(site)::answer);
      server.start();
      return server;
    } catch (IOException e) {
      throw new OutsideException(
          "cannot serve on port " + port + ": " + e.getMessage() + "; choose another with --port",
          e);
    }
  }

  private void answer(HttpExchange exchange) throws IOException {
    try (exchange) {
      if (!isLocal(exchange) || !exchange.getRequestMethod().matches("GET|HEAD")) {
        send(
            exchange,
            403,
            "text/plain; charset=utf-8",
            "Only this machine may read.\n".getBytes(StandardCharsets.UTF_8));
        return;
      }
      String path = exchange.getRequestURI().getPath();
      Path file = site.resolve(path.substring(1)).normalize();
      if (Files.isDirectory(file)) {
        file = file.resolve("index.html");
      }
      if (!file.startsWith(site) || !Files.isRegularFile(file)) {
        byte[] words =
            "There is no such page. The review begins at /\n".getBytes(StandardCharsets.UTF_8);
        send(exchange, 404, "text/plain; charset=utf-8", words);
        return;
      }
      send(exchange, 200, type(file), Files.readAllBytes(file));
    }
  }

  /** A page of another site must not read this one through a name that points here. */
  private static boolean isLocal(HttpExchange exchange) {
    String host = exchange.getRequestHeaders().getFirst("Host");
    return host != null && host.matches("(?i)(localhost|127\\.0\\.0\\.1|\\[::1])(:\\d+)?");
  }

  private static String type(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    return TYPES.getOrDefault(
        name.substring(name.lastIndexOf('.') + 1), "application/octet-stream");
  }

  private static void send(HttpExchange exchange, int status, String type, byte[] body)
      throws IOException {
    exchange.getResponseHeaders().set("Content-Type", type);
    exchange.getResponseHeaders().set("X-Content-Type-Options", "nosniff");
    boolean head = exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(status, head || body.length == 0 ? -1 : body.length);
    if (!head && body.length > 0) {
      try (OutputStream stream = exchange.getResponseBody()) {
        stream.write(body);
      }
    }
  }
}
