package ovenproof.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Locale;
import java.util.Set;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Answers only to names of this machine, so that a page elsewhere cannot reach the desk through a
 * name that it points here.
 */
final class HostCheck extends OncePerRequestFilter {
  private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]", "::1");

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    if (NAMES.contains(request.getServerName().toLowerCase(Locale.ROOT))) {
      chain.doFilter(request, response);
      return;
    }
    response.setStatus(421);
    response.setContentType("text/plain;charset=UTF-8");
    response
        .getWriter()
        .println("This desk answers to localhost and 127.0.0.1 only. Open it under one of them.");
  }
}
