package ovenproof.web;

import java.nio.charset.StandardCharsets;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.spring6.templateresolver.SpringResourceTemplateResolver;
import org.thymeleaf.spring6.view.ThymeleafViewResolver;
import org.thymeleaf.templatemode.TemplateMode;

/** Pages from the templates of the features. */
@Configuration(proxyBeanMethods = false)
class TemplateConfiguration {

  @Bean
  SpringResourceTemplateResolver templates() {
    SpringResourceTemplateResolver templates = new SpringResourceTemplateResolver();
    templates.setPrefix("classpath:/templates/");
    templates.setSuffix(".html");
    templates.setTemplateMode(TemplateMode.HTML);
    templates.setCharacterEncoding(StandardCharsets.UTF_8.name());
    return templates;
  }

  @Bean
  SpringTemplateEngine templateEngine(SpringResourceTemplateResolver templates) {
    SpringTemplateEngine engine = new SpringTemplateEngine();
    engine.setTemplateResolver(templates);
    return engine;
  }

  @Bean
  ThymeleafViewResolver views(SpringTemplateEngine engine) {
    ThymeleafViewResolver views = new ThymeleafViewResolver();
    views.setTemplateEngine(engine);
    views.setCharacterEncoding(StandardCharsets.UTF_8.name());
    return views;
  }
}
