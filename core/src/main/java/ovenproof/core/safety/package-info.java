/**
 * Whether food got hot enough, long enough: core temperature, lethality and the published floors.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.safety.CoreSafety} judges the coldest probe by
 * the one criterion a method names; {@link ovenproof.core.safety.Lethality} integrates.
 *
 * <p><b>The trap.</b> One probe may miss the coldest place, and a probe that reads 2 K high doubles
 * the lethality. The expanded uncertainty is therefore subtracted from the whole curve first. These
 * figures are no advice: local food rules and trained people prevail, and food is never called safe
 * on a colour, a time alone or one probe.
 */
@NullMarked
package ovenproof.core.safety;

import org.jspecify.annotations.NullMarked;
