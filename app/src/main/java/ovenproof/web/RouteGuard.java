package ovenproof.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.InetAddress;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;

/** Refuses routes that do not say whom they serve, and owners who are not on this machine. */
final class RouteGuard implements HandlerInterceptor {

  @Override
  public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
      throws IOException {
    if (!(handler instanceof HandlerMethod method)
        || method.getBeanType().getName().startsWith("org.springframework.")) {
      return true;
    }
    MayUse mayUse = method.getMethodAnnotation(MayUse.class);
    boolean allowed =
        mayUse != null
            && (mayUse.value() == MayUse.Audience.ANYONE
                || InetAddress.getByName(request.getRemoteAddr()).isLoopbackAddress());
    if (!allowed) {
      response.sendError(HttpServletResponse.SC_FORBIDDEN, "This page serves this machine only.");
    }
    return allowed;
  }
}
