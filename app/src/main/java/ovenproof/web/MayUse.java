package ovenproof.web;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Who may use a route. A route without it is refused to everyone. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface MayUse {
  Audience value();

  /** Whom a route serves. */
  enum Audience {
    /** Anyone who reaches the server: health of the page itself, error pages. */
    ANYONE,
    /** Whoever works on this machine: the single local owner. */
    OWNER
  }
}
