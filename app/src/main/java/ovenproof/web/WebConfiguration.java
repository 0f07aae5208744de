package ovenproof.web;

import java.util.List;
import org.springframework.boot.SpringBootConfiguration;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ComponentScan;
import org.springframework.context.annotation.FilterType;
import org.springframework.core.Ordered;
import org.springframework.format.FormatterRegistry;
import org.springframework.format.datetime.standard.DateTimeFormatterRegistrar;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfTokenRequestAttributeHandler;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.stereotype.Controller;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import ovenproof.desk.Desk;
import ovenproof.desk.FolderExport;
import ovenproof.desk.FolderImport;
import ovenproof.desk.JobKind;
import ovenproof.files.CampaignFolder;

/** Wires services, pages and safety. */
@SpringBootConfiguration(proxyBeanMethods = false)
@EnableAutoConfiguration(
    excludeName = {
      "org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration",
      "org.springframework.boot.jdbc.autoconfigure.DataSourceTransactionManagerAutoConfiguration",
      "org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration"
    })
@ComponentScan(
    basePackages = "ovenproof",
    useDefaultFilters = false,
    includeFilters =
        @ComponentScan.Filter(
            type = FilterType.ANNOTATION,
            classes = {
              Controller.class,
              org.springframework.web.bind.annotation.ControllerAdvice.class
            }))
class WebConfiguration implements WebMvcConfigurer {
  static final String CONTENT_SECURITY_POLICY =
      "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none';"
          + " object-src 'none'; img-src 'self' blob:";

  @Override
  public void addInterceptors(InterceptorRegistry registry) {
    registry.addInterceptor(new RouteGuard());
  }

  /** A date joined to words on a page is never the server's own short form: 2/10/26 is no date. */
  @Override
  public void addFormatters(FormatterRegistry registry) {
    DateTimeFormatterRegistrar dates = new DateTimeFormatterRegistrar();
    dates.setUseIsoFormat(true);
    dates.registerFormatters(registry);
  }

  @Bean
  Workbench workbench(Desk desk) {
    return new Workbench(desk);
  }

  @Bean
  FieldDocument fieldDocument(Desk desk) {
    return new FieldDocument(desk);
  }

  @Bean
  @org.springframework.context.annotation.Lazy(false)
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
