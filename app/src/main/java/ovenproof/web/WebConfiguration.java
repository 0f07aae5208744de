package ovenproof.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Lazy;
import org.springframework.format.FormatterRegistry;
import org.springframework.format.datetime.standard.DateTimeFormatterRegistrar;
import org.springframework.http.CacheControl;
import org.springframework.http.converter.ByteArrayHttpMessageConverter;
import org.springframework.http.converter.HttpMessageConverters;
import org.springframework.http.converter.ResourceHttpMessageConverter;
import org.springframework.http.converter.StringHttpMessageConverter;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfTokenRequestAttributeHandler;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.servlet.config.annotation.EnableWebMvc;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import ovenproof.desk.Desk;
import ovenproof.desk.FolderExport;
import ovenproof.desk.FolderImport;
import ovenproof.desk.JobKind;
import ovenproof.files.CampaignFolder;

/**
 * Wires services, pages and safety. What of the framework is used is written out, and the
 * controllers are listed ({@link Controllers}): looking for both costs two seconds at every start.
 */
@Configuration(proxyBeanMethods = false)
@EnableWebMvc
@EnableWebSecurity
@Import({ServerConfiguration.class, TemplateConfiguration.class})
class WebConfiguration implements WebMvcConfigurer {
  static final String CONTENT_SECURITY_POLICY =
      "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none';"
          + " object-src 'none'; img-src 'self' blob:";

  @Override
  public void addInterceptors(InterceptorRegistry registry) {
    registry.addInterceptor(new RouteGuard());
  }

  @Override
  public void addResourceHandlers(ResourceHandlerRegistry registry) {
    CacheControl anHour = CacheControl.maxAge(Duration.ofHours(1));
    registry
        .addResourceHandler("/webjars/**")
        .addResourceLocations("classpath:/META-INF/resources/webjars/")
        .setCacheControl(anHour);
    registry
        .addResourceHandler("/**")
        .addResourceLocations("classpath:/static/")
        .setCacheControl(anHour);
  }

  /** A date joined to words on a page is never the server's own short form: 2/10/26 is no date. */
  @Override
  public void addFormatters(FormatterRegistry registry) {
    DateTimeFormatterRegistrar dates = new DateTimeFormatterRegistrar();
    dates.setUseIsoFormat(true);
    dates.registerFormatters(registry);
  }

  /** Pages are HTML, texts or files made here: nothing is turned into JSON by the framework. */
  @Override
  public void configureMessageConverters(HttpMessageConverters.ServerBuilder converters) {
    converters.disableDefaults();
    converters.addCustomConverter(new ByteArrayHttpMessageConverter());
    converters.addCustomConverter(new StringHttpMessageConverter(StandardCharsets.UTF_8));
    converters.addCustomConverter(new ResourceHttpMessageConverter());
  }

  @Bean
  FieldDocument fieldDocument(Desk desk) {
    return new FieldDocument(desk);
  }

  @Bean
  @Lazy(false)
  FolderImport folderImport(Desk desk, FolderExport export, List<JobKind> kinds) {
    FolderImport folderImport = new FolderImport(desk, CampaignFolder.withAllMeasures());
    folderImport.register();
    export.register();
    kinds.forEach(k -> desk.jobs().register(k.kind(), k));
    desk.jobs().resume();
    return folderImport;
  }

  @Bean
  FolderExport folderExport(Desk desk) {
    return new FolderExport(desk, CampaignFolder.withAllMeasures());
  }

  /** There are no accounts yet; this keeps the framework from inventing one. */
  @Bean
  UserDetailsService nobody() {
    return name -> {
      throw new UsernameNotFoundException(name);
    };
  }

  @Bean
  SecurityFilterChain security(HttpSecurity http) throws Exception {
    CookieCsrfTokenRepository tokens = new CookieCsrfTokenRepository();
    tokens.setCookieCustomizer(cookie -> cookie.sameSite("Strict"));
    return http.csrf(
            csrf ->
                csrf.csrfTokenRepository(tokens)
                    // Eager, so that the cookie is set before a long page is sent in parts.
                    .csrfTokenRequestHandler(eager()))
        .authorizeHttpRequests(all -> all.anyRequest().permitAll())
        .headers(
            headers ->
                headers
                    .contentSecurityPolicy(csp -> csp.policyDirectives(CONTENT_SECURITY_POLICY))
                    .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                    .cacheControl(cache -> cache.disable()))
        .formLogin(form -> form.disable())
        .httpBasic(basic -> basic.disable())
        .logout(logout -> logout.disable())
        .requestCache(cache -> cache.disable())
        .build();
  }

  @SuppressWarnings("NullAway") // null is the documented way to say "eager"
  private static CsrfTokenRequestAttributeHandler eager() {
    CsrfTokenRequestAttributeHandler handler = new CsrfTokenRequestAttributeHandler();
    handler.setCsrfRequestAttributeName(null);
    return handler;
  }
}
