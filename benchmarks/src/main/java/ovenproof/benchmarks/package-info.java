/** Side by side with peers. */
@org.jspecify.annotations.NullMarked
package ovenproof.benchmarks;
