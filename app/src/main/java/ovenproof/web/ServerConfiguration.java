package ovenproof.web;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.MultipartConfigElement;
import jakarta.servlet.http.HttpServletRequest;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.stream.Stream;
import org.apache.catalina.Context;
import org.apache.catalina.connector.Connector;
import org.apache.coyote.http11.AbstractHttp11Protocol;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.error.ErrorPage;
import org.springframework.boot.web.server.Compression;
import org.springframework.boot.web.server.Cookie.SameSite;
import org.springframework.boot.web.servlet.DelegatingFilterProxyRegistrationBean;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.boot.webmvc.autoconfigure.DispatcherServletRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.Ordered;
import org.springframework.web.filter.CharacterEncodingFilter;
import org.springframework.web.filter.RequestContextFilter;
import org.springframework.web.multipart.MultipartResolver;
import org.springframework.web.multipart.support.StandardServletMultipartResolver;
import org.springframework.web.servlet.DispatcherServlet;
import ovenproof.desk.Desk;

/** The server under the pages: this machine only, what it takes at once, and what stands first. */
@Configuration(proxyBeanMethods = false)
class ServerConfiguration {
  private static final int MEGABYTE = 1 << 20;
  private static final int FORM_BYTES = 2 * MEGABYTE;
  private static final int SWALLOWED_BYTES = 8 * MEGABYTE;
  private static final long FILE_BYTES = 500L * MEGABYTE;
  private static final int FIELDS = 5_000;

  /** Files and fields that one form may bring. */
  static final int PARTS = 200;

  private static final int AFTER_THE_FIRST_CHECKS = -100;

  @Bean
  TomcatServletWebServerFactory tomcat(Desk desk, ServedPort port) {
    TomcatServletWebServerFactory tomcat = new TomcatServletWebServerFactory(port.number());
    tomcat.setAddress(InetAddress.getLoopbackAddress());
    tomcat.setBaseDirectory(desk.location().folder().resolve("tomcat").toFile());
    tomcat.addConnectorCustomizers(ServerConfiguration::limit);
    tomcat.addContextCustomizers(ServerConfiguration::withoutJarsOfFiles);
    tomcat.addErrorPages(new ErrorPage("/error"));
    tomcat.setRegisterDefaultServlet(false);
    tomcat.getSettings().getSession().getCookie().setSameSite(SameSite.STRICT);
    Compression compression = new Compression();
    compression.setEnabled(true);
    tomcat.setCompression(compression);
    return tomcat;
  }

  /**
   * The server would look through every name in the program's jar for files to serve by itself; the
   * pages' files are served by their own route. The listener that asks for it has no public name.
   */
  private static void withoutJarsOfFiles(Context context) {
    Stream.of(context.findLifecycleListeners())
        .filter(l -> l.getClass().getSimpleName().equals("StaticResourceConfigurer"))
        .forEach(context::removeLifecycleListener);
  }

  private static void limit(Connector connector) {
    connector.setMaxPostSize(FORM_BYTES);
    connector.setMaxParameterCount(FIELDS);
    connector.setMaxPartCount(PARTS);
    if (connector.getProtocolHandler() instanceof AbstractHttp11Protocol<?> http) {
      http.setMaxSwallowSize(SWALLOWED_BYTES);
    }
  }

  @Bean(name = "dispatcherServlet")
  DispatcherServlet dispatcher() {
    return new DispatcherServlet();
  }

  @Bean
  DispatcherServletRegistrationBean allPaths(DispatcherServlet dispatcher) {
    DispatcherServletRegistrationBean all = new DispatcherServletRegistrationBean(dispatcher, "/");
    all.setName("dispatcherServlet");
    all.setMultipartConfig(
        new MultipartConfigElement("", FILE_BYTES, FILE_BYTES + MEGABYTE, MEGABYTE));
    return all;
  }

  @Bean(name = DispatcherServlet.MULTIPART_RESOLVER_BEAN_NAME)
  MultipartResolver multipart() {
    return new StandardServletMultipartResolver() {
      /** The page that says why a body is refused must not read that body. */
      @Override
      public boolean isMultipart(HttpServletRequest request) {
        return request.getDispatcherType() != DispatcherType.ERROR && super.isMultipart(request);
      }
    };
  }

  @Bean
  FilterRegistrationBean<HostCheck> hostCheck() {
    FilterRegistrationBean<HostCheck> first = new FilterRegistrationBean<>(new HostCheck());
    first.setOrder(Ordered.HIGHEST_PRECEDENCE);
    return first;
  }

  @Bean
  FilterRegistrationBean<UploadLimit> uploadLimit() {
    FilterRegistrationBean<UploadLimit> second = new FilterRegistrationBean<>(new UploadLimit());
    second.setOrder(Ordered.HIGHEST_PRECEDENCE + 1);
    return second;
  }

  @Bean
  FilterRegistrationBean<CharacterEncodingFilter> encoding() {
    FilterRegistrationBean<CharacterEncodingFilter> third =
        new FilterRegistrationBean<>(
            new CharacterEncodingFilter(StandardCharsets.UTF_8.name(), true));
    third.setOrder(Ordered.HIGHEST_PRECEDENCE + 2);
    return third;
  }

  @Bean
  FilterRegistrationBean<RequestContextFilter> requestContext() {
    FilterRegistrationBean<RequestContextFilter> fourth =
        new FilterRegistrationBean<>(new RequestContextFilter());
    fourth.setOrder(AFTER_THE_FIRST_CHECKS - 5);
    return fourth;
  }

  @Bean
  DelegatingFilterProxyRegistrationBean safety() {
    DelegatingFilterProxyRegistrationBean safety =
        new DelegatingFilterProxyRegistrationBean("springSecurityFilterChain");
    safety.setOrder(AFTER_THE_FIRST_CHECKS);
    safety.setDispatcherTypes(EnumSet.allOf(DispatcherType.class));
    return safety;
  }
}
