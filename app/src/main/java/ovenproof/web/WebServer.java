package ovenproof.web;

import java.util.Objects;
import java.util.logging.Level;
import java.util.logging.LogManager;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;
import org.slf4j.bridge.SLF4JBridgeHandler;
import org.springframework.boot.LazyInitializationBeanFactoryPostProcessor;
import org.springframework.boot.web.server.PortInUseException;
import org.springframework.boot.web.server.servlet.context.AnnotationConfigServletWebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import ovenproof.desk.Desk;
import ovenproof.input.OutsideException;

/** The running web application of one desk. */
public final class WebServer implements AutoCloseable {
  /** Threads that outlive the server are no leak here: the program ends with it. */
  private static final Logger LEAKS =
      Logger.getLogger("org.apache.catalina.loader.WebappClassLoaderBase");

  private final AnnotationConfigServletWebServerApplicationContext context;

  private WebServer(AnnotationConfigServletWebServerApplicationContext context) {
    this.context = context;
  }

  /**
   * Starts on this machine only.
   *
   * @param port 0 for a free one
   * @throws OutsideException if the port is taken
   */
  public static WebServer start(Desk desk, int port) {
    logThroughOurs();
    Workbench workbench = new Workbench(desk);
    workbench.warm();
    var context = new AnnotationConfigServletWebServerApplicationContext();
    context.registerBean(Desk.class, () -> desk, bean -> bean.setDestroyMethodName(null));
    context.registerBean(Workbench.class, () -> workbench);
    context.registerBean(ServedPort.class, () -> new ServedPort(port));
    context.addBeanFactoryPostProcessor(new LazyInitializationBeanFactoryPostProcessor());
    context.register(WebConfiguration.class);
    context.register(Controllers.all().toArray(Class<?>[]::new));
    try {
      context.refresh();
      return new WebServer(context);
    } catch (RuntimeException failure) {
      if (isPortTaken(failure)) {
        throw new OutsideException(
            "port " + port + " is taken; choose another with --port, or 0 for a free one", failure);
      }
      throw failure;
    }
  }

  private static boolean isPortTaken(@Nullable Throwable failure) {
    return failure != null
        && (failure instanceof PortInUseException || isPortTaken(failure.getCause()));
  }

  /** The server under the pages has a log of its own kind; its warnings go where all others go. */
  private static void logThroughOurs() {
    if (!SLF4JBridgeHandler.isInstalled()) {
      SLF4JBridgeHandler.removeHandlersForRootLogger();
      SLF4JBridgeHandler.install();
      LogManager.getLogManager().getLogger("").setLevel(Level.WARNING);
      LEAKS.setLevel(Level.OFF);
    }
  }

  public int port() {
    return Objects.requireNonNull(context.getWebServer(), "not started").getPort();
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
