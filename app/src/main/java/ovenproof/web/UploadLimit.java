package ovenproof.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.web.filter.OncePerRequestFilter;

/** Refuses by its announced length what is too large, before any of it is read. */
final class UploadLimit extends OncePerRequestFilter {
  /** 500 MB of files and what a form wraps around them. */
  static final long MOST_BYTES = 501L << 20;

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    if (request.getContentLengthLong() > MOST_BYTES) {
      response.setHeader("Connection", "close");
      response.sendError(413);
      return;
    }
    chain.doFilter(request, response);
  }
}
