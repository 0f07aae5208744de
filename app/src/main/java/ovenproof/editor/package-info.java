/**
 * Pages: the method as text: problems at their line, its effect on the verdict before it is kept.
 *
 * <p><b>Where to start.</b> MethodController, and the templates of the same name.
 *
 * <p><b>The trap.</b> Whoever changes a weight after seeing results decides the verdict; so a
 * frozen method asks for a version and a reason.
 *
 * <p>Depends on the desk and the web frame; nothing depends on it.
 */
@NullMarked
package ovenproof.editor;

import org.jspecify.annotations.NullMarked;
