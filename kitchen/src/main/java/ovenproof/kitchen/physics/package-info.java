/**
 * How ovens heat and how food browns, bakes and dries in them.
 *
 * <p>Start with {@link ovenproof.kitchen.physics.Oven} (what an oven is), {@link
 * ovenproof.kitchen.physics.Cavity} (how it heats) and {@link ovenproof.kitchen.physics.FoodColumn}
 * (what heat does to food). Temperatures are in °C, heat flows in W or W/m², times in s.
 *
 * <p>The trap: air, wall, probe and food surface are four temperatures. A truth must say which it
 * is of.
 *
 * <p>Depends on nothing but colour types.
 */
@org.jspecify.annotations.NullMarked
package ovenproof.kitchen.physics;
