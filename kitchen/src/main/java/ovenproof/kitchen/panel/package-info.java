/**
 * People who taste: what food would be marked by an ideal palate, and what six people with habits
 * of their own write down.
 *
 * <p>Start with {@link ovenproof.kitchen.panel.TastingPanel}.
 *
 * <p>The trap: a batch has luck of its own that all tasters share; it is not in the oven.
 */
@org.jspecify.annotations.NullMarked
package ovenproof.kitchen.panel;
