/** The invented kitchen. */
@org.jspecify.annotations.NullMarked
package ovenproof.kitchen;
