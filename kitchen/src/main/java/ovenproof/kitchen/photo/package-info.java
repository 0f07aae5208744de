/**
 * Pictures of food whose true colour is known: what would a phone above the photo table see?
 *
 * <p>Start with {@link ovenproof.kitchen.photo.PhotoScene} (what lies there, in millimetres) and
 * {@link ovenproof.kitchen.photo.Studio#take} (the picture, and where and what each piece truly
 * is).
 *
 * <p>The trap: the true colour is that of the surface, before light, shadow, camera and JPEG. A
 * camera that reproduced it would be the wrong test.
 */
@org.jspecify.annotations.NullMarked
package ovenproof.kitchen.photo;
