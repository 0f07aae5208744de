/** The command line. */
@org.jspecify.annotations.NullMarked
package ovenproof.cli;
