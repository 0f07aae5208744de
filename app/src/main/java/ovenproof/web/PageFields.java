package ovenproof.web;

import org.jspecify.annotations.Nullable;

/**
 * Where the values of a page go. Parts of pages that several controllers share write here and stay
 * free of the web framework.
 */
@FunctionalInterface
public interface PageFields {
  void put(String name, @Nullable Object value);
}
