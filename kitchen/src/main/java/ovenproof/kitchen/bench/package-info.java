/**
 * Ovens, food and people put together into runs: what happens from heat on to the plate.
 *
 * <p>Start with {@link ovenproof.kitchen.bench.RunSimulation}.
 *
 * <p>The trap: what people do (a shake too late, a stop judged by eye) is part of a run, not noise
 * to be added to its result afterwards.
 */
@org.jspecify.annotations.NullMarked
package ovenproof.kitchen.bench;
