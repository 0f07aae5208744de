/**
 * The invented kitchen: what would a test kitchen's folder look like, if the truth behind every
 * number were known?
 *
 * <p>Start with {@link ovenproof.kitchen.Kitchen#demo()}. {@code physics} holds ovens, food and
 * probes; {@code bench} puts them together into runs on a calendar; {@code photo} takes pictures of
 * what came out; {@code panel} tastes it; {@code folder} writes the campaign folder and the truth
 * beside it.
 *
 * <p>The trap: a simulated kitchen that shares its arithmetic with the program it tests can only
 * agree with it. Therefore nothing here may call an estimator of {@code ovenproof.core}; only its
 * colours and quantities are used. Results are never typed: an oven is changed by its watts, its
 * walls and its thermostat, and the story follows.
 */
@org.jspecify.annotations.NullMarked
package ovenproof.kitchen;
