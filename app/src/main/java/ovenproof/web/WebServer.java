package ovenproof.web;

import java.util.Map;
import org.springframework.boot.Banner;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;
import ovenproof.desk.Desk;
import ovenproof.input.OutsideException;

/** The running web application of one desk. */
public final class WebServer implements AutoCloseable {
  private final ConfigurableApplicationContext context;

  private WebServer(ConfigurableApplicationContext context) {
    this.context = context;
  }

  /**
   * Starts on this machine only.
   *
   * @param port 0 for a free one
   * @throws OutsideException if the port is taken
   */
  public static WebServer start(Desk desk, int port) {
    try {
      return new WebServer(
          new SpringApplicationBuilder(WebConfiguration.class)
              .web(WebApplicationType.SERVLET)
              .bannerMode(Banner.Mode.OFF)
              .logStartupInfo(false)
              .registerShutdownHook(false)
              .initializers(
                  context ->
                      ((GenericApplicationContext) context)
                          .registerBean(
                              Desk.class,
                              () -> desk,
                              definition -> {
                                definition.setDestroyMethodName(null);
                              }))
              .properties(properties(desk, port))
              .run());
    } catch (RuntimeException failure) {
      if (failure.getClass().getSimpleName().equals("PortInUseException")) {
        throw new OutsideException(
            "port " + port + " is taken; choose another with --port, or 0 for a free one", failure);
      }
      throw failure;
    }
  }

  private static Map<String, Object> properties(Desk desk, int port) {
    return Map.ofEntries(
        Map.entry("server.address", "127.0.0.1"),
        Map.entry("server.port", port),
        Map.entry("server.shutdown", "immediate"),
        Map.entry("server.tomcat.basedir", desk.location().folder().resolve("tomcat").toString()),
        Map.entry("server.tomcat.max-http-form-post-size", "2MB"),
        Map.entry("server.tomcat.max-parameter-count", "5000"),
        Map.entry("server.tomcat.max-part-count", "200"),
        Map.entry("server.tomcat.max-swallow-size", "8MB"),
        Map.entry("server.servlet.session.cookie.same-site", "strict"),
        Map.entry("spring.servlet.multipart.max-file-size", "500MB"),
        Map.entry("spring.servlet.multipart.max-request-size", "501MB"),
        Map.entry("spring.servlet.multipart.file-size-threshold", "1MB"),
        Map.entry("server.compression.enabled", "true"),
        Map.entry("spring.web.resources.cache.cachecontrol.max-age", "1h"),
        Map.entry("spring.web.error.whitelabel.enabled", "false"),
        Map.entry("spring.main.lazy-initialization", "true"),
        Map.entry("logging.level.root", "WARN"));
  }

  public int port() {
    return Integer.parseInt(
        String.valueOf(context.getEnvironment().getProperty("local.server.port")));
  }

  /** Beans, for the tests of this package. */
  ConfigurableApplicationContext context() {
    return context;
  }

  @Override
  public void close() {
    context.close();
  }
}
